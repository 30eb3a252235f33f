#include "geometry/pictures/picture_scene.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include <embree3/rtcore.h>

namespace prismwright {

namespace {

constexpr float kSameFace_mm = 1e-3F;

/// A question to the tracer that keeps whatever glass is met.
struct Gathering : RTCIntersectContext {
  const std::vector<ScenePart>* parts = nullptr;
  std::vector<Meeting>* met = nullptr;
};

/// Glass is noted and let through, metal ends the ray.
void gather(const RTCFilterFunctionNArguments* asked) {
  auto& gathering = *static_cast<Gathering*>(asked->context);
  for (unsigned i = 0; i < asked->N; ++i) {
    if (asked->valid[i] == 0) continue;
    const unsigned part = RTCHitN_geomID(asked->hit, asked->N, i);
    if (!(*gathering.parts)[part].glass) continue;
    const float across = RTCHitN_Ng_x(asked->hit, asked->N, i) * RTCRayN_dir_x(asked->ray, asked->N, i) +
                         RTCHitN_Ng_y(asked->hit, asked->N, i) * RTCRayN_dir_y(asked->ray, asked->N, i) +
                         RTCHitN_Ng_z(asked->hit, asked->N, i) * RTCRayN_dir_z(asked->ray, asked->N, i);
    gathering.met->push_back({RTCRayN_tfar(asked->ray, asked->N, i), part,
                              RTCHitN_primID(asked->hit, asked->N, i), RTCHitN_u(asked->hit, asked->N, i),
                              RTCHitN_v(asked->hit, asked->N, i), across < 0});
    asked->valid[i] = 0;
  }
}

RTCRay ray_of(const SpaceRay& ray) {
  RTCRay own{};
  own.org_x = static_cast<float>(ray.from.x);
  own.org_y = static_cast<float>(ray.from.y);
  own.org_z = static_cast<float>(ray.from.z);
  own.dir_x = static_cast<float>(ray.along.x);
  own.dir_y = static_cast<float>(ray.along.y);
  own.dir_z = static_cast<float>(ray.along.z);
  own.tfar = std::numeric_limits<float>::infinity();
  own.mask = ~0U;
  return own;
}

}  // namespace

struct PictureScene::Inside {
  RTCDevice device = rtcNewDevice("threads=2");
  RTCScene scene = rtcNewScene(device);

  Inside() { rtcSetSceneFlags(scene, RTC_SCENE_FLAG_ROBUST | RTC_SCENE_FLAG_CONTEXT_FILTER_FUNCTION); }
  ~Inside() {
    rtcReleaseScene(scene);
    rtcReleaseDevice(device);
  }
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;

  void add(const ScenePart& part, unsigned number) {
    RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* corner = static_cast<float*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), part.solid->nodes.size()));
    for (const PicturedSolid::Node& node : part.solid->nodes) {
      const SpacePoint p = part.place.out_of(node.place);
      *corner++ = static_cast<float>(p.x);
      *corner++ = static_cast<float>(p.y);
      *corner++ = static_cast<float>(p.z);
    }
    // The solid's own list of facets serves all of its places.
    rtcSetSharedGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, part.solid->facets.data(),
                               0, sizeof(PicturedSolid::Facet), part.solid->facets.size());
    rtcCommitGeometry(geometry);
    rtcAttachGeometryByID(scene, geometry, number);
    rtcReleaseGeometry(geometry);
  }
};

PictureScene::PictureScene(std::vector<ScenePart> parts)
    : parts_(std::move(parts)), inside_(std::make_unique<Inside>()) {
  for (std::size_t i = 0; i < parts_.size(); ++i) inside_->add(parts_[i], static_cast<unsigned>(i));
  rtcCommitScene(inside_->scene);
}

PictureScene::~PictureScene() = default;

bool PictureScene::is_blocked(const SpaceRay& ray) const {
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  RTCRay own = ray_of(ray);
  rtcOccluded1(inside_->scene, &context, &own);
  return own.tfar < 0;
}

void PictureScene::meetings(const SpaceRay& ray, std::vector<Meeting>& met) const {
  met.clear();
  Gathering context;
  rtcInitIntersectContext(&context);
  context.filter = gather;
  context.parts = &parts_;
  context.met = &met;
  RTCRayHit own{ray_of(ray), {}};
  own.hit.geomID = RTC_INVALID_GEOMETRY_ID;
  rtcIntersect1(inside_->scene, &context, &own);
  if (own.hit.geomID != RTC_INVALID_GEOMETRY_ID) {
    std::erase_if(met, [&](const Meeting& m) { return m.along_mm > own.ray.tfar; });
    met.push_back({own.ray.tfar, own.hit.geomID, own.hit.primID, own.hit.u, own.hit.v, true});
  }
  std::sort(met.begin(), met.end(), [](const Meeting& a, const Meeting& b) {
    return std::tie(a.along_mm, a.part, a.facet) < std::tie(b.along_mm, b.part, b.facet);
  });
  const auto same = [&](const Meeting& a, const Meeting& b) {
    const auto& facets = parts_[a.part].solid->facets;
    return a.part == b.part && b.along_mm - a.along_mm < kSameFace_mm &&
           facets[a.facet].face == facets[b.facet].face && a.front == b.front;
  };
  met.erase(std::unique(met.begin(), met.end(), same), met.end());
}

}  // namespace prismwright
