#include "tests/bench/embree_tracer.h"

#include <array>
#include <limits>
#include <thread>
#include <vector>

#include <embree3/rtcore.h>

namespace prismwright::bench {

namespace {

constexpr double kTurn = 2 * 3.14159265358979323846;
constexpr double kClear_mm = 1e-3;  ///< beyond the hit just left; single precision places a hit within 1e-4 mm
constexpr double kFaint = 1e-6;
constexpr int kMostMeetings = 12;
constexpr std::uint32_t kAir = std::numeric_limits<std::uint32_t>::max();

/// What a ray meets.
struct Meeting {
  bool met = false;
  double along_mm = 0;
  Vector place;
  Vector facet;   ///< outward normal of the triangle
  Vector normal;  ///< interpolated, outward, unit
  std::uint32_t part = 0;
};

using Short = std::array<float, 3>;
Short short_of(Vector v) { return {static_cast<float>(v.x), static_cast<float>(v.y), static_cast<float>(v.z)}; }
Vector vector_of(const Short& v) { return {v[0], v[1], v[2]}; }

/// All that a hit needs of a triangle, side by side: reading it from the mesh, corner by corner, takes as long
/// as finding the triangle. Directions are in single precision (4e-6 deg).
struct Facet {
  Vector corner;
  Short across;                      ///< outward, unit
  Short normal, normal_u, normal_v;  ///< at the first corner, and its growth towards the other two
  std::uint32_t part = 0;
};

}  // namespace

struct EmbreeTracer::Inside {
  explicit Inside(LensMesh lens) : mesh(std::move(lens)) {
    gather_facets();
    device = rtcNewDevice("threads=2,hugepages=1");
    scene = rtcNewScene(device);
    rtcSetSceneFlags(scene, RTC_SCENE_FLAG_ROBUST);
    rtcSetSceneBuildQuality(scene, RTC_BUILD_QUALITY_HIGH);
    attach_triangles();
    rtcCommitScene(scene);
  }
  ~Inside() {
    rtcReleaseScene(scene);
    rtcReleaseDevice(device);
  }
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;

  void gather_facets() {
    facets.reserve(mesh.triangles.size());
    for (const LensMesh::Triangle& t : mesh.triangles) {
      const LensMesh::Corner &a = mesh.corners[t.a], &b = mesh.corners[t.b], &c = mesh.corners[t.c];
      const Vector across = cross(b.place - a.place, c.place - a.place);
      const double size = length(across);
      facets.push_back({a.place, short_of(size > 0 ? (1 / size) * across : across), short_of(a.normal),
                        short_of(b.normal - a.normal), short_of(c.normal - a.normal), t.part});
    }
  }

  void attach_triangles() const {
    RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* corners = static_cast<float*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), mesh.corners.size()));
    for (const LensMesh::Corner& corner : mesh.corners) {
      *corners++ = static_cast<float>(corner.place.x);
      *corners++ = static_cast<float>(corner.place.y);
      *corners++ = static_cast<float>(corner.place.z);
    }
    auto* indices = static_cast<std::uint32_t*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(std::uint32_t),
                                mesh.triangles.size()));
    for (const LensMesh::Triangle& t : mesh.triangles) {
      *indices++ = t.a;
      *indices++ = t.b;
      *indices++ = t.c;
    }
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene, geometry);
    rtcReleaseGeometry(geometry);
  }

  /// The nearest triangle. Which one it is and where in it is Embree's answer, in single precision; its
  /// distance is worked out again in double.
  [[nodiscard]] Meeting nearest(Vector from, Vector along, double least_mm) const {
    RTCRayHit query{};
    query.ray.org_x = static_cast<float>(from.x);
    query.ray.org_y = static_cast<float>(from.y);
    query.ray.org_z = static_cast<float>(from.z);
    query.ray.dir_x = static_cast<float>(along.x);
    query.ray.dir_y = static_cast<float>(along.y);
    query.ray.dir_z = static_cast<float>(along.z);
    query.ray.tnear = static_cast<float>(least_mm);
    query.ray.tfar = std::numeric_limits<float>::infinity();
    query.ray.mask = ~0U;
    query.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcIntersect1(scene, &context, &query);
    if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return {};
    return meeting_at(query, from, along);
  }

  [[nodiscard]] Meeting meeting_at(const RTCRayHit& query, Vector from, Vector along) const {
    const Facet& facet = facets[query.hit.primID];
    Meeting found;
    found.met = true;
    found.part = facet.part;
    found.facet = vector_of(facet.across);
    const double slope = dot(along, found.facet);
    found.along_mm = slope != 0 ? dot(facet.corner - from, found.facet) / slope : query.ray.tfar;
    // A ray all but along a sliver has no good distance in double either.
    if (std::abs(found.along_mm - query.ray.tfar) > 0.01) found.along_mm = query.ray.tfar;
    found.place = from + found.along_mm * along;
    found.normal = unit(vector_of(facet.normal) + static_cast<double>(query.hit.u) * vector_of(facet.normal_u) +
                        static_cast<double>(query.hit.v) * vector_of(facet.normal_v));
    return found;
  }

  LensMesh mesh;
  std::vector<Facet> facets;
  RTCDevice device = nullptr;
  RTCScene scene = nullptr;

  class Walk;
};

/// A ray on its way.
class EmbreeTracer::Inside::Walk {
 public:
  Walk(const Inside& lens, const TraceOrder& order, const BenchLamp::Ray& ray, Dice& dice)
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
    if (!lens_.mesh.parts[met.part].glass) return stop(PathFound::End::metal);
    if (inside_ != kAir) absorb(met.along_mm);
    if (path_.weight < kFaint || path_.meetings >= kMostMeetings) return stop(PathFound::End::given_up);
    return pass(met);
  }

  // The next face that counts: of metal, of the prism that the ray is in, or seen from outside in air.
  [[nodiscard]] Meeting next() const {
    double least = path_.meetings > 0 ? kClear_mm : 0;
    for (int tries = 0; tries < 2 * kMostMeetings; ++tries) {
      Meeting met = lens_.nearest(path_.last_from, path_.last_along, least);
      if (!met.met || !lens_.mesh.parts[met.part].glass) return met;
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

  const Inside& lens_;
  const TraceOrder& order_;
  Dice& dice_;
  Field field_;
  std::uint32_t inside_ = kAir;
  PathFound path_;
};

namespace {

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

EmbreeTracer::EmbreeTracer(LensMesh mesh) : inside_(std::make_unique<Inside>(std::move(mesh))) {}
EmbreeTracer::~EmbreeTracer() = default;

const LensMesh& EmbreeTracer::mesh() const { return inside_->mesh; }

PathFound EmbreeTracer::follow(const BenchLamp::Ray& ray, const TraceOrder& order, Dice& dice) const {
  return Inside::Walk(*inside_, order, ray, dice).go();
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
