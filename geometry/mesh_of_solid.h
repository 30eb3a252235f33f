#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/space.h"

namespace prismwright {

/// The skin of a solid as triangles, corners shared: each edge belongs to exactly two triangles, which run
/// along it in opposite directions.
struct SkinMesh {
  std::vector<SpacePoint> corners;                   ///< mm
  std::vector<std::array<std::uint32_t, 3>> facets;  ///< anticlockwise seen from outside
  double chord_mm = 0;                               ///< that it was made with

  [[nodiscard]] double volume_mm3() const;
  /// Whether each edge belongs to exactly two facets, once in each direction.
  [[nodiscard]] bool is_closed() const;
};

/// The facets that the kernel's mesher gives at this deflection, those that have shrunk to nothing left out;
/// blank where a face has none. Not looked at whether they close. The solid itself is not changed. Throws
/// Standard_Failure.
std::optional<SkinMesh> skin_of(const TopoDS_Shape& solid, double deflection_mm);

/// Facets depart from their faces by no more than `chord_mm`. Corners are single-precision numbers, as files
/// keep them, and one for each place. Refused (code "mesh") when the skin does not come out closed.
Outcome<SkinMesh> mesh_of(const std::string& name, const TopoDS_Shape& solid, double chord_mm);

/// The same with the chord chosen, from 0.05 mm down, so that the mesh's volume is within `share` of
/// `volume_mm3`.
Outcome<SkinMesh> mesh_within(const std::string& name, const TopoDS_Shape& solid, double volume_mm3,
                              double share);

}  // namespace prismwright
