#pragma once

#include <QColor>

#include <Quantity_ColorRGBA.hxx>

namespace prismwright {

/// A screen colour as the solid modeller's (linear) colour.
inline Quantity_Color kernel_colour(const QColor& colour) {
  return {colour.redF(), colour.greenF(), colour.blueF(), Quantity_TOC_sRGB};
}

/// The same with its opacity.
inline Quantity_ColorRGBA kernel_fill(const QColor& colour, double opacity) {
  return Quantity_ColorRGBA(kernel_colour(colour), static_cast<float>(opacity));
}

}  // namespace prismwright
