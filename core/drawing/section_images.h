#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/optics/section.h"

namespace prismwright {

/// One piece of glass as it stands in the section: a zone, or the image of a ring below the focal plane.
struct SectionImage {
  std::string mark;  ///< of the piece of glass as every mark ends: "U03"; of a ring "R2a" above, "R2b" below
  const Zone* zone = nullptr;
  Profile profile;
  bool lower_image = false;
  double from_deg = 0;  ///< limits, seen from the band's focal point; from < to
  double to_deg = 0;
};
/// Every piece of glass, zone by zone. They point into `section`. The images of `whole_rings` (zones by their
/// marks, see core/lens/whole_rings.h) are one piece of glass and have one mark, "R2".
std::vector<SectionImage> images_of(const Section& section, const std::set<std::string>& whole_rings = {});

/// How far glass and metal reach, mm; the focus is always within.
struct SectionReach {
  double outer_r = 0;
  double low_z = 0;
  double high_z = 0;
  double low_r = 0;   ///< of the place with the least z
  double high_r = 0;  ///< of the place with the greatest z
};
SectionReach reach_of(const Section& section, const std::vector<SectionImage>& images);

/// Where the section stands on the sheet, and how large.
struct PaperMap {
  PaperPoint focus;
  double paper_per_mm = 1;

  [[nodiscard]] PaperPoint at(SectionPoint p) const {
    return {focus.x + paper_per_mm * p.r, focus.y + paper_per_mm * p.z};
  }
  [[nodiscard]] std::vector<PaperPoint> at(const std::vector<SectionPoint>& points) const;
};

/// An outline on paper as lines and arcs, true curves within `tolerance_mm` (of the lens).
Stroke outline_stroke(const Profile& profile, const PaperMap& map, double tolerance_mm, bool closed = true);

}  // namespace prismwright
