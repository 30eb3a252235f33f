#include "tests/bench/embree_tracer.h"

#include <limits>
#include <thread>
#include <vector>

#include "tests/bench/triangle_scene.h"

namespace prismwright::bench {

namespace {

constexpr double kTurn = 2 * 3.14159265358979323846;
constexpr double kClear_mm = 1e-3;  ///< beyond the hit just left
constexpr double kFaint = 1e-6;
constexpr int kMostMeetings = 12;
constexpr std::uint32_t kAir = std::numeric_limits<std::uint32_t>::max();

/// A ray on its way.
class Walk {
 public:
  Walk(const TriangleScene& lens, const TraceOrder& order, const BenchLamp::Ray& ray, Dice& dice)
      : lens_(lens), order_(order), dice_(dice), field_(ray.along, kTurn * dice.roll()) {
    path_.last_from = ray.from;
    path_.last_along = ray.along;
  }

  PathFound go() {
    while (step()) {
    }
    return path_;
  }

 private:
  bool stop(PathFound::End end) {
    path_.end = end;
    return false;
  }

  // Answers whether the ray goes on.
  bool step() {
    const Meeting met = next();
    if (inside_ == kAir && path_.meetings > 0) {
      const double lamp = order_.lamp.meet(path_.last_from, path_.last_along);
      if (lamp > 0 && (!met.met || lamp < met.along_mm)) return stop(PathFound::End::on_lamp);
    }
    if (!met.met) {
      if (inside_ != kAir) return stop(PathFound::End::astray);
      return stop(path_.meetings > 0 ? PathFound::End::out : PathFound::End::missed);
    }
    ++path_.meetings;
    if (!lens_.mesh().parts[met.part].glass) return stop(PathFound::End::metal);
    if (inside_ != kAir) absorb(met.along_mm);
    if (path_.weight < kFaint || path_.meetings >= kMostMeetings) return stop(PathFound::End::given_up);
    return pass(met);
  }

  // The next face that counts: of metal, of the prism that the ray is in, or seen from outside in air.
  [[nodiscard]] Meeting next() const {
    double least = path_.meetings > 0 ? kClear_mm : 0;
    for (int tries = 0; tries < 2 * kMostMeetings; ++tries) {
      Meeting met = lens_.nearest(path_.last_from, path_.last_along, least);
      if (!met.met || !lens_.mesh().parts[met.part].glass) return met;
      const bool from_outside = dot(path_.last_along, met.facet) < 0;
      if (inside_ == kAir ? from_outside : met.part == inside_ && !from_outside) return met;
      least = met.along_mm + kClear_mm;
    }
    return {};
  }

  void absorb(double mm) {
    const double left = path_.weight * std::exp(-order_.absorption_per_mm * mm);
    path_.absorbed += path_.weight - left;
    path_.weight = left;
  }

  bool pass(const Meeting& met) {
    const bool enters = inside_ == kAir;
    Field::Face face;
    face.in = path_.last_along;
    face.normal = met.normal;
    face.n_from = enters ? 1 : order_.index;
    face.n_to = enters ? order_.index : 1;
    if ((dot(face.in, met.normal) < 0) != enters) return stop(PathFound::End::astray);
    const bool total = !refracted(face.in, face.normal, face.n_from, face.n_to, face.out);
    if (total || turns_back(face)) {
      face.out = reflected(face.in, face.normal);
      field_.reflect(face);
      if (!enters) ++path_.total_inside;
    } else {
      field_.refract(face);
      inside_ = enters ? met.part : kAir;
      path_.prisms += enters ? 1 : 0;
    }
    const bool goes_out = inside_ == kAir;
    path_.last_from = met.place;
    path_.last_along = unit(face.out);
    if ((dot(face.out, met.facet) > 0) != goes_out) return stop(PathFound::End::astray);
    return true;
  }

  // Whether the reflected branch is taken; if not, what the face reflects is lost to the main branch.
  bool turns_back(const Field::Face& face) {
    const double share = field_.reflected_share(face);
    if (order_.branches == Branches::roulette) return dice_.roll() < share;
    path_.reflected += share * path_.weight;
    path_.weight *= 1 - share;
    return false;
  }

  const TriangleScene& lens_;
  const TraceOrder& order_;
  Dice& dice_;
  Field field_;
  std::uint32_t inside_ = kAir;
  PathFound path_;
};

void add_path(const PathFound& path, Trace& trace) {
  TraceFates& fates = trace.fates;
  fates.absorbed += path.absorbed;
  fates.reflected += path.reflected;
  trace.meetings += path.meetings;
  switch (path.end) {
    case PathFound::End::out:
      fates.out += path.weight;
      if (path.prisms == 1 && path.meetings == 2 + path.total_inside && path.total_inside < 2) {
        trace.one_prism.add(path.last_along, path.weight);
      }
      trace.all.add(path.last_along, path.weight);
      break;
    case PathFound::End::missed:
      fates.missed += path.weight;
      trace.all.add(path.last_along, path.weight);
      break;
    case PathFound::End::metal:
      fates.metal += path.weight;
      break;
    case PathFound::End::on_lamp:
      fates.on_lamp += path.weight;
      break;
    case PathFound::End::given_up:
      fates.given_up += path.weight;
      break;
    case PathFound::End::astray:
      fates.astray += path.weight;
      break;
  }
}

}  // namespace

void Trace::add(const Trace& other) {
  rays += other.rays;
  flux_lm = other.flux_lm;
  meetings += other.meetings;
  fates.out += other.fates.out;
  fates.missed += other.fates.missed;
  fates.metal += other.fates.metal;
  fates.absorbed += other.fates.absorbed;
  fates.reflected += other.fates.reflected;
  fates.on_lamp += other.fates.on_lamp;
  fates.given_up += other.fates.given_up;
  fates.astray += other.fates.astray;
  all.add(other.all);
  one_prism.add(other.one_prism);
}

EmbreeTracer::EmbreeTracer(LensMesh mesh) : scene_(std::make_unique<TriangleScene>(std::move(mesh))) {}
EmbreeTracer::~EmbreeTracer() = default;

const LensMesh& EmbreeTracer::mesh() const { return scene_->mesh(); }

PathFound EmbreeTracer::follow(const BenchLamp::Ray& ray, const TraceOrder& order, Dice& dice) const {
  return Walk(*scene_, order, ray, dice).go();
}

Trace EmbreeTracer::trace(const TraceOrder& order) const {
  const auto threads = static_cast<std::uint64_t>(order.threads);
  std::vector<Trace> parts(threads, Trace(order.grid));
  std::vector<std::thread> workers;
  for (std::uint64_t i = 0; i < threads; ++i) {
    workers.emplace_back([&, i] {
      Dice dice(order.seed * 1000003 + i);
      const std::uint64_t rays = order.rays * (i + 1) / threads - order.rays * i / threads;
      Trace own(order.grid);
      for (std::uint64_t r = 0; r < rays; ++r) add_path(follow(order.lamp.ray(dice), order, dice), own);
      own.rays = static_cast<double>(rays);
      parts[i] = std::move(own);
    });
  }
  for (std::thread& worker : workers) worker.join();
  Trace all(order.grid);
  for (const Trace& part : parts) all.add(part);
  all.flux_lm = order.lamp.flux_lm();
  return all;
}

}  // namespace prismwright::bench
