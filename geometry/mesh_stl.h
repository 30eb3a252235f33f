#pragma once

#include <string>

#include "geometry/mesh_of_solid.h"

namespace prismwright {

/// The bytes of a binary STL file of a mesh, mm.
std::string mesh_stl_bytes(const std::string& name, const SkinMesh& mesh);

}  // namespace prismwright
