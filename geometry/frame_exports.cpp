#include "geometry/frame_exports.h"

#include <algorithm>
#include <filesystem>
#include <iterator>

#include <fmt/format.h>
#include <TopLoc_Location.hxx>

#include "core/drawing/bought_list.h"
#include "core/drawing/frame_drawings.h"
#include "core/drawing/lengths.h"

#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/frame_csv.h"
#include "geometry/drawing_pdf.h"
#include "geometry/plate_dxf.h"
#include "geometry/safe_file.h"
#include "geometry/step_writer.h"

namespace prismwright {

namespace {

bool same_stock(const NestSheet& a, const NestSheet& b) {
  return a.metal == b.metal && a.thickness_mm == b.thickness_mm;
}

/// Parts of one solid, the first of them leading.
using AlikeBodies = std::vector<const FrameBody*>;

/// The shapes for which a drawing in the plane is not enough.
std::vector<AlikeBodies> solid_shapes(const FramePlan& plan, const std::vector<FrameBody>& bodies) {
  const auto drilled = [&](const FrameBody& body) {
    return std::ranges::any_of(plan.flats, [&](const FlatPart& flat) {
      return flat.mark == body.mark && flat.making == PartMaking::cut_flat && !flat.bores.empty();
    });
  };
  std::vector<AlikeBodies> shapes;
  for (const FrameBody& body : bodies) {
    if (body.making != PartMaking::machined && !drilled(body)) continue;
    const auto known = std::ranges::find_if(
        shapes, [&](const AlikeBodies& alike) { return alike.front()->shape.IsPartner(body.shape); });
    if (known == shapes.end()) {
      shapes.push_back({&body});
    } else {
      known->push_back(&body);
    }
  }
  return shapes;
}

class FrameExport {
 public:
  FrameExport(const FramePlan& plan, const std::vector<FrameBody>& bodies, const Nest& nest, std::string folder,
              const FrameExportChoice& choice, const Progress& progress)
      : plan_(plan),
        bodies_(bodies),
        nest_(nest),
        folder_(std::move(folder)),
        choice_(choice),
        progress_(progress),
        shapes_(alike_plates(plan.flats)) {}

  Outcome<std::vector<std::string>> run() {
    if (const Done ready = ready_folder(folder_); !ready) return ready.problem();
    // Shares of the time, as measured on the samples: the STEP files take most of it.
    for (const auto& [wanted, to, write] : {Step{choice_.list, 0.01, &FrameExport::write_lists},
                                            Step{choice_.plates, 0.1, &FrameExport::write_plates},
                                            Step{choice_.nests, 0.25, &FrameExport::write_nests},
                                            Step{choice_.drawings, 0.35, &FrameExport::write_drawings},
                                            Step{choice_.step, 1, &FrameExport::write_solids}}) {
      to_ = to;
      if (wanted) {
        if (const Done done = (this->*write)(); !done) return done.problem();
      }
      from_ = to;
    }
    goes_on(progress_, 1, folder_);
    return std::move(paths_);
  }

 private:
  struct Step {
    bool wanted;
    double to;
    Done (FrameExport::*write)();
  };

  Done write_lists() {
    if (const Done done = put("parts.csv", parts_csv(listed_parts(plan_, bodies_), nest_)); !done) return done;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < nest_.sheets.size(); ++i) names.push_back(nest_file_name(nest_, i));
    return put("sheets.csv", sheets_csv(nest_, names));
  }

  Done write_plates() {
    for (std::size_t i = 0; i < shapes_.size(); ++i) {
      const FlatPart& first = plan_.flats[shapes_[i].front()];
      if (first.making != PartMaking::cut_flat || first.outline.empty()) continue;
      const std::string name = cut_file_stem(first, shapes_[i].size()) + ".dxf";
      if (const Done on = next(i, shapes_.size(), name); !on) return on;
      if (const Done done = put(name, plate_dxf(first, marks_of(plan_.flats, shapes_[i]))); !done) return done;
    }
    return {};
  }

  Done write_nests() {
    for (std::size_t i = 0; i < nest_.sheets.size(); ++i) {
      const std::string name = nest_file_name(nest_, i);
      if (const Done on = next(i, nest_.sheets.size(), name); !on) return on;
      const std::string words = nest_words(choice_.words.title, nest_, i);
      if (const Done done = put(name, nest_dxf(nest_.sheets[i], plan_.flats, words)); !done) return done;
    }
    return {};
  }

