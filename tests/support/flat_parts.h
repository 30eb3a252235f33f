#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "core/base/angle.h"
#include "core/frame/frame_parts.h"

namespace prismwright {

/// Plates of simple shapes, as frames have them.

/// Part of an annulus about the origin: what a rib looks like. Anticlockwise.
inline PlateChain annular_sector(double inner_mm, double outer_mm, double from_deg, double to_deg) {
  const auto at = [](double radius, double deg) {
    return PlatePoint{radius * std::cos(radians(deg)), radius * std::sin(radians(deg))};
  };
  const double turn = radians(to_deg - from_deg);
  return {{at(inner_mm, from_deg), at(outer_mm, from_deg), 0, {}, 0},
          {at(outer_mm, from_deg), at(outer_mm, to_deg), turn, {0, 0}, outer_mm},
          {at(outer_mm, to_deg), at(inner_mm, to_deg), 0, {}, 0},
          {at(inner_mm, to_deg), at(inner_mm, from_deg), -turn, {0, 0}, inner_mm}};
}

/// An upright rectangle from the origin.
inline PlateChain rectangle_chain(double wide_mm, double high_mm) {
  return straight_chain({{0, 0}, {wide_mm, 0}, {wide_mm, high_mm}, {0, high_mm}});
}

inline FlatPart flat_part(std::string mark, PartKind kind, double thickness_mm, PlateChain outline,
                          std::string shape_key) {
  FlatPart part;
  part.mark = std::move(mark);
  part.kind = kind;
  part.thickness_mm = thickness_mm;
  part.outline = std::move(outline);
  part.shape_key = std::move(shape_key);
  return part;
}

inline FlatPart ring_part(std::string mark, double inner_mm, double outer_mm, double thickness_mm = 8) {
  FlatPart part =
      flat_part(std::move(mark), PartKind::ring, thickness_mm, circle_chain({0, 0}, outer_mm), "ring");
  part.openings = {circle_chain({0, 0}, inner_mm)};
  return part;
}

/// The plates of a lens of so many panels, of the size and number of a fourth-order lens times `scale`; unequal
/// panels have ribs of their own.
inline std::vector<FlatPart> plates_of_a_lens(int panels, double scale, bool unequal) {
  std::vector<FlatPart> flats;
  for (int panel = 1; panel <= panels; ++panel) {
    const std::string mark = "P" + std::to_string(panel);
    const double more = unequal ? panel : 0;
    const PlateChain left = annular_sector(250 * scale, 300 * scale + more, -55 + more, 60);
    const std::string key = unequal ? std::to_string(panel) : "";
    flats.push_back(flat_part(mark + "-rib-left", PartKind::side_rib, 5, left, "left" + key));
    flats.push_back(flat_part(mark + "-rib-right", PartKind::side_rib, 5, mirrored(left), "right" + key));
    for (const char* end : {"-rail-top", "-rail-bottom"}) {
      flats.push_back(
          flat_part(mark + end, PartKind::rail, 8, rectangle_chain(200 * scale + more, 20), "rail" + key));
      flats.back().holes = {{{10, 10}, 6, 0, true, "vent"}};
    }
  }
  flats.push_back(ring_part("ring-top", 220 * scale, 250 * scale));
  flats.push_back(ring_part("ring-bottom", 220 * scale, 250 * scale));
  return flats;
}

}  // namespace prismwright
