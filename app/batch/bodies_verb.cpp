#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "app/batch/books.h"
#include "app/batch/made_lens.h"
#include "app/batch/mark_patterns.h"
#include "app/batch/progress_line.h"
#include "app/batch/verbs.h"
#include "geometry/exports.h"

namespace prismwright {

namespace {

constexpr double kFinestChord_mm = 0.001;
constexpr double kCoarsestChord_mm = 1;

class BodiesVerb : public Verb {
 public:
  std::string_view name() const override { return "bodies"; }
  std::string_view help() const override { return "write every prism, and the lens, as solids"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_option("--out", folder_, "folder for the files; made where it is missing")->required();
    command.add_flag("--step", step_, "STEP files (what is written unless --stl is asked for alone)");
    command.add_flag("--stl", choice_.stl, "STL files for printing");
    command.add_option("--chord", choice_.stl_chord_mm, "STL: greatest distance of a facet from its face, mm")
        ->check(CLI::Range(kFinestChord_mm, kCoarsestChord_mm))
        ->capture_default_str();
    command.add_flag("--master", master_, "masters grown for shrinkage: works FILE masters writes those");
    command.add_option("--only", only_, "these prisms only; * stands for any run of letters: \"P01-*\"");
  }

  ExitCode run(Voice& voice) override {
    if (master_) {
      voice.err
          << "Masters, grown for shrinkage and sanding stock, are written by works FILE masters --out FOLDER: "
             "ask that, or leave out --master to have the plain solids.\n";
      return ExitCode::bad_request;
    }
    choice_.step = step_ || !choice_.stl;
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    auto plan = plan_lens(book->values());
    if (!plan) return refuse(plan.problem(), voice.err);
    if (!only_.empty()) {
      auto marks = named_marks(only_, marks_of(*plan));
      if (!marks) return refuse(marks.problem(), voice.err);
      choice_.only = std::move(marks).value();
      keep_only(*plan, choice_.only);
    }
    return write(std::move(plan).value(), voice);
  }

 private:
  /// Prisms that nobody asked for need not be made.
  static void keep_only(LensPlan& plan, const std::vector<std::string>& marks) {
    std::erase_if(plan.prisms, [&](const PlannedPrism& prism) {
      return std::ranges::find(marks, prism.mark) == marks.end();
    });
  }

  ExitCode write(LensPlan plan, Voice& voice) const {
    const auto lens = make_prisms(std::move(plan), voice);
    if (!lens) return refuse(lens.problem(), voice.err);
    std::vector<FrameBody> metal;
    // The brass goes with the whole lens; single prisms are written without it.
    if (only_.empty()) {
      auto frame = make_metal(lens->plan, voice);
      if (!frame) return refuse(frame.problem(), voice.err);
      metal = std::move(frame.value().bodies);
    }
    ProgressLine line(voice);
    const auto written = export_bodies(lens->bodies, metal, folder_, choice_, line.of("Files"));
    if (!written) return refuse(written.problem(), voice.err);
    double mass_g = 0;
    for (const PrismBody& body : lens->bodies.prisms) mass_g += body.mass_g;
    voice.out << fmt::format("{} files of {} prisms ({:.2f} kg of {}) lie in {}\n", written->size(),
                             lens->bodies.prisms.size(), mass_g / 1000, lens->plan.values.material.name,
                             folder_);
    return ExitCode::done;
  }

  std::string path_;
  std::string folder_;
  std::vector<std::string> only_;
  ExportChoice choice_;
  bool step_ = false;
  bool master_ = false;
};

}  // namespace

std::unique_ptr<Verb> bodies_verb() { return std::make_unique<BodiesVerb>(); }

}  // namespace prismwright
