#pragma once

#include <string>
#include <vector>

#include "core/light/light_settings.h"

namespace prismwright {

inline constexpr double kMetresPerNauticalMile = 1852;
inline constexpr double kNightThreshold_lux = 2e-7;
inline constexpr double kNominalVisibility_nmi = 10;

/// Intensity that is just seen at a distance, cd, by Allard's law: I = (1852 d)^2 E 0.05^(-d / V), with d and
/// the visibility V in nautical miles and E the threshold in lux. Published: 33 CFR 84.14, COLREG Annex I 8
/// (with 3.43e6 for 1852^2).
double intensity_for_range_cd(double distance_nmi, double visibility_nmi = kNominalVisibility_nmi,
                              double threshold_lux = kNightThreshold_lux);

/// The distance at which an intensity is just seen, nautical miles; 0 for no light.
double luminous_range_nmi(double intensity_cd, double visibility_nmi = kNominalVisibility_nmi,
                          double threshold_lux = kNightThreshold_lux);

/// Distance at which a light of that height first shows over the sea's edge to an eye of that height, nautical
/// miles: 1.147 (sqrt h + sqrt H), heights in feet (Encyclopaedia Britannica 1911, Table III).
double geographic_range_nmi(double light_height_m, double eye_height_m);

/// The range of one colour through the air of one visibility.
struct RangeRow {
  double visibility_nmi = 0;
  double white_nmi = 0;
  double red_nmi = 0;
  double green_nmi = 0;
  double yellow_nmi = 0;
};
/// Shares of the white intensity that coloured screens let through.
struct ScreenFactors {
  double red = 1;
  double green = 1;
  double yellow = 1;
};
/// Ranges of an intensity through air from fog to very clear.
std::vector<RangeRow> range_table(double intensity_cd, const ScreenFactors& factors, double threshold_lux);

/// The historic rule for the intensity of a lens, cd: P C V H / (v h), with P the lamp's own intensity, C a
/// constant of .75 to .9, V and H the vertical and horizontal angle of the light taken, v and h those into
/// which it is gathered (Encyclopaedia Britannica 1911, p. 639). An order of magnitude.
double historic_intensity_cd(double lamp_cd, double constant, double taken_up_deg, double taken_round_deg,
                             double beam_up_deg, double beam_round_deg);

}  // namespace prismwright
