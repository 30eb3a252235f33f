#pragma once

#include <cstddef>
#include <memory>

#include <cairo.h>

#include "core/drawing/drawing.h"

namespace prismwright {

struct DestroySurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
using SurfaceOwner = std::unique_ptr<cairo_surface_t, DestroySurface>;
struct DestroyPen {
  void operator()(cairo_t* pen) const { cairo_destroy(pen); }
};
using PenOwner = std::unique_ptr<cairo_t, DestroyPen>;

/// Whether the picture has at least one point and three bytes for each.
bool is_whole(const PointImage& image);

/// The picture's points on a surface of their own; a whole picture only.
SurfaceOwner surface_of(const PointImage& image);
/// And back: the surface must be one that surface_of gave.
PointImage points_of(cairo_surface_t* surface);

}  // namespace prismwright
