#pragma once

#include <string>

#include "core/base/outcome.h"
#include "geometry/mesh_of_solid.h"

namespace prismwright {

/// The bytes of a 3MF file (ISO/IEC 25422, core specification; unit millimetre) with one object of that name.
/// Equal meshes give equal bytes: the packed files carry no time of their own.
std::string three_mf_bytes(const std::string& name, const SkinMesh& mesh);

}  // namespace prismwright
