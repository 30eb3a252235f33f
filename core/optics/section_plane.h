#pragma once

#include <cmath>

namespace prismwright {

/// A place in the meridional plane: r seaward from the focus, z up, both in mm.
struct SectionPoint {
  double r = 0;
  double z = 0;
};

/// A displacement in the meridional plane, mm.
struct SectionOffset {
  double r = 0;
  double z = 0;

  [[nodiscard]] double length() const { return std::sqrt(r * r + z * z); }
};

/// A unit vector in the meridional plane: unit by construction.
class SectionDirection {
 public:
  SectionDirection() = default;  ///< level, seaward

  /// Direction at `angle` radians above the level seaward direction.
  static SectionDirection at(double angle) { return {std::cos(angle), std::sin(angle)}; }
  /// Direction of `offset`; the offset must not be zero.
  static SectionDirection along(SectionOffset offset) {
    const double length = offset.length();
    return {offset.r / length, offset.z / length};
  }

  [[nodiscard]] double r() const { return r_; }
  [[nodiscard]] double z() const { return z_; }
  /// Elevation above level, radians, in (-pi, pi].
  [[nodiscard]] double elevation() const { return std::atan2(z_, r_); }
  [[nodiscard]] SectionDirection reversed() const { return {-r_, -z_}; }
  /// Turned a quarter anticlockwise.
  [[nodiscard]] SectionDirection quarter_turn() const { return {-z_, r_}; }
  [[nodiscard]] SectionDirection mirrored() const { return {r_, -z_}; }

 private:
  SectionDirection(double r, double z) : r_(r), z_(z) {}
  double r_ = 1;
  double z_ = 0;
};

inline SectionOffset operator-(SectionPoint a, SectionPoint b) { return {a.r - b.r, a.z - b.z}; }
inline SectionPoint operator+(SectionPoint p, SectionOffset d) { return {p.r + d.r, p.z + d.z}; }
inline SectionPoint operator-(SectionPoint p, SectionOffset d) { return {p.r - d.r, p.z - d.z}; }
inline SectionOffset operator*(double length, SectionDirection u) { return {length * u.r(), length * u.z()}; }
inline SectionOffset operator*(double k, SectionOffset d) { return {k * d.r, k * d.z}; }
inline SectionOffset operator+(SectionOffset a, SectionOffset b) { return {a.r + b.r, a.z + b.z}; }

inline double dot(SectionDirection a, SectionDirection b) { return a.r() * b.r() + a.z() * b.z(); }
inline double dot(SectionOffset a, SectionDirection b) { return a.r * b.r() + a.z * b.z(); }
inline double dot(SectionOffset a, SectionOffset b) { return a.r * b.r + a.z * b.z; }
/// Positive when b lies anticlockwise of a.
inline double cross(SectionDirection a, SectionDirection b) { return a.r() * b.z() - a.z() * b.r(); }
inline double cross(SectionOffset a, SectionDirection b) { return a.r * b.z() - a.z * b.r(); }
inline double cross(SectionDirection a, SectionOffset b) { return a.r() * b.z - a.z() * b.r; }
inline double cross(SectionOffset a, SectionOffset b) { return a.r * b.z - a.z * b.r; }

inline double distance(SectionPoint a, SectionPoint b) { return (b - a).length(); }
inline SectionPoint mirrored(SectionPoint p) { return {p.r, -p.z}; }
inline SectionPoint between(SectionPoint a, SectionPoint b, double share) {
  return {a.r + share * (b.r - a.r), a.z + share * (b.z - a.z)};
}

}  // namespace prismwright
