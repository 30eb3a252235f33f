#include "core/drawing/section_view.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/base/angle.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/hatch.h"

namespace prismwright {

namespace {

constexpr double kHatch_mm = 1.8;
constexpr double kFineHatch_mm = 1.0;  ///< for pieces less than 40 mm2 on paper
constexpr double kSmallPiece_mm2 = 40;
constexpr double kRibHatch_mm = 0.7;
constexpr double kFocus_mm = 0.8;
constexpr double kWords_mm = 2.5;

/// Texts keep off the sides of a polygon.
void keep_clear_of(SheetMaker& maker, const std::vector<PaperPoint>& polygon) {
  for (std::size_t i = 0; i < polygon.size(); ++i)
    maker.keep_clear(polygon[i], polygon[(i + 1) % polygon.size()]);
}

void draw_image(SheetMaker& maker, const SheetView& view, const SectionImage& image, bool falling) {
  constexpr double kPaperChord_mm = 0.01;
  const PaperMap& map = view.layout.map;
  const auto polygon = map.at(polygon_of(image.profile, kPaperChord_mm / map.paper_per_mm));
  const double paper_area = area_mm2(image.profile) * map.paper_per_mm * map.paper_per_mm;
  for (Stroke& line : hatch_lines(polygon, paper_area < kSmallPiece_mm2 ? kFineHatch_mm : kHatch_mm, falling)) {
    maker.draw(std::move(line));
  }
  maker.draw(outline_stroke(image.profile, map, view.tolerance_mm));
  keep_clear_of(maker, polygon);
}

/// A limiting ray: from a band's focal point at an elevation to the glass that it limits.
struct LimitRay {
  SectionPoint from;
  double deg = 0;
  double length_mm = 0;
};

/// Distance from the focal point of the place on a piece with the highest (or lowest) elevation.
double distance_of_limit(const SectionImage& image, SectionPoint focus, bool highest) {
  const auto polygon = polygon_of(image.profile, 0.05);
  const auto elevation = [&](SectionPoint p) { return std::atan2(p.z - focus.z, p.r - focus.r); };
  const auto found = highest ? std::ranges::max_element(polygon, {}, elevation)
                             : std::ranges::min_element(polygon, {}, elevation);
  return distance(focus, *found);
}

void add_limit(std::vector<LimitRay>& rays, const LimitRay& ray) {
  constexpr double kSame_deg = 0.02;
  const bool known = std::ranges::any_of(rays, [&](const LimitRay& other) {
    return std::abs(other.deg - ray.deg) < kSame_deg && distance(other.from, ray.from) < 1e-6;
  });
  if (!known) rays.push_back(ray);
}

std::vector<LimitRay> limits_of(const SheetView& view, Band band) {
  const SectionImage* lowest = nullptr;
  const SectionImage* highest = nullptr;
  for (const SectionImage& image : view.images) {
    if (band_of(image.zone->kind) != band) continue;
    if (!lowest || image.from_deg < lowest->from_deg) lowest = &image;
    if (!highest || image.to_deg > highest->to_deg) highest = &image;
  }
  if (!lowest) return {};
  const SectionPoint focus{0, view.section.aim_of(lowest->zone->kind).focus_z_mm};
  return {{focus, lowest->from_deg, distance_of_limit(*lowest, focus, false)},
          {focus, highest->to_deg, distance_of_limit(*highest, focus, true)}};
}

void draw_limit(SheetMaker& maker, const PaperMap& map, const LimitRay& ray) {
  const SectionDirection along = SectionDirection::at(radians(ray.deg));
  const PaperPoint from = map.at(ray.from);
  const PaperPoint to = map.at(ray.from + ray.length_mm * along);
  maker.line(from, to, LineClass::ray);
  maker.keep_clear(from, to);
}

/// On which side of a ray its elevation is written: away from a ray that runs close by, else towards the focal
/// plane, where the room is widest. 1: above.
double side_of_words(const LimitRay& ray, const std::vector<LimitRay>& rays) {
  constexpr double kClose_deg = 25;
  double side = ray.deg > 0 ? -1 : 1;
  double nearest = kClose_deg;
  for (const LimitRay& other : rays) {
    const double off = std::abs(other.deg - ray.deg);
    if (&other == &ray || off >= nearest) continue;
    nearest = off;
    side = other.deg > ray.deg ? -1 : 1;
  }
  return side;
}

void name_limit(SheetMaker& maker, const PaperMap& map, const LimitRay& ray, double side) {
  const SectionDirection along = SectionDirection::at(radians(ray.deg));
  const SectionDirection above = along.quarter_turn();
  const std::string words = degrees_words(ray.deg) + "\u00B0";
  const double half = text_width_mm(words, kWords_mm) / 2;
  const double off = 1.2 + half * std::abs(along.z()) + kWords_mm * std::abs(along.r());
  std::vector<PaperPoint> places;
  for (const double way : {side, -side}) {
    for (const double share : {0.8, 0.75, 0.7, 0.85, 0.65, 0.6, 0.55, 0.5, 0.9, 0.45, 0.4, 0.35}) {
      const PaperPoint p = map.at(ray.from + share * ray.length_mm * along);
      places.push_back({p.x + way * off * above.r(), p.y + way * off * above.z() - 0.35 * kWords_mm});
    }
  }
  maker.write_at_free({words, {}, kWords_mm, Anchor::middle, false, false}, places);
}

void draw_focus(SheetMaker& maker, PaperPoint place, const std::string& words) {
  maker.draw(circle_stroke(place, kFocus_mm, LineClass::thin));
  const double half = text_width_mm(words, kWords_mm) / 2 + kFocus_mm + 1;
  maker.write_at_free({words, {}, kWords_mm, Anchor::middle, false, false}, {{place.x - half, place.y + 1.2},
                                                                             {place.x - half, place.y - 3.2},
                                                                             {place.x + half, place.y - 3.2},
                                                                             {place.x - half, place.y + 5},
                                                                             {place.x - half, place.y - 7}});
}

void draw_focal_points(SheetMaker& maker, const SheetView& view) {
  draw_focus(maker, view.layout.map.focus, "focus");
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    const double z = band_aim(view.section.input, band).focus_z_mm;
    const bool has_zones =
        std::ranges::any_of(view.section.zones, [&](const Zone& zone) { return band_of(zone.kind) == band; });
    if (z == 0 || !has_zones) continue;
    draw_focus(maker, view.layout.map.at(SectionPoint{0, z}), std::string(name_of(band)));
  }
}

}  // namespace

