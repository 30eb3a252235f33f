#include "core/optics/stack_solver.h"

#include <fmt/format.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/optics/reflecting_zone.h"
#include "core/optics/refraction.h"

namespace prismwright {

namespace {

constexpr int kMostPrisms = 80;
constexpr double kSameElevation = 1e-9;   ///< radians: nothing is left to serve
constexpr double kLeastChordInLands = 6;  ///< a shorter entry side could not carry its lands

class Stack {
 public:
  Stack(const SectionInput& input, double limit_deg, StackSide side)
      : input_(input), limit_(radians(limit_deg)), side_(side) {}

  Outcome<std::vector<Zone>> build(const StackStart& start, std::vector<std::string>& notes) {
    double limiting =
        start.corner_a ? std::atan2(start.corner_a->z, start.corner_a->r) : start.limiting_elevation;
    double height = start.edge_height_mm;
    while (limit_ - limiting > kSameElevation) {
      if (zones_.size() >= kMostPrisms) return too_many();
      const bool given = start.corner_a && zones_.empty();
      const SectionPoint a = given ? *start.corner_a : corner_above(limiting, height);
      const ReflectingPrism prism = cut_to_limit({a, chord(), index(), faces()});
      if (chord() < kLeastChordInLands * land()) return eaten_by_lands();
      if (prism.chord_mm() < kLeastChordInLands * land()) {
        notes.push_back(rest_note(limiting, prism.chord_mm()));
        break;
      }
      const auto added = add(prism);
      if (!added) return added.problem();
      limiting = radians(zones_.back().to_deg);
      height = prism.corners().c.z;
    }
    return zones_;
  }

 private:
  [[nodiscard]] double chord() const { return input_.settings.reflecting_chord_mm; }
  [[nodiscard]] double land() const { return input_.settings.land_mm; }
  [[nodiscard]] double index() const { return input_.index; }
  [[nodiscard]] Faces faces() const { return input_.settings.faces; }
  [[nodiscard]] std::string mark() const {
    return fmt::format("{}{:02}", side_ == StackSide::upper ? 'U' : 'L', zones_.size() + 1);
  }

  /// Corner A whose blunted prism just meets the limiting ray, at the given height, moved out by the gap.
  [[nodiscard]] SectionPoint corner_above(double limiting, double height) const {
    const auto on_ray = [&](double elevation) {
      return SectionPoint{height / std::tan(elevation), height} +
             input_.settings.gap_mm * SectionDirection::at(limiting);
    };
    if (land() <= 0) return on_ray(limiting);
    double elevation = limiting;
    for (int i = 0; i < 12; ++i) {
      const double low = ReflectingPrism(on_ray(elevation), chord(), index(), Faces::arc).reach(land()).low;
      elevation -= low - limiting;
      if (std::abs(low - limiting) < 1e-15) break;
    }
    return on_ray(elevation);
  }

  /// The prism, or one cut short so that its glass ends at the limit.
  [[nodiscard]] ReflectingPrism cut_to_limit(const ReflectingPrism& prism) const {
    if (prism.reach(land()).high <= limit_ + kSameElevation) return prism;
    ReflectingPrism cut = ReflectingPrism::reaching(prism.corners().a, limit_, index(), faces());
    double corner = limit_;
    for (int i = 0; i < 20 && land() > 0; ++i) {
      const double missing = limit_ - cut.reach(land()).high;
      if (std::abs(missing) < 1e-13 || cut.chord_mm() < kLeastChordInLands * land()) break;
      corner += missing;
      cut = ReflectingPrism::reaching(prism.corners().a, corner, index(), faces());
    }
    return cut;
  }

  Done add(const ReflectingPrism& prism) {
    const auto reach = prism.reach(land());
    Zone zone;
    zone.mark = mark();
    zone.kind = ZoneKind::upper;
    zone.number = static_cast<int>(zones_.size()) + 1;
    zone.from_deg = degrees(reach.low);
    zone.to_deg = degrees(reach.high);
    if (prism.margin(0.5) < 0) return no_reflection(zone, prism.margin(0.5));
    auto profile = prism.profile(land());
    if (!profile) {
      Problem problem = profile.problem();
      problem.text = fmt::format("zone {}: {}", zone.mark, problem.text);
      return problem;
    }
    zone.profile = std::move(*profile);
    zone.corners = prism.corners();
    zone.thickness_mm = prism.reflecting_chord_mm();
    zones_.push_back(std::move(zone));
    return {};
  }

  [[nodiscard]] Problem no_reflection(const Zone& zone, double margin) const {
    return request_problem(
        "reflecting.not_total", zone.mark,
        fmt::format("zone {} ({:.2f} to {:.2f} deg): its middle ray meets the reflecting face at {:.2f} deg, "
                    "but index {:g} "
                    "reflects totally only from {:.2f} deg. End the {} prisms below {:.1f} deg "
                    "(section.{}_to_deg) or take a "
                    "material of higher index",
                    zone.mark, zone.from_deg, zone.to_deg, degrees(margin + critical_angle(index())), index(),
                    degrees(critical_angle(index())), name(), zone.from_deg, name()));
  }

  [[nodiscard]] Problem too_many() const {
    return request_problem(
        "stack.too_many", fmt::format("section.{}_to_deg", name()),
        fmt::format("an entry side of {:g} mm would need more than {} {} prisms to reach {:g} deg. Make "
                    "section.reflecting_chord_mm longer",
                    chord(), kMostPrisms, name(), degrees(limit_)));
  }

  /// Every prism of the stack, not only a short last one.
  [[nodiscard]] Problem eaten_by_lands() const {
    return request_problem(
        "stack.lands", "section.land_mm",
        fmt::format(
            "zone {}: lands of {:g} mm (section.land_mm) eat the faces of a prism of {:g} mm entry side "
            "(section.reflecting_chord_mm); it carries lands up to {:g} mm. Make the lands narrower or "
            "the entry side longer",
            mark(), land(), chord(), chord() / kLeastChordInLands));
  }

  [[nodiscard]] std::string rest_note(double limiting, double chord_mm) const {
    return fmt::format(
        "The {} prisms end at {:.2f} deg, not {:g}: the rest would be a prism of {:.2f} mm entry side, too "
        "small for lands of {:g} mm.",
        name(), degrees(limiting), degrees(limit_), chord_mm, land());
  }

  [[nodiscard]] const char* name() const { return side_ == StackSide::upper ? "upper" : "lower"; }

  const SectionInput& input_;
  double limit_;
  StackSide side_;
  std::vector<Zone> zones_;
};

}  // namespace

Outcome<std::vector<Zone>> solve_stack(const SectionInput& input, const StackStart& start, double limit_deg,
                                       StackSide side, std::vector<std::string>& notes) {
  return Stack(input, limit_deg, side).build(start, notes);
}

}  // namespace prismwright
