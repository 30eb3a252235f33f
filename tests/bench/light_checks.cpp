#include "tests/bench/light_checks.h"

#include <algorithm>

namespace prismwright::bench {

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;
constexpr double kBareBand = 10 * kDegree;

/// Box of a lens seen along its axis: half its greatest width, and its heights.
struct Seen {
  double reach = 0, low = 0, high = 0;
};

Seen seen_of(const LensMesh& mesh) {
  Seen seen;
  for (const LensMesh::Corner& corner : mesh.corners) {
    seen.reach = std::max(seen.reach, std::hypot(corner.place.x, corner.place.y));
    seen.low = std::min(seen.low, corner.place.z);
    seen.high = std::max(seen.high, corner.place.z);
  }
  return seen;
}

}  // namespace

double straight_through(double index) {
  const double r = (index - 1) / (index + 1);
  return (1 - r * r) * (1 - r * r);
}

double traced_straight_through(const EmbreeTracer& tracer, const TraceOrder& order) {
  Dice dice(order.seed);
  constexpr int kRays = 20000;
  double sum = 0;
  for (int i = 0; i < kRays; ++i) {
    // A hair off the axis, where the triangles of a pole all meet.
    const PathFound path = tracer.follow({{0, 0, 0}, unit({1, 1e-5, 2e-5})}, order, dice);
    if (path.end == PathFound::End::out) sum += path.weight;
  }
  return sum / kRays;
}

double traced_glass_mm(const EmbreeTracer& tracer, const TraceOrder& order) {
  TraceOrder clear = order, dim = order;
  clear.absorption_per_mm = 0;
  dim.absorption_per_mm = 0.01;
  return std::log(traced_straight_through(tracer, clear) / traced_straight_through(tracer, dim)) / 0.01;
}

double bare_lamp_cd(const BenchLamp& lamp, std::uint64_t rays) {
  Dice dice(5);
  const double band = std::sin(kBareBand);
  std::uint64_t found = 0;
  for (std::uint64_t i = 0; i < rays; ++i) found += std::abs(lamp.ray(dice).along.z) < band ? 1 : 0;
  return lamp.flux_lm() * static_cast<double>(found) / static_cast<double>(rays) / (720 * kDegree * band);
}

double bare_lamp_closed_cd(const BenchLamp& lamp) {
  const double round = 45 * kDegree * lamp.width_mm * lamp.width_mm;
  if (lamp.sphere) return lamp.luminance_cd_mm2 * round;
  const double cosine = (kBareBand / 2 + std::sin(2 * kBareBand) / 4) / std::sin(kBareBand);
  const double sine = std::sin(kBareBand) / 2;
  return lamp.luminance_cd_mm2 * (lamp.width_mm * lamp.height_mm * cosine + round * sine);
}

double belt_peak_cd(const EmbreeTracer& tracer, const TraceOrder& order, double from_deg, double to_deg) {
  Dice dice(order.seed);
  constexpr int kRays = 200000;
  const double step = (to_deg - from_deg) / kRays * kDegree;
  double integral_mm = 0;
  bool was_level = false;
  double height_before = 0, light_before = 0;
  for (int i = 0; i < kRays; ++i) {
    const double t = from_deg * kDegree + (i + 0.5) * step;
    const PathFound path = tracer.follow({{0, 0, 0}, {std::cos(t), 0, std::sin(t)}}, order, dice);
    const bool level = path.end == PathFound::End::out && path.prisms == 1 &&
                       std::abs(path.last_along.z) < std::sin(0.5 * kDegree);
    const double light = path.weight * std::cos(t);
    const double rise = path.last_from.z - height_before;
    // From one prism to the next the height jumps; inside one it moves by less than a tenth of a millimetre.
    if (level && was_level && std::abs(rise) < 0.1) {
      integral_mm += (light + light_before) / 2 * std::abs(rise);
    }
    was_level = level;
    height_before = path.last_from.z;
    light_before = light;
  }
  return order.lamp.luminance_cd_mm2 * order.lamp.width_mm * integral_mm;
}

SentBack sent_back_cd(const EmbreeTracer& tracer, const TraceOrder& order, std::uint64_t rays) {
  const Seen seen = seen_of(tracer.mesh());
  const double area = 2 * seen.reach * (seen.high - seen.low);
  Dice dice(order.seed + 77);
  double sum = 0, squares = 0;
  for (std::uint64_t i = 0; i < rays; ++i) {
    const double y = seen.reach * (2 * dice.roll() - 1);
    const double z = seen.low + (seen.high - seen.low) * dice.roll();
    const PathFound path = tracer.follow({{seen.reach + 10, y, z}, {-1, 0, 0}}, order, dice);
    if (path.end != PathFound::End::on_lamp) continue;
    sum += path.weight;
    squares += path.weight * path.weight;
  }
  const auto count = static_cast<double>(rays);
  const double scale = order.lamp.luminance_cd_mm2 * area / count;
  return {scale * sum, scale * std::sqrt(std::max(0.0, squares - sum * sum / count))};
}

}  // namespace prismwright::bench
