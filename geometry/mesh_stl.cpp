#include "geometry/mesh_stl.h"

#include <bit>
#include <cstring>

#include <fmt/format.h>

namespace prismwright {

namespace {

static_assert(std::endian::native == std::endian::little, "STL files hold little-endian numbers");

constexpr std::size_t kHeadBytes = 80;

void append(std::string& bytes, double x, double y, double z) {
  const float numbers[3] = {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)};
  bytes.append(reinterpret_cast<const char*>(numbers), sizeof numbers);
}

}  // namespace

std::string mesh_stl_bytes(const std::string& name, const SkinMesh& mesh) {
  std::string bytes = fmt::format("{} mm", name).substr(0, kHeadBytes);
  bytes.resize(kHeadBytes, '\0');
  const auto count = static_cast<std::uint32_t>(mesh.facets.size());
  bytes.append(reinterpret_cast<const char*>(&count), sizeof count);
  for (const auto& facet : mesh.facets) {
    const SpacePoint& a = mesh.corners[facet[0]];
    const SpaceVector n = cross(mesh.corners[facet[1]] - a, mesh.corners[facet[2]] - a);
    const double size = length(n);
    const SpaceVector out = size > 0 ? (1 / size) * n : SpaceVector{};
    append(bytes, out.x, out.y, out.z);
    for (const std::uint32_t corner : facet) {
      append(bytes, mesh.corners[corner].x, mesh.corners[corner].y, mesh.corners[corner].z);
    }
    bytes.append(2, '\0');
  }
  return bytes;
}

}  // namespace prismwright
