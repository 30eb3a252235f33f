#include "core/drawing/arrangement_views.h"

#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/line_view_drawing.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.5;
constexpr double kOff_mm = 1;     ///< extension lines off the thing
constexpr double kOver_mm = 1.5;  ///< extension lines beyond their dimension
constexpr double kNear_mm = 9;    ///< first dimension off the view
constexpr double kFar_mm = 18;    ///< second dimension off the view
constexpr double kBeyond_mm = 5;  ///< centre lines beyond the view

PaperPoint place(const PaperMap& map, double x, double y) { return map.at(SectionPoint{x, y}); }

void extension(SheetMaker& maker, PaperPoint from, PaperPoint to) {
  maker.line(from, to);
  maker.keep_clear(from, to);
}

void centre_line(SheetMaker& maker, PaperPoint from, PaperPoint to) {
  maker.line(from, to, LineClass::centre);
  maker.keep_clear(from, to);
}

/// A breadth about the axis, so far below the view.
void breadth(SheetMaker& maker, const PaperMap& map, double radius_mm, double bottom, double below,
             const std::string& words) {
  const double left = place(map, -radius_mm, 0).x;
  const double right = place(map, radius_mm, 0).x;
  const double y = bottom - below;
  for (const double x : {left, right}) extension(maker, {x, bottom - kOff_mm}, {x, y - kOver_mm});
  level_dimension(maker, left, right, y, words);
}

void draw_lines(SheetMaker& maker, const LineView& view, const PaperMap& map) {
  draw_line_view(maker, view, {map.focus, map.paper_per_mm}, ViewCrowd::many);
}

/// Words along a ray from the middle of the plan, beyond the tangent to the circle there, as near to it as they
/// find room; a little to either side where they find none on the ray.
void write_outside(SheetMaker& maker, PaperPoint middle, double azimuth, double radius,
                   const std::string& words) {
  const PaperBox box = box_of({words, {}, kWords_mm, Anchor::middle});
  const double half_wide = (box.high.x - box.low.x) / 2;
  const double half_high = (box.high.y - box.low.y) / 2;
  const double base = (box.high.y + box.low.y) / 2;
  std::vector<PaperPoint> places;
  for (const double turn : {0.0, 0.06, -0.06, 0.12, -0.12}) {
    const double c = std::cos(azimuth + turn);
    const double s = std::sin(azimuth + turn);
    for (double off = 1.4; off < ArrangementRooms::round_plan - 6; off += 1.2) {
      const double r = radius + off + half_wide * std::abs(c) + half_high * std::abs(s);
      places.push_back({middle.x + r * c, middle.y + r * s - base});
    }
  }
  maker.write_at_free({words, {}, kWords_mm, Anchor::middle}, places);
}

void draw_sides_and_axes(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperPoint middle = parts.layout.plan.focus;
  const double radius = parts.layout.scale.paper_per_mm * parts.radius_mm();
  const auto at = [&](double deg, double r) {
    return PaperPoint{middle.x + r * std::cos(radians(deg)), middle.y + r * std::sin(radians(deg))};
  };
  for (const PanelPlace& panel : parts.plan.panels) {
    extension(maker, at(panel.from_deg, radius + kOff_mm), at(panel.from_deg, radius + kBeyond_mm));
    const double beyond = panel.number == 1 ? ArrangementRooms::round_plan - 8 : 2;
    centre_line(maker, middle, at(panel.axis_deg, radius + beyond));
  }
}

/// The circles about the axis that glass and frame reach to: the breadths of the elevation.
void draw_over_all_circles(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperMap& map = parts.layout.plan;
  for (const double radius : {parts.glass.radius_mm, parts.metal.radius_mm})
    if (radius > 0) maker.draw(circle_stroke(map.focus, map.paper_per_mm * radius, LineClass::ray));
}

void name_panels(SheetMaker& maker, const ArrangementParts& parts) {
  const double radius = parts.layout.scale.paper_per_mm * parts.radius_mm();
  for (const PanelPlace& panel : parts.plan.panels) {
    const Panel& values = parts.plan.values.panels[static_cast<std::size_t>(panel.number - 1)];
    std::string words = fmt::format("P{:02} {}\u00B0", panel.number, shortest(values.width_deg));
    if (values.blind) words += " blind";
    if (parts.plan.values.frame.door_panel == panel.number) words += " door";
    write_outside(maker, parts.layout.plan.focus, radians((panel.from_deg + panel.to_deg) / 2), radius, words);
  }
}

