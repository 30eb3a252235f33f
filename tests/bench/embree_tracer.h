#pragma once

#include <cstdint>
#include <memory>

#include "tests/bench/bench_light.h"
#include "tests/bench/far_field.h"
#include "tests/bench/lens_mesh.h"

namespace prismwright::bench {

class TriangleScene;

/// Which way a ray goes on at a face that both reflects and refracts.
enum class Branches {
  main,      ///< refracted; the reflected share is counted as lost there
  roulette,  ///< drawn by Fresnel's shares: light reflected twice and more is there too
};

/// What is to be traced.
struct TraceOrder {
  BenchLamp lamp;
  double index = 1.4918;
  double absorption_per_mm = 0;  ///< natural logarithm
  Branches branches = Branches::main;
  FarGrid grid;
  std::uint64_t rays = 1000000;
  std::uint64_t seed = 1;
  int threads = 2;
};

/// Where the light of the lamp went: sums of weights, one for each ray.
struct TraceFates {
  double out = 0;        ///< left by way of the glass
  double missed = 0;     ///< met neither glass nor metal
  double metal = 0;      ///< stopped by ribs and rings
  double absorbed = 0;   ///< in the glass
  double reflected = 0;  ///< at refracting faces; Branches::main only
  double on_lamp = 0;    ///< came back to the lamp
  double given_up = 0;   ///< still on its way after 12 meetings, or of weight under 1e-6
  double astray = 0;     ///< lost by the mesh: at its edges, or grazing where smooth normal and facet disagree
  [[nodiscard]] double sum() const {
    return out + missed + metal + absorbed + reflected + on_lamp + given_up + astray;
  }
};

/// The result of many rays; results of other seeds may be added.
struct Trace {
  explicit Trace(const FarGrid& grid) : all(grid), one_prism(grid) {}
  double rays = 0;
  double flux_lm = 0;  ///< of the lamp
  TraceFates fates;
  FarField all;        ///< everything that left, by way of the glass or not
  FarField one_prism;  ///< only what went through one prism, with at most one total reflection inside
  double meetings = 0;
  void add(const Trace& other);
};

/// One path from its start to its end.
struct PathFound {
  enum class End { out, missed, metal, on_lamp, given_up, astray };
  End end = End::missed;
  Vector last_from, last_along;  ///< last stretch
  double weight = 1;             ///< that it ends with
  double absorbed = 0;
  double reflected = 0;
  int meetings = 0;
  int prisms = 0;        ///< entered
  int total_inside = 0;  ///< reflections inside glass
};

/// A forward ray tracer over the lens's triangles, independent of the program's own light: other geometry
/// (triangles of the finished solids instead of profiles), other intersection (Embree), other polarisation.
///
/// Refraction takes the interpolated normal, inside and outside are told by the facet's own. A ray inside a
/// prism minds that prism only, one in air minds faces seen from outside only, so that the hit just left needs
/// no more than 1e-3 mm of distance. Prisms that touch are not traced rightly: there must be a gap.
class EmbreeTracer {
 public:
  explicit EmbreeTracer(LensMesh mesh);
  ~EmbreeTracer();
  EmbreeTracer(const EmbreeTracer&) = delete;
  EmbreeTracer& operator=(const EmbreeTracer&) = delete;

  [[nodiscard]] const LensMesh& mesh() const;
  /// Equal orders give equal results, whatever the machine's load.
  [[nodiscard]] Trace trace(const TraceOrder& order) const;
  [[nodiscard]] PathFound follow(const BenchLamp::Ray& ray, const TraceOrder& order, Dice& dice) const;

 private:
  std::unique_ptr<TriangleScene> scene_;
};

}  // namespace prismwright::bench