void draw_glass(SheetMaker& maker, const SheetView& view) {
  bool falling = false;
  for (const SectionImage& image : view.images) {
    draw_image(maker, view, image, falling);
    if (image.zone->kind != ZoneKind::ring || image.lower_image) falling = !falling;
  }
  for (const SectionRib& rib : view.section.ribs) {
    const PaperPoint low = view.layout.map.at(rib.low);
    const PaperPoint high = view.layout.map.at(rib.high);
    const std::vector<PaperPoint> corners = {low, {high.x, low.y}, high, {low.x, high.y}};
    for (Stroke& line : hatch_lines(corners, kRibHatch_mm, false)) maker.draw(std::move(line));
    maker.draw(rectangle_stroke(low, high, LineClass::outline));
    keep_clear_of(maker, corners);
  }
}

void draw_axes_and_limits(SheetMaker& maker, const SheetView& view) {
  constexpr double kBeyond_mm = 5;
  constexpr double kBetweenHeights_mm = 15;
  const PaperMap& map = view.layout.map;
  const PaperPoint top = map.at(SectionPoint{0, view.reach.high_z});
  const PaperPoint bottom = map.at(SectionPoint{0, view.reach.low_z});
  const PaperPoint seaward = map.at(SectionPoint{view.reach.outer_r, 0});
  const double foot = bottom.y - SheetRooms::lower + 2;
  maker.line({top.x, foot}, {top.x, top.y + kBeyond_mm}, LineClass::centre);
  maker.keep_clear({top.x, foot}, {top.x, top.y + kBeyond_mm});
  // On the left it ends between the two columns of heights, clear of the words of the outer one.
  maker.line({map.focus.x - kBetweenHeights_mm, map.focus.y}, {seaward.x + 8, map.focus.y}, LineClass::centre);
  maker.keep_clear({map.focus.x - kBetweenHeights_mm, map.focus.y}, {seaward.x + 8, map.focus.y});

  std::vector<LimitRay> rays;
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    for (const LimitRay& ray : limits_of(view, band)) add_limit(rays, ray);
  }
  for (const LimitRay& ray : rays) draw_limit(maker, map, ray);
  for (const LimitRay& ray : rays) name_limit(maker, map, ray, side_of_words(ray, rays));
  draw_focal_points(maker, view);
  const double half = text_width_mm("lens axis", kWords_mm) / 2 + 1.5;
  maker.write_at_free({"lens axis", {}, kWords_mm, Anchor::middle, false, false},
                      {{top.x + half, top.y + 2.5}, {top.x - half, top.y + 2.5}, {top.x + half, top.y - 3}});
  const double plane = text_width_mm("focal plane", kWords_mm) / 2;
  std::vector<PaperPoint> places;
  for (const double share : {0.55, 0.6, 0.65, 0.5, 0.45, 0.7, 0.4, 0.35, 0.3}) {
    places.push_back(
        {map.focus.x + share * (map.at(SectionPoint{view.section.input.focal_mm, 0}).x - map.focus.x),
         map.focus.y + 1});
  }
  places.push_back({seaward.x + 2 + plane, map.focus.y + 1});
  maker.write_at_free({"focal plane", {}, kWords_mm, Anchor::middle, false, false}, places);
}

