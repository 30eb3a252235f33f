#pragma once

#include <array>
#include <complex>
#include <cstdint>

#include "tests/bench/bench_vector.h"

namespace prismwright::bench {

/// Random numbers: xoshiro256++ (Blackman and Vigna, public domain), seeded through splitmix64 as its authors
/// advise. Each thread has its own, seeded by seed and thread.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) {
    for (std::uint64_t& word : state_) {
      seed += 0x9e3779b97f4a7c15ULL;
      std::uint64_t z = seed;
      z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
      z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
      word = z ^ (z >> 31);
    }
  }
  /// Evenly from 0 to 1, never 1.
  double roll() {
    const std::uint64_t answer = rotated(state_[0] + state_[3], 23) + state_[0];
    const std::uint64_t t = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= t;
    state_[3] = rotated(state_[3], 45);
    return static_cast<double>(answer >> 11) * 0x1.0p-53;
  }

 private:
  static std::uint64_t rotated(std::uint64_t x, int by) { return (x << by) | (x >> (64 - by)); }
  std::array<std::uint64_t, 4> state_{};
};

/// The field of a ray that is wholly polarised, of power 1.
///
/// Unpolarised light is taken as rays each polarised at an angle of its own, drawn evenly at the lamp: the mean
/// over that angle is exactly what two independent halves at right angles give. Along the path the field is
/// split into s and p anew at each face, with the phases of total reflection, so that the turn of the plane of
/// incidence from face to face is kept.
class Field {
 public:
  /// Polarised at an angle about the ray (radians).
  Field(Vector along, double angle);

  struct Face {
    Vector in, out, normal;  ///< unit; out of the branch that is taken; the normal either way round
    double n_from = 1, n_to = 1;
  };
  /// Share of the power that a face reflects, 1 where it is total.
  [[nodiscard]] double reflected_share(const Face& face) const;
  /// Takes the branch; the power is set to 1 again.
  void refract(const Face& face);
  void reflect(const Face& face);

 private:
  using Complex = std::complex<double>;
  struct Parts {
    Complex s, p;
  };
  /// Cosines on both sides, that of the far one imaginary where the reflection is total.
  struct Cosines {
    double near_side = 1;
    Complex far_side = 1;
  };
  static Cosines cosines(const Face& face);
  static Parts reflection(const Face& face);
  static Vector across(const Face& face);
  [[nodiscard]] Parts split(const Face& face, Vector s) const;
  void put(Parts parts, Vector s, Vector out);

  std::array<Complex, 3> e_;
};

/// Refracted direction; false where the reflection is total.
bool refracted(Vector in, Vector normal, double n_from, double n_to, Vector& out);
inline Vector reflected(Vector in, Vector normal) { return in - 2 * dot(in, normal) * normal; }

/// What shines: an upright cylinder (its ends shine too) or a sphere about the focus, by Lambert's law.
struct BenchLamp {
  bool sphere = false;
  double width_mm = 8;
  double height_mm = 12;  ///< cylinder
  double luminance_cd_mm2 = 1;
  Vector middle;

  [[nodiscard]] double surface_mm2() const;
  [[nodiscard]] double flux_lm() const;
  struct Ray {
    Vector from, along;
  };
  /// Evenly over the surface, by the cosine law: all rays carry the same flux.
  [[nodiscard]] Ray ray(Dice& dice) const;
  /// Distance along a ray from outside at which it meets the lamp; negative where it does not.
  [[nodiscard]] double meet(Vector from, Vector along) const;
};

}  // namespace prismwright::bench
