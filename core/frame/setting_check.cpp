#include "core/frame/setting_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/base/space.h"
#include "core/frame/end_view.h"
#include "core/frame/needed_gap.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.1;
constexpr double kRounding_mm = 1e-9;

// The view of a prism that stands upright: those below are seen mirrored.
PlannedPrism seen_from_above(PlannedPrism prism) {
  const bool below = prism.turning == TurningAxis::panel && centroid(prism.profile).z < 0;
  if (below) prism.profile = mirrored(prism.profile);
  return prism;
}

// Where a place of the section stands in the prism's end at one side, seen from the panel: x along its axis.
class EndPlaces {
 public:
  EndPlaces(const PlannedPrism& prism, Side side)
      : view_(prism, side),
        depth_mm_(prism.trim.set_back_mm),
        clockwise_(side == Side::clockwise),
        level_mm_(prism.axis_z_mm) {
    const double azimuth =
        radians(clockwise_ ? prism.trim.clockwise_side_deg : prism.trim.anticlockwise_side_deg);
    cosine_ = std::cos(azimuth);
    sine_ = std::sin(azimuth);
  }

  [[nodiscard]] bool reaches(SectionPoint p) const {
    return view_.sees_ends() && view_.reach(p, depth_mm_) >= 0;
  }

  // A half ring that clears this side ends at the level that bounds it.
  [[nodiscard]] SpacePoint at(SectionPoint p) const {
    if (!reaches(p)) return {p.r, clockwise_ ? -p.z : p.z, level_mm_};
    const PlatePoint place = view_.at(p, depth_mm_);
    const double inward = clockwise_ ? depth_mm_ : -depth_mm_;
    return {place.u * cosine_ - inward * sine_, place.u * sine_ + inward * cosine_, place.v};
  }

 private:
  EndView view_;
  double depth_mm_;
  bool clockwise_;
  double level_mm_;
  double cosine_ = 1;
  double sine_ = 0;
};

bool ends_at(const PlannedPrism& prism, Side side) {
  const PlannedPrism upper = seen_from_above(prism);
  const EndPlaces places(upper, side);
  const auto outline = polygon_of(upper.profile, kChord_mm);
  return std::any_of(outline.begin(), outline.end(), [&](SectionPoint p) { return places.reaches(p); });
}

// What one shape of prism needs, whichever panel it stands in.
struct Needs {
  EndRoom end;
  SideRoom sides;
};

class SettingRules {
 public:
  SettingRules(const LensPlan& plan, const PrismLengths& lengths)
      : frame_(plan.values.frame), material_(plan.values.material.name), lengths_(lengths) {}

  SettingCheck check(const PlannedPrism& prism, const RibPlan& rib) {
    Needs needs = of_shape(prism);
    if (!ends_at(prism, rib.side)) needs.end = {};
    if (const auto given = lengths_.find(prism.mark); given != lengths_.end() && needs.end.length_mm > 0) {
      needs.end = end_room(given->second);
    }
    SettingCheck check{prism.mark, rib.mark, needs.end, needs.sides};
    check.end_enough = needs.end.drawn_mm >= needs.end.needed_mm() - kRounding_mm;
    check.sides_enough = needs.sides.drawn_mm >= needs.sides.needed_mm() - kRounding_mm;
    return check;
  }

 private:
  const Needs& of_shape(const PlannedPrism& prism) {
    const auto known = by_shape_.find(prism.shape_key);
    if (known != by_shape_.end()) return known->second;
    const Needs needs{end_room(end_to_end_mm(prism)), side_room(section_extent_mm(prism.profile))};
    return by_shape_.emplace(prism.shape_key, needs).first->second;
  }

  [[nodiscard]] EndRoom end_room(double length_mm) const {
    const PrismGrowth growth = growth_of(length_mm, material_, frame_);
    return {length_mm, frame_.end_gap_mm, growth.heat_mm, growth.moisture_mm};
  }

  [[nodiscard]] SideRoom side_room(double extent_mm) const {
    const PrismGrowth growth = growth_of(extent_mm, material_, frame_);
    return {extent_mm,         frame_.setting_gap_mm, frame_.shim_mm,
            frame_.glazing_mm, growth.heat_mm,        growth.moisture_mm};
  }

  const FrameSettings& frame_;
  std::string_view material_;
  const PrismLengths& lengths_;
  std::map<std::string, Needs> by_shape_;
};

}  // namespace

double end_to_end_mm(const PlannedPrism& prism) {
  const PlannedPrism upper = seen_from_above(prism);
  const EndPlaces right(upper, Side::clockwise);
  const EndPlaces left(upper, Side::anticlockwise);
  double most = 0;
  for (const SectionPoint p : polygon_of(upper.profile, kChord_mm)) {
    if (!right.reaches(p) && !left.reaches(p)) continue;
    most = std::max(most, length(right.at(p) - left.at(p)));
  }
  return most;
}

std::vector<SettingCheck> check_setting(const LensPlan& plan, const FramePlan& frame,
                                        const PrismLengths& lengths) {
  std::map<std::string_view, const PlannedPrism*> prisms;
  for (const PlannedPrism& prism : plan.prisms) prisms[prism.mark] = &prism;
  SettingRules rules(plan, lengths);
  std::vector<SettingCheck> checks;
  for (const RibPlan& rib : frame.ribs) {
    for (const Pocket& pocket : rib.pockets) {
      for (const std::string& mark : pocket.marks) {
        if (const auto prism = prisms.find(mark); prism != prisms.end()) {
          checks.push_back(rules.check(*prism->second, rib));
        }
      }
    }
  }
  return checks;
}

std::string advice_on(const SettingCheck& check) {
  std::string words;
  if (!check.end_enough) {
    words = fmt::format(
        "{} in {}: its end has {:.2f} mm and needs {:.2f} mm (heat {:.2f}, moisture {:.2f}). Give an "
        "end gap of {:.2f} mm or more.",
        check.mark, check.rib, check.end.drawn_mm, check.end.needed_mm(), check.end.heat_mm,
        check.end.moisture_mm, std::ceil(100 * check.end.needed_mm() - 1e-6) / 100);
  }
  if (check.sides_enough) return words;
  const SideRoom& sides = check.sides;
  return words +
         fmt::format(
             "{}{} in {}: its sides have {:.2f} mm and need {:.2f} mm (shim {:.2f} or glazing {:.2f}, heat "
             "{:.2f}, moisture {:.2f}). Give a setting gap of {:.2f} mm or more.",
             words.empty() ? "" : " ", check.mark, check.rib, sides.drawn_mm, sides.needed_mm(), sides.shim_mm,
             sides.glazing_mm, sides.heat_mm, sides.moisture_mm,
             std::ceil(100 * sides.needed_mm() - 1e-6) / 100);
}

}  // namespace prismwright