void draw_dimensions(SheetMaker& maker, const SheetView& view) {
  constexpr double kBelowPlane_mm = 8;
  constexpr double kFirst_mm = 12;  ///< nearest column of heights, left of the axis
  constexpr double kSecond_mm = 21;
  constexpr double kOff_mm = 1;     ///< extension lines off the glass
  constexpr double kOver_mm = 1.5;  ///< extension lines beyond their dimension
  const PaperMap& map = view.layout.map;
  const PaperPoint focus = map.focus;
  const PaperPoint inner = map.at(SectionPoint{view.section.input.focal_mm, 0});
  level_dimension(maker, focus.x, inner.x, focus.y - kBelowPlane_mm,
                  view.lengths.plain(view.section.input.focal_mm));

  const PaperPoint top = map.at(SectionPoint{0, view.reach.high_z});
  const PaperPoint bottom = map.at(SectionPoint{0, view.reach.low_z});
  const double far = focus.x - kSecond_mm;
  const PaperPoint uppermost = map.at(SectionPoint{view.reach.high_r, view.reach.high_z});
  const PaperPoint lowest = map.at(SectionPoint{view.reach.low_r, view.reach.low_z});
  for (const PaperPoint glass : {uppermost, lowest}) {
    maker.line({glass.x - kOff_mm, glass.y}, {far - kOver_mm, glass.y});
    maker.keep_clear({glass.x - kOff_mm, glass.y}, {far - kOver_mm, glass.y});
  }
  upright_dimension(maker, bottom.y, focus.y, focus.x - kFirst_mm, view.lengths.plain(-view.reach.low_z));
  upright_dimension(maker, focus.y, top.y, focus.x - kFirst_mm, view.lengths.plain(view.reach.high_z));
  upright_dimension(maker, bottom.y, top.y, far, view.lengths.plain(view.reach.high_z - view.reach.low_z));

  const double outer_x = map.at(SectionPoint{view.reach.outer_r, 0}).x;
  const double y = bottom.y - SheetRooms::lower + 4;
  maker.line({outer_x, bottom.y + 4}, {outer_x, y - kOver_mm});
  level_dimension(maker, focus.x, outer_x, y, view.lengths.plain(view.reach.outer_r));
}

}  // namespace prismwright
