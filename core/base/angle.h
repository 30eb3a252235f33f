#pragma once

#include <numbers>

namespace prismwright {

inline constexpr double kPi = std::numbers::pi;

/// Degrees to radians. Code works in radians; screens, files and keys in degrees.
constexpr double radians(double degrees) { return degrees * (kPi / 180.0); }

/// Radians to degrees.
constexpr double degrees(double radians) { return radians * (180.0 / kPi); }

}  // namespace prismwright
