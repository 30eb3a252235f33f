#include "core/optics/colour_fan.h"

#include "core/base/angle.h"
#include "core/optics/section_pieces.h"

namespace prismwright {

namespace {

constexpr int kHalvings = 30;

/// The section as light of one index finds it; its glass stays as it was worked out.
class OneColour {
 public:
  OneColour(Section section, double index) : pieces_(in_index(std::move(section), index)) {
    for (int band = 0; band < kBands; ++band)
      views_[band] = pieces_.seen_from(band_aim(pieces_.held.input, static_cast<Band>(band)).focus_z_mm);
  }

  [[nodiscard]] std::optional<double> departure_deg(const Zone& zone, double elevation) const {
    const TracedRay ray = pieces_.trace(views_[static_cast<int>(band_of(zone.kind))], elevation);
    if (!ray.regular || ray.piece->zone->mark != zone.mark) return std::nullopt;
    return ray.departure_deg;
  }

  /// The outermost elevation between a lit one and `end` whose ray comes the zone's own way.
  [[nodiscard]] double outermost(const Zone& zone, double lit, double end) const {
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (lit + end);
      (departure_deg(zone, middle) ? lit : end) = middle;
    }
    return lit;
  }

 private:
  static Section in_index(Section section, double index) {
    section.input.index = index;
    return section;
  }

  SectionPieces pieces_;
  SectionView views_[kBands];
};

}  // namespace

std::vector<ZoneColours> colour_fan(const Section& section, const OfLines<double>& index) {
  const OneColour design(section, section.input.index);
  const OneColour blue(section, index.f);
  const OneColour yellow(section, index.d);
  const OneColour red(section, index.c);
  std::vector<ZoneColours> fan;
  for (const Zone& zone : section.zones) {
    const auto at = [&](double elevation) -> ColourDepartures {
      return {blue.departure_deg(zone, elevation), yellow.departure_deg(zone, elevation),
              red.departure_deg(zone, elevation)};
    };
    const double from = radians(zone.from_deg);
    const double to = radians(zone.to_deg);
    const double middle = 0.5 * (from + to);
    fan.push_back({zone.mark, at(design.outermost(zone, middle, from)), at(middle),
                   at(design.outermost(zone, middle, to))});
  }
  return fan;
}

}  // namespace prismwright
