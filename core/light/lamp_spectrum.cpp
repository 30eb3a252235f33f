#include "core/light/lamp_spectrum.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kSlice_nm = 1;
constexpr double kSecondRadiation_nm_k = 1.438776877e7;  // c2, SI 2019

/// Slices of 1 nm over the eye's range, by a smooth relative power per nm.
template <class Power>
std::vector<SpectralSlice> sliced(const Power& power) {
  std::vector<SpectralSlice> slices;
  for (double nm = kEyeFrom_nm; nm <= kEyeTo_nm; nm += kSlice_nm) slices.push_back({nm, power(nm)});
  return slices;
}

/// Planck's law relative to its value at 560 nm, which keeps the numbers near 1.
double planck(double nm, double c2_nm_k, double temperature_k) {
  return std::pow(560 / nm, 5) * std::expm1(c2_nm_k / (temperature_k * 560)) /
         std::expm1(c2_nm_k / (temperature_k * nm));
}

}  // namespace

LampSpectrum LampSpectrum::slices(std::vector<SpectralSlice> relative) {
  LampSpectrum light;
  light.slices_ = std::move(relative);
  const double flux = light.flux();
  for (SpectralSlice& slice : light.slices_) slice.power /= flux;
  return light;
}

Outcome<LampSpectrum> LampSpectrum::black_body(double temperature_k) {
  if (!(temperature_k >= kLeastBlackBody_k && temperature_k <= kGreatestBlackBody_k))
    return request_problem(
        "lamp.temperature", "lamp.temperature_k",
        fmt::format("A black body of {} K is outside {} to {} K; give a temperature between, "
                    "2856 K for a filament lamp.",
                    temperature_k, kLeastBlackBody_k, kGreatestBlackBody_k));
  return slices(sliced([&](double nm) { return planck(nm, kSecondRadiation_nm_k, temperature_k); }));
}

LampSpectrum LampSpectrum::illuminant_a() {
  // The illuminant keeps the c2 of 1931, with which its temperature was 2848 K.
  return slices(sliced([](double nm) { return planck(nm, 1.435e7, 2848); }));
}

LampSpectrum LampSpectrum::white_led() {
  static const LampSpectrum led = points(white_led_points());
  return led;
}

Outcome<LampSpectrum> LampSpectrum::line(double nm) {
  if (!(nm >= kEyeFrom_nm && nm <= kEyeTo_nm))
    return request_problem("lamp.line", "lamp.line_nm",
                           fmt::format("A line at {} nm is outside {} to {} nm, where the eye sees; give a "
                                       "wavelength between.",
                                       nm, kEyeFrom_nm, kEyeTo_nm));
  return slices({{nm, 1}});
}

LampSpectrum LampSpectrum::points(const Spectrum& emission) {
  // Slices end at the points too, so that a spike narrower than a slice is not missed: taken at its middle,
  // the power of a straight piece is exact.
  std::vector<double> places;
  for (double nm = kEyeFrom_nm; nm <= kEyeTo_nm; nm += kSlice_nm) places.push_back(nm);
  for (const SpectrumPoint& point : emission.points())
    if (point.nm > kEyeFrom_nm && point.nm < kEyeTo_nm) places.push_back(point.nm);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::vector<SpectralSlice> slices_of;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double middle = 0.5 * (places[i] + places[i + 1]);
    slices_of.push_back({middle, emission.at(middle) * (places[i + 1] - places[i])});
  }
  return slices(std::move(slices_of));
}

Xyz LampSpectrum::xyz() const {
  Xyz sum;
  for (const SpectralSlice& slice : slices_) sum += slice.power * eye_at(slice.nm);
  return sum;
}

double LampSpectrum::flux_between(double from_nm, double to_nm) const {
  double flux = 0;
  for (const SpectralSlice& slice : slices_)
    if (slice.nm >= from_nm && slice.nm < to_nm) flux += slice.power * eye_at(slice.nm).y;
  return flux;
}

LampSpectrum LampSpectrum::through(const std::function<double(double)>& share) const {
  LampSpectrum left = *this;
  for (SpectralSlice& slice : left.slices_) slice.power *= share(slice.nm);
  return left;
}

const Spectrum& white_led_points() {
  static const Spectrum points =
      Spectrum::from_text(
          "400:0, 410:0.01, 420:0.05, 430:0.20, 440:0.65, 445:0.90, 450:0.96, 455:0.84, 460:0.60, 470:0.30, "
          "480:0.18, 490:0.18, 500:0.27, 510:0.40, 520:0.52, 530:0.63, 540:0.73, 550:0.82, 560:0.90, 570:0.96, "
          "580:1, 590:1, 600:0.96, 610:0.89, 620:0.80, 630:0.70, 640:0.60, 650:0.50, 660:0.41, 670:0.33, "
          "680:0.26, 690:0.20, 700:0.16, 720:0.09, 740:0.05, 760:0.03, 780:0.01",
          SpectrumKind::emission, "white_led")
          .value();
  return points;
}

Outcome<LampSpectrum> spectrum_of(const Lamp& lamp) {
  switch (lamp.light) {
    case LampLight::black_body:
      return LampSpectrum::black_body(lamp.temperature_k);
    case LampLight::illuminant_a:
      return LampSpectrum::illuminant_a();
    case LampLight::white_led:
      return LampSpectrum::white_led();
    case LampLight::line:
      return LampSpectrum::line(lamp.line_nm);
    case LampLight::points:
      break;
  }
  const auto emission = Spectrum::from_text(lamp.spectrum, SpectrumKind::emission, "lamp.spectrum");
  if (!emission) return emission.problem();
  return LampSpectrum::points(*emission);
}

}  // namespace prismwright
