#pragma once

#include <random>

#include "core/lens/choice_words.h"
#include "core/lens/quantities.h"

namespace prismwright {

/// Draws by lot, always the same for the same seed.
class Lot {
 public:
  explicit Lot(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  bool once_in(int n) { return whole(1, n) == 1; }
  template <class Choice>
  Choice any() {
    const auto& words = kChoiceWords<Choice>;
    return words[static_cast<std::size_t>(whole(0, static_cast<int>(words.size()) - 1))].first;
  }

 private:
  std::mt19937 engine_;
};

/// Every lens of a run has its own seed, so that any of them can be drawn again without those before it.
inline unsigned lot_seed(int run, int number) {
  return 1000u * static_cast<unsigned>(run) + static_cast<unsigned>(number);
}

inline void draw_division(BandSettings& band, bool refracting, Lot& lot) {
  do {
    band.division = lot.any<Division>();
  } while (band.division == Division::by_hand || (refracting && band.division == Division::side));
  band.count = lot.whole(2, 14);
}

/// A lens drawn over order, focal distance, index, curves, power, joints, lands, gaps, ribs, limits, divisions,
/// turning axes, aims and focal points; every division but the one by hand. Many cannot exist.
inline LensValues random_lens(Lot& lot) {
  const char* orders[] = {"hyper-radial", "1", "2", "3", "3.5", "4", "5", "6"};
  const Work work = lot.any<Work>();
  LensValues values = starting_values(orders[lot.whole(0, 7)], work, lot.whole(4, 9));
  values.brief.focal_mm *= lot.between(0.9, 1.1);
  values.material.index = lot.between(1.47, 1.62);
  const double f = values.brief.focal_mm;
  SectionSettings& s = values.section;
  s.faces = lot.any<Faces>();
  s.joint = lot.any<Joint>();
  s.land_mm = lot.between(0, 0.004 * f);
  s.gap_mm = lot.once_in(4) ? 0 : lot.between(0, 0.004 * f);
  for (CornerLand* land : {&s.land_a, &s.land_b, &s.land_c}) {
    land->shape = lot.any<LandShape>();
    if (lot.once_in(3)) land->size_mm = lot.between(0, 0.003 * f);
  }
  s.refracting_to_deg = lot.between(15, 40);
  s.upper_to_deg = lot.between(s.refracting_to_deg, 82);
  s.lower_to_deg = lot.between(s.refracting_to_deg, 60);
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    BandSettings& own = s.of(band);
    draw_division(own, band == Band::refracting, lot);
    own.section_thickness_mm = lot.between(0.04, 0.12) * f;
    own.power = lot.any<Power>();
    own.faces = lot.any<BandFaces>();
    own.turning = lot.any<BandTurning>();
    if (lot.once_in(3)) own.focus_z_mm = lot.between(-0.02, 0.03) * f;
    if (lot.once_in(3)) own.aim_deg = lot.between(-1, 1);
  }
  if (lot.once_in(3)) s.upper_rib_mm = lot.between(0, 0.02 * f);
  if (lot.once_in(3)) s.lower_rib_mm = lot.between(0, 0.02 * f);
  if (lot.once_in(2)) {  // prisms that reach right to their side planes
    values.frame.pocket_mm = values.frame.rib_mm;
    values.frame.end_gap_mm = 0;
  }
  return values;
}

}  // namespace prismwright
