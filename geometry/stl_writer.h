#pragma once

#include <string>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"

namespace prismwright {

/// The bytes of a binary STL file of a solid, mm, as it lies in the lens frame; no facet departs from its face
/// by more than `chord_mm`. Facets of neighbouring faces share their corners exactly, so that the skin is
/// closed. Facets that have shrunk to nothing are left out. The shape itself is not changed.
Outcome<std::string> stl_bytes(const std::string& mark, const TopoDS_Shape& shape, double chord_mm);

/// Refuses a chord tolerance outside 0.001 to 5 mm (code "chord").
Done check_stl_chord(double chord_mm);

}  // namespace prismwright
