#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace prismwright {

/// The wavelength of the design unless the project says otherwise: helium d line.
inline constexpr double kDesignWavelength_nm = 587.6;

/// A lens material: its index of refraction by wavelength, and what it weighs.
class Medium {
 public:
  /// One term of n^2 = constant + sum of terms, L in micrometres.
  struct Term {
    double factor;  ///< multiplies L^power, or L^2 / (L^2 - pole) when `pole` is set
    int power;
    std::optional<double> pole_um2;
  };

  Medium(std::string name, std::string words, double constant, std::vector<Term> terms, double density_g_cm3,
         double index_per_k = 0);
  /// A medium whose index is the same at every wavelength.
  static Medium constant(std::string name, std::string words, double index, double density_g_cm3);

  [[nodiscard]] const std::string& name() const { return name_; }    ///< key word: "acrylic", "crown", "n-bk7"
  [[nodiscard]] const std::string& words() const { return words_; }  ///< as shown to the maker
  [[nodiscard]] double density_g_cm3() const { return density_g_cm3_; }
  /// Change of the index per kelvin.
  [[nodiscard]] double index_per_k() const { return index_per_k_; }
  /// Index at a wavelength in nm (formulas hold from about 400 to 1000 nm).
  [[nodiscard]] double index(double wavelength_nm = kDesignWavelength_nm) const;

 private:
  std::string name_;
  std::string words_;
  double constant_;
  std::vector<Term> terms_;
  double density_g_cm3_;
  double index_per_k_;
};

/// The materials that the program knows, in the order in which they are offered.
const std::vector<Medium>& media();
/// The medium of that name, or null.
const Medium* find_medium(std::string_view name);

}  // namespace prismwright
