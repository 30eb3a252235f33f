#pragma once

#include <cmath>

namespace prismwright::bench {

/// A place or a direction of the bench's own ray tracer, which shares no code with the program's light.
struct Vector {
  double x = 0, y = 0, z = 0;
};

inline Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Vector operator-(Vector a, Vector b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Vector operator*(double s, Vector a) { return {s * a.x, s * a.y, s * a.z}; }
inline double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vector cross(Vector a, Vector b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(Vector a) { return std::sqrt(dot(a, a)); }
inline Vector unit(Vector a) { return (1 / length(a)) * a; }
/// Any unit vector square to a unit vector.
inline Vector square_to(Vector a) {
  return unit(cross(a, std::abs(a.x) < 0.6 ? Vector{1, 0, 0} : Vector{0, 1, 0}));
}

}  // namespace prismwright::bench
