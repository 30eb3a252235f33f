#include "geometry/despatch/prism_views.h"

#include <algorithm>

#include <TopLoc_Location.hxx>

#include "geometry/picture_studio.h"

namespace prismwright {

namespace {

/// Facets keep within this share of the prism's length from its faces, far under a line's width on paper.
constexpr double kChord_share = 2e-4;
constexpr double kLeastChord_mm = 0.005;
constexpr double kQuarter_deg = 90;

}  // namespace

Outcome<PrismSolidFacts> solid_facts(const PlannedPrism& prism, const PrismBody& body,
                                     const Progress& progress) {
  PrismSolidFacts facts{body.volume_mm3, body.mass_g, {}, {}};
  // In the frame in which it was made, which is its panel's.
  const PicturePart part{prism.mark, body.shape.Located(TopLoc_Location()), PartStuff::glass};
  const double chord_mm = std::max(kLeastChord_mm, kChord_share * body.greatest_length_mm);
  const auto studio = PictureStudio::of({part}, chord_mm, progress);
  if (!studio) return studio.problem();
  auto from_sea = studio->lines({0, 0}, progress);
  if (!from_sea) return from_sea.problem();
  facts.from_sea = std::move(*from_sea);
  auto from_end = studio->lines({prism.trim.anticlockwise_side_deg + kQuarter_deg, 0}, progress);
  if (!from_end) return from_end.problem();
  facts.from_end = std::move(*from_end);
  return facts;
}

}  // namespace prismwright