  Done write_drawings() {
    Drawing drawing{choice_.words.title, choice_.words.date, {}};
    const auto add = [&](Drawing more) { std::ranges::move(more.sheets, std::back_inserter(drawing.sheets)); };
    const std::vector<PartsLine> lines = listed_parts(plan_, bodies_);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (const Done on = next(i, lines.size(), lines[i].marks.front()); !on) return on;
      if (auto one = drawing_of(plan_, lines[i], choice_.words, choice_.landings)) add(std::move(one->drawing));
    }
    add(bought_list(lines, choice_.words));
    add(nest_drawing(nest_, plan_, choice_.words));
    if (drawing.sheets.empty()) return {};
    const auto bytes = pdf_bytes(drawing);
    return bytes ? put("drawings.pdf", *bytes) : Done(bytes.problem());
  }

  Done write_solids() {
    const std::vector<AlikeBodies> shapes = solid_shapes(plan_, bodies_);
    for (std::size_t i = 0; i <= shapes.size(); ++i) {
      const bool frame = i == shapes.size();
      const std::string name =
          frame ? "frame.step"
                : safe_stem(fmt::format("{}_x{}", shapes[i].front()->mark, shapes[i].size())) + ".step";
      if (const Done on = next(i, shapes.size() + 1, name); !on) return on;
      if (frame && bodies_.empty()) return {};
      const auto text = frame ? step_text("frame", all_parts()) : step_text(own_frame(*shapes[i].front()));
      if (!text) return text.problem();
      if (const Done done = put(name, *text); !done) return done;
    }
    return {};
  }

  /// The part where its own frame is the file's.
  static StepPart own_frame(const FrameBody& body) {
    return {body.mark, body.shape.Located(TopLoc_Location()), PartStuff::metal};
  }

  [[nodiscard]] std::vector<StepPart> all_parts() const {
    std::vector<StepPart> parts;
    for (const FrameBody& body : bodies_) parts.push_back({body.mark, body.shape, PartStuff::metal});
    return parts;
  }

  Done next(std::size_t i, std::size_t count, const std::string& name) const {
    const double share = from_ + (to_ - from_) * static_cast<double>(i) / static_cast<double>(count);
    if (goes_on(progress_, share, name)) return {};
    return Problem{
        Trouble::stopped, "stopped", "",
        fmt::format("The export was stopped; {} files are written, each of them whole.", paths_.size())};
  }

  Done put(const std::string& name, const std::string& bytes) {
    const std::string path = (std::filesystem::path(folder_) / name).string();
    Done done = write_whole(path, bytes);
    if (done) paths_.push_back(path);
    return done;
  }

  const FramePlan& plan_;
  const std::vector<FrameBody>& bodies_;
  const Nest& nest_;
  std::string folder_;
  const FrameExportChoice& choice_;
  const Progress& progress_;
  std::vector<AlikePlates> shapes_;
  std::vector<std::string> paths_;
  double from_ = 0;
  double to_ = 0;
};

}  // namespace

FrameExportChoice frame_export_choice(const LensPlan& lens, const FramePlan& frame, const std::string& date,
                                      bool inches) {
  FrameExportChoice choice;
  choice.words = house_words(lens.values, date, "");
  choice.words.inches = inches;
  choice.landings = landings(frame, lens);
  return choice;
}

std::vector<PartsLine> listed_parts(const FramePlan& plan, const std::vector<FrameBody>& bodies) {
  KnownVolumes volumes;
  for (const FrameBody& body : bodies) volumes[body.mark] = body.volume_mm3;
  return parts_list(plan, volumes);
}

std::vector<std::string> marks_of(const std::vector<FlatPart>& flats, const AlikePlates& alike) {
  std::vector<std::string> marks;
  for (const std::size_t i : alike) marks.push_back(flats[i].mark);
  return marks;
}

std::string nest_words(const std::string& title, const Nest& nest, std::size_t sheet) {
  return fmt::format("{}{}sheet {} of {}", title, title.empty() ? "" : ", ", sheet + 1, nest.sheets.size());
}

std::string nest_file_name(const Nest& nest, std::size_t sheet) {
  const NestSheet& one = nest.sheets.at(sheet);
  std::size_t number = 0;
  std::size_t all = 0;
  for (std::size_t i = 0; i < nest.sheets.size(); ++i) {
    if (!same_stock(nest.sheets[i], one)) continue;
    ++all;
    if (i <= sheet) ++number;
  }
  return safe_stem(
             fmt::format("nest_{}_{}mm_{}of{}", name_of(one.metal), shortest(one.thickness_mm), number, all)) +
         ".dxf";
}

Outcome<std::vector<std::string>> export_frame(const FramePlan& plan, const std::vector<FrameBody>& bodies,
                                               const Nest& nest, const std::string& folder,
                                               const FrameExportChoice& choice, const Progress& progress) {
  if (!choice.plates && !choice.nests && !choice.step && !choice.list && !choice.drawings) {
    return request_problem("nothing", "",
                           "Nothing is asked for: choose plates, sheets, solids, lists or drawings.");
  }
  return FrameExport(plan, bodies, nest, folder, choice, progress).run();
}

}  // namespace prismwright
