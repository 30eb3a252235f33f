#include "geometry/fit_panel.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/rib_part.h"

namespace prismwright {
namespace {

constexpr double kBeyondPocket_mm = 2;

SpaceVector turned(SpaceVector v, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * v.x - s * v.y, s * v.x + c * v.y, v.z};
}

SpaceFrame into_panel(const SpaceFrame& frame, double axis_deg) {
  const double back = -radians(axis_deg);
  const SpaceVector origin = turned(frame.origin - SpacePoint{}, back);
  return {{origin.x, origin.y, origin.z},
          turned(frame.first, back),
          turned(frame.second, back),
          turned(frame.third, back)};
}

const RibPlan* rib_of(const FramePlan& frame, int panel, Side side) {
  for (const RibPlan& rib : frame.ribs) {
    if (rib.panel == panel && rib.side == side) return &rib;
  }
  return nullptr;
}

const FlatPart* flat_named(const FramePlan& frame, const std::string& mark) {
  const auto found =
      std::find_if(frame.flats.begin(), frame.flats.end(), [&](const FlatPart& f) { return f.mark == mark; });
  return found == frame.flats.end() ? nullptr : &*found;
}

bool stands_between_ribs(const FlatPart& flat, int panel) {
  return flat.panel == panel && (flat.kind == PartKind::rail || flat.kind == PartKind::cross_rib);
}

SpaceVector inward_of(const RibPlan& rib) {
  const double a = radians(rib.azimuth_deg);
  const double way = rib.side == Side::clockwise ? 1 : -1;
  return {-way * std::sin(a), way * std::cos(a), 0};
}

class PanelMaker {
 public:
  PanelMaker(const LensPlan& plan, const FramePlan& frame, const PanelPlace& place)
      : plan_(plan), frame_(frame), place_(place) {}

  FitPanel make() {
    panel_.number = place_.number;
    panel_.axis_deg = place_.axis_deg;
    add_prisms();
    add_rib(0, *rib_of(frame_, place_.number, Side::anticlockwise));
    add_rib(1, *rib_of(frame_, place_.number, Side::clockwise));
    add_between();
    return std::move(panel_);
  }

 private:
  void add_prisms() {
    const double end_mm = plan_.values.frame.pocket_mm + kBeyondPocket_mm;
    const bool cemented = plan_.section.input.settings.gap_mm == 0;
    FitUnit* refracting = nullptr;
    panel_.prisms.reserve(plan_.prisms.size());
    for (const PlannedPrism& prism : plan_.prisms) {
      if (prism.panel != place_.number) continue;
      const bool joins = cemented && is_refracting(prism.kind);
      FitUnit* unit = joins && refracting ? refracting : &panel_.prisms.emplace_back();
      if (joins) refracting = unit;
      unit->about_lens = prism.turning == TurningAxis::lens && (unit->about_lens || unit->marks.empty());
      unit->marks.push_back(prism.mark);
      unit->bodies.push_back(turned_body(prism, end_mm));
    }
  }

  void add_rib(int which, const RibPlan& rib) {
    const FlatPart* own = flat_named(frame_, rib.mark);
    const FlatPart flat = own ? *own : rib_part(rib);
    panel_.ribs[which].marks = {rib.mark};
    panel_.ribs[which].bodies.push_back(plate_body(flat, into_panel(flat.place, place_.axis_deg)));
    const SpaceVector inward = turned(inward_of(rib), -radians(place_.axis_deg));
    const SpaceVector seaward = turned(direction_at(radians(rib.azimuth_deg), 0), -radians(place_.axis_deg));
    panel_.faces[which] = {inward, seaward, rib.thickness_mm};
  }

  void add_between() {
    for (const FlatPart& flat : frame_.flats) {
      if (!stands_between_ribs(flat, place_.number)) continue;
      FitUnit& unit = panel_.fixed.emplace_back();
      unit.marks = {flat.mark};
      unit.bodies.push_back(plate_body(flat, into_panel(flat.place, place_.axis_deg)));
    }
    for (const TurnedBar& bar : frame_.bars) {
      if (bar.panel != place_.number) continue;
      FitUnit& unit = panel_.fixed.emplace_back();
      unit.marks = {bar.mark};
      unit.bodies.push_back(turned_body(bar.shape, kBeyondPocket_mm));
    }
  }

  const LensPlan& plan_;
  const FramePlan& frame_;
  const PanelPlace& place_;
  FitPanel panel_;
};

std::string place_words(const SpaceFrame& frame) {
  const auto words = [](double x, double y, double z) {
    return fmt::format("{:.4f} {:.4f} {:.4f} ", x + 0.0, y + 0.0, z + 0.0);
  };
  return words(frame.origin.x, frame.origin.y, frame.origin.z) +
         words(frame.first.x, frame.first.y, frame.first.z) +
         words(frame.third.x, frame.third.y, frame.third.z);
}

}  // namespace

bool can_be_fitted(const LensPlan& plan, const FramePlan& frame, int panel) {
  const bool has_prisms = std::any_of(plan.prisms.begin(), plan.prisms.end(),
                                      [&](const PlannedPrism& prism) { return prism.panel == panel; });
  return has_prisms && rib_of(frame, panel, Side::anticlockwise) && rib_of(frame, panel, Side::clockwise);
}

FitPanel fit_panel(const LensPlan& plan, const FramePlan& frame, const PanelPlace& place) {
  return PanelMaker(plan, frame, place).make();
}

std::string fit_likeness(const LensPlan& plan, const FramePlan& frame, const PanelPlace& place) {
  std::string words;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel == place.number) words += prism.shape_key + "\n";
  }
  for (const RibPlan& rib : frame.ribs) {
    if (rib.panel != place.number) continue;
    words += fmt::format("{} {} {:.6f} {:.6f}\n", rib.shape_key, static_cast<int>(rib.side), rib.thickness_mm,
                         rib.set_back_mm);
  }
  for (const FlatPart& flat : frame.flats) {
    if (stands_between_ribs(flat, place.number)) {
      words += flat.shape_key + " " + place_words(into_panel(flat.place, place.axis_deg)) + "\n";
    }
  }
  for (const TurnedBar& bar : frame.bars) {
    if (bar.panel == place.number) words += bar.shape.shape_key + "\n";
  }
  return words;
}

}  // namespace prismwright
