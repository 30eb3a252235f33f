#include "core/optics/medium.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

Medium::Medium(std::string name, std::string words, double constant, std::vector<Term> terms,
               double density_g_cm3, double index_per_k)
    : name_(std::move(name)),
      words_(std::move(words)),
      constant_(constant),
      terms_(std::move(terms)),
      density_g_cm3_(density_g_cm3),
      index_per_k_(index_per_k) {}

Medium Medium::constant(std::string name, std::string words, double index, double density_g_cm3) {
  return {std::move(name), std::move(words), index * index, {}, density_g_cm3};
}

double Medium::index(double wavelength_nm) const {
  const double length_um = wavelength_nm / 1000.0;
  const double square = length_um * length_um;
  double n_squared = constant_;
  for (const Term& term : terms_) {
    n_squared +=
        term.factor * (term.pole_um2 ? square / (square - *term.pole_um2) : std::pow(length_um, term.power));
  }
  return std::sqrt(n_squared);
}

const std::vector<Medium>& media() {
  static const std::vector<Medium> all = {
      // Index: Beadie 2015, refractiveindex.info database (CC0). Density: handbook value for cast sheet. Change
      // with temperature: middle of the published range of -0.85e-4 to -1.3e-4 per kelvin.
      {"acrylic",
       "Acrylic (cast)",
       2.1778,
       {{6.1209e-3, 2, {}},
        {-1.5004e-3, 4, {}},
        {2.3678e-2, -2, {}},
        {-4.2137e-3, -4, {}},
        {7.3417e-4, -6, {}},
        {-4.5042e-5, -8, {}}},
       1.19,
       -1.05e-4},
      // Index: Encyclopaedia Britannica, 11th ed., vol. 16, p. 635. Density 2.5 g/cm3: from memory.
      Medium::constant("crown", "Historic crown glass", 1.51, 2.5),
      // Index: N-BK7 Sellmeier terms, refractiveindex.info database (CC0). Density 2.51 g/cm3 and change with
      // temperature 2e-6 per kelvin: from memory.
      {"n-bk7",
       "N-BK7 glass",
       1.0,
       {{1.03961212, 0, 0.00600069867}, {0.231792344, 0, 0.0200179144}, {1.01046945, 0, 103.560653}},
       2.51,
       2e-6},
  };
  return all;
}

const Medium* find_medium(std::string_view name) {
  const auto& all = media();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Medium& m) { return m.name() == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace prismwright
