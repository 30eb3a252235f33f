#include "tests/bench/triangle_scene.h"

#include <limits>

namespace prismwright::bench {

TriangleScene::TriangleScene(LensMesh lens) : mesh_(std::move(lens)) {
  gather_facets();
  device_ = rtcNewDevice("threads=2,hugepages=1");
  scene_ = rtcNewScene(device_);
  rtcSetSceneFlags(scene_, RTC_SCENE_FLAG_ROBUST);
  rtcSetSceneBuildQuality(scene_, RTC_BUILD_QUALITY_HIGH);
  attach_triangles();
  rtcCommitScene(scene_);
}

TriangleScene::~TriangleScene() {
  rtcReleaseScene(scene_);
  rtcReleaseDevice(device_);
}

void TriangleScene::gather_facets() {
  facets_.reserve(mesh_.triangles.size());
  for (const LensMesh::Triangle& t : mesh_.triangles) {
    const LensMesh::Corner &a = mesh_.corners[t.a], &b = mesh_.corners[t.b], &c = mesh_.corners[t.c];
    const Vector across = cross(b.place - a.place, c.place - a.place);
    const double size = length(across);
    facets_.push_back({a.place, short_of(size > 0 ? (1 / size) * across : across), short_of(a.normal),
                       short_of(b.normal - a.normal), short_of(c.normal - a.normal), t.part});
  }
}

void TriangleScene::attach_triangles() const {
  RTCGeometry geometry = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_TRIANGLE);
  auto* corners = static_cast<float*>(rtcSetNewGeometryBuffer(
      geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), mesh_.corners.size()));
  for (const LensMesh::Corner& corner : mesh_.corners) {
    *corners++ = static_cast<float>(corner.place.x);
    *corners++ = static_cast<float>(corner.place.y);
    *corners++ = static_cast<float>(corner.place.z);
  }
  auto* indices = static_cast<std::uint32_t*>(rtcSetNewGeometryBuffer(
      geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(std::uint32_t), mesh_.triangles.size()));
  for (const LensMesh::Triangle& t : mesh_.triangles) {
    *indices++ = t.a;
    *indices++ = t.b;
    *indices++ = t.c;
  }
  rtcCommitGeometry(geometry);
  rtcAttachGeometry(scene_, geometry);
  rtcReleaseGeometry(geometry);
}

Meeting TriangleScene::nearest(Vector from, Vector along, double least_mm) const {
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
  rtcIntersect1(scene_, &context, &query);
  if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return {};
  return meeting_at(query, from, along);
}

Meeting TriangleScene::meeting_at(const RTCRayHit& query, Vector from, Vector along) const {
  const Facet& facet = facets_[query.hit.primID];
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

}  // namespace prismwright::bench