void draw_hinge(SheetMaker& maker, const ArrangementParts& parts) {
  if (!parts.frame.hinge) return;
  const SpacePoint hinge = parts.frame.hinge->place;
  const PaperPoint at = place(parts.layout.plan, hinge.x, hinge.y);
  Stroke dot = circle_stroke(at, 0.9, LineClass::thin);
  dot.filled = true;
  maker.draw(std::move(dot));
  const double azimuth = std::atan2(hinge.y, hinge.x);
  const double radius = parts.layout.scale.paper_per_mm * std::hypot(hinge.x, hinge.y);
  write_outside(maker, parts.layout.plan.focus, azimuth, radius + 1, "hinge");
}

/// The axis of panel 1 ends in an arrow; panels turn past it, a fixed light shows it seaward.
void draw_seaward_arrow(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperPoint middle = parts.layout.plan.focus;
  const double tip =
      middle.x + parts.layout.scale.paper_per_mm * parts.radius_mm() + ArrangementRooms::round_plan - 5;
  maker.arrow({tip, middle.y}, 0);
  maker.write_at_free({"seaward", {}, kWords_mm, Anchor::right},
                      {{tip + 1, middle.y - 4}, {tip + 1, middle.y + 2}, {tip + 1, middle.y - 7}});
}

}  // namespace

int section_panel(const LensPlan& plan) {
  for (std::size_t i = 0; i < plan.panels.size(); ++i)
    if (!plan.values.panels[i].blind) return plan.panels[i].number;
  return 1;
}

void draw_elevation(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperMap& map = parts.layout.elevation;
  const LengthWords& lengths = parts.lengths;
  draw_lines(maker, parts.views.elevation, map);
  const double bottom = place(map, 0, parts.low_z()).y;
  const double top = place(map, 0, parts.high_z()).y;
  const double left = place(map, -parts.radius_mm(), 0).x;
  centre_line(maker, {map.focus.x, bottom - kBeyond_mm}, {map.focus.x, top + kBeyond_mm});
  const double section_end = place(parts.layout.section, parts.glass.radius_mm, 0).x;
  centre_line(maker, {left - kNear_mm - kOver_mm, map.focus.y}, {section_end + kBeyond_mm, map.focus.y});
  breadth(maker, map, parts.glass.radius_mm, bottom, kNear_mm,
          "glass \u00D8 " + lengths.plain(2 * parts.glass.radius_mm));
  if (parts.metal.radius_mm > 0)
    breadth(maker, map, parts.metal.radius_mm, bottom, kFar_mm,
            "frame \u00D8 " + lengths.plain(2 * parts.metal.radius_mm));

  for (const double y : {bottom, top}) extension(maker, {left - kOff_mm, y}, {left - kFar_mm - kOver_mm, y});
  upright_dimension(maker, bottom, map.focus.y, left - kNear_mm, lengths.plain(-parts.low_z()));
  upright_dimension(maker, bottom, top, left - kFar_mm, lengths.plain(parts.high_z() - parts.low_z()));
  maker.write_at_free({"Elevation, panel 1 to the viewer", {}, kWords_mm, Anchor::middle},
                      {{map.focus.x, top + kBeyond_mm + 1.5}});
  const double right = place(map, parts.radius_mm(), 0).x;
  maker.write_at_free({"focal plane", {}, kWords_mm, Anchor::middle},
                      {{(right + parts.layout.section.focus.x) / 2, map.focus.y + 1.2}});
}

void draw_arrangement_plan(SheetMaker& maker, const ArrangementParts& parts) {
  const PaperMap& map = parts.layout.plan;
  draw_lines(maker, parts.views.plan, map);
  maker.draw(circle_stroke(map.focus, 0.8, LineClass::thin));
  draw_over_all_circles(maker, parts);
  draw_sides_and_axes(maker, parts);
  draw_seaward_arrow(maker, parts);
  draw_hinge(maker, parts);
  name_panels(maker, parts);
  const double high = std::max(parts.radius_mm(), parts.views.plan.high.y);
  maker.write_at_free({"Plan from above", {}, kWords_mm, Anchor::middle},
                      {{map.focus.x, place(map, 0, high).y + ArrangementRooms::round_plan + 1}});
}

}  // namespace prismwright
