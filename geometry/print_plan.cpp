#include "geometry/print_plan.h"

#include <cmath>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "geometry/master_faces.h"
#include "geometry/print_split.h"
#include "geometry/stretched_shape.h"

namespace prismwright {

namespace {

constexpr int kMostParts = 40;
constexpr double kVolumeShare = 5e-5;

class PrintPlanner {
 public:
  PrintPlanner(const MasterBody& master, const WorksSettings& settings)
      : master_(master), settings_(settings), room_(print_room(settings)) {}

  Outcome<PrintPlan> plan() {
    if (const auto lay = lay_solid(master_.shape, master_.faces, room_, settings_.layer_mm)) {
      return PrintPlan{{{master_.name, master_.shape, *lay, master_.master_mm3, 0, 0, 0}}, {}};
    }
    const CastingSplitter splitter(master_);
    for (int count = splitter.fewest_parts(diagonal()); count <= kMostParts; ++count) {
      // The middle part first: it is the longest, for no cut of the trim makes it shorter.
      if (!lay_of(splitter.sector(count / 2, count))) continue;
      PrintPlan plan;
      if (!lay_parts(splitter.parts(count, settings_), plan)) continue;
      if (const Done whole = check_volume(plan); !whole) return whole.problem();
      add_notes(plan, splitter.is_whole_turn());
      return plan;
    }
    return request_problem(
        "print.room", master_.name,
        fmt::format(
            "{}: even in {} parts its master does not fit a printer of {:g} x {:g} x {:g} mm. Give the room "
            "of a larger printer (works.print_width_mm, works.print_depth_mm, works.print_height_mm).",
            master_.name, kMostParts, room_.width_mm, room_.depth_mm, room_.height_mm));
  }

 private:
  [[nodiscard]] double diagonal() const { return std::hypot(room_.width_mm, room_.depth_mm, room_.height_mm); }

  [[nodiscard]] std::optional<PrintLay> lay_of(const TopoDS_Shape& casting) const {
    return lay_solid(stretched_shape(casting, master_.stretch),
                     casting_faces(casting, master_.stocked, settings_), room_, settings_.layer_mm);
  }

  bool lay_parts(const std::vector<SplitPart>& parts, PrintPlan& plan) const {
    const double grown = master_.stretch.volume_factor();
    for (const SplitPart& part : parts) {
      const auto lay = lay_of(part.casting);
      if (!lay) return false;
      plan.parts.push_back({fmt::format("{}-{}", master_.name, plan.parts.size() + 1),
                            stretched_shape(part.casting, master_.stretch), *lay, part.volume_mm3 * grown,
                            part.key_mm, part.key_mm3 * grown, part.socket_mm3 * grown});
    }
    return true;
  }

  [[nodiscard]] Done check_volume(const PrintPlan& plan) const {
    double sum = 0;
    for (const PrintPart& part : plan.parts) sum += part.volume_mm3 - part.key_mm3 + part.socket_mm3;
    const double off = std::abs(sum / master_.master_mm3 - 1);
    if (off <= kVolumeShare) return {};
    return request_problem(
        "solid", master_.name,
        fmt::format("{}: its parts differ by {:.2g} from the master's volume, {:g} is allowed. "
                    "Change the sanding stock by a hundredth of a millimetre.",
                    master_.name, off, kVolumeShare));
  }

  void add_notes(PrintPlan& plan, bool whole_turn) const {
    const std::size_t count = plan.parts.size();
    plan.notes.push_back(fmt::format("{} is printed in {} parts: whole it does not fit {:g} x {:g} x {:g} mm.",
                                     master_.name, count, room_.width_mm, room_.depth_mm, room_.height_mm));
    const std::size_t joints = whole_turn ? count : count - 1;
    for (std::size_t i = 0; i < joints; ++i) {
      const PrintPart& part = plan.parts[i];
      if (part.key_mm >= settings_.key_mm) continue;
      const std::string joint =
          fmt::format("The joint of {} and {}", part.name, plan.parts[(i + 1) % count].name);
      plan.notes.push_back(part.key_mm > 0
                               ? fmt::format("{} is too thin for a key of {:g} mm and has one of {:.1f} mm.",
                                             joint, settings_.key_mm, part.key_mm)
                               : fmt::format("{} is too thin for a key: align the parts by hand.", joint));
    }
  }

  const MasterBody& master_;
  const WorksSettings& settings_;
  PrintRoom room_;
};

}  // namespace

Outcome<PrintPlan> plan_print(const MasterBody& master, const WorksSettings& settings) {
  try {
    return PrintPlanner(master, settings).plan();
  } catch (const Standard_Failure& failure) {
    return request_problem("solid", master.name,
                           fmt::format("{}: its parts could not be cut ({}). Change the sanding stock by a "
                                       "hundredth of a millimetre, or the room of the printer.",
                                       master.name, failure.GetMessageString()));
  }
}

}  // namespace prismwright
