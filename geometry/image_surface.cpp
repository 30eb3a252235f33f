#include "geometry/image_surface.h"

#include <cstdint>

namespace prismwright {

bool is_whole(const PointImage& image) {
  return image.wide > 0 && image.high > 0 &&
         image.rgb.size() == 3 * static_cast<std::size_t>(image.wide) * static_cast<std::size_t>(image.high);
}

SurfaceOwner surface_of(const PointImage& image) {
  SurfaceOwner surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, image.wide, image.high));
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return surface;
  unsigned char* bytes = cairo_image_surface_get_data(surface.get());
  const int stride = cairo_image_surface_get_stride(surface.get());
  const std::uint8_t* from = image.rgb.data();
  for (int y = 0; y < image.high; ++y) {
    auto* row = reinterpret_cast<std::uint32_t*>(bytes + static_cast<std::ptrdiff_t>(y) * stride);
    for (int x = 0; x < image.wide; ++x, from += 3) {
      row[x] = static_cast<std::uint32_t>(from[0]) << 16U | static_cast<std::uint32_t>(from[1]) << 8U | from[2];
    }
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

PointImage points_of(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  PointImage image;
  image.wide = cairo_image_surface_get_width(surface);
  image.high = cairo_image_surface_get_height(surface);
  const unsigned char* bytes = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < image.high; ++y) {
    const auto* row = reinterpret_cast<const std::uint32_t*>(bytes + static_cast<std::ptrdiff_t>(y) * stride);
    for (int x = 0; x < image.wide; ++x) {
      for (const unsigned shift : {16U, 8U, 0U})
        image.rgb.push_back(static_cast<std::uint8_t>(row[x] >> shift & 255U));
    }
  }
  return image;
}

}  // namespace prismwright
