#include <fmt/format.h>

#include <utility>

#include "app/batch/books.h"
#include "app/batch/frame_print.h"
#include "app/batch/progress_line.h"
#include "app/batch/verbs.h"
#include "core/book/utc_clock.h"
#include "core/frame/frame_csv.h"
#include "geometry/frame_exports.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

constexpr std::size_t kDateLetters = 10;

class FrameVerb : public Verb {
 public:
  std::string_view name() const override { return "frame"; }
  std::string_view help() const override {
    return "the brass frame: parts, sheets, setting, order of fit-up, files";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON");
    command.add_option("--csv", csv_, "write the parts list to this file");
    CLI::Option* out = command.add_option(
        "--out", folder_, "write DXF, STEP and lists into this folder; made where it is missing");
    CLI::Option* drawings =
        command.add_flag("--drawings", drawings_, "drawings of all parts and sheets too, as PDF")->needs(out);
    command.add_flag("--inches", inches_, "lengths on the drawings in inches")->needs(drawings);
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto plan = plan_lens(book->values());
    if (!plan) return refuse(plan.problem(), voice.err);
    const auto answer = work_out(*plan, voice);
    if (!answer) return refuse(answer.problem(), voice.err);
    if (!csv_.empty()) {
      const Done done = write_whole(csv_, parts_csv(answer->parts, answer->nest));
      if (!done) return refuse(done.problem(), voice.err);
    }
    std::size_t written = 0;
    if (!folder_.empty()) {
      const auto paths = write(*answer, *plan, voice);
      if (!paths) return refuse(paths.problem(), voice.err);
      written = paths->size();
    }
    const ExitCode code = answer->well() ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(frame_json(*answer), code, voice.out, voice.err);
    print_frame(*answer, voice.out);
    if (written > 0) voice.out << fmt::format("\n{} files lie in {}\n", written, folder_);
    return code;
  }

 private:
  static Outcome<FrameAnswer> work_out(const LensPlan& plan, Voice& voice) {
    auto frame = make_metal(plan, voice);
    if (!frame) return frame.problem();
    FrameAnswer answer{std::move(frame).value(), {}, {}, {}, {}};
    answer.parts = listed_parts(answer.frame.plan, answer.frame.bodies);
    ProgressLine line(voice);
    auto nest = nest_flats(answer.frame.plan.flats, plan.values.frame, line.of("Sheets"));
    if (!nest) return nest.problem();
    answer.nest = std::move(nest).value();
    answer.settings = check_setting(plan, answer.frame.plan);
    auto fits = fit_up(plan, answer.frame.plan, line.of("Fit-up"));
    if (!fits) return fits.problem();
    answer.fit_up = std::move(fits).value();
    return answer;
  }

  [[nodiscard]] Outcome<std::vector<std::string>> write(const FrameAnswer& answer, const LensPlan& lens,
                                                        Voice& voice) const {
    FrameExportChoice choice =
        frame_export_choice(lens, answer.frame.plan, now_utc().substr(0, kDateLetters), inches_);
    choice.drawings = drawings_;
    ProgressLine line(voice);
    return export_frame(answer.frame.plan, answer.frame.bodies, answer.nest, folder_, choice, line.of("Files"));
  }

  std::string path_;
  std::string csv_;
  std::string folder_;
  bool json_ = false;
  bool drawings_ = false;
  bool inches_ = false;
};

}  // namespace

std::unique_ptr<Verb> frame_verb() { return std::make_unique<FrameVerb>(); }

}  // namespace prismwright
