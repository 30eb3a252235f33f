#include <fmt/format.h>

#include "geometry/image_surface.h"
#include "geometry/picture_studio.h"

namespace prismwright {

namespace {

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

Problem unwritten(std::string_view why) {
  return request_problem(
      "png", "picture",
      fmt::format("The picture could not be written as PNG ({}). Make it anew, smaller.", why));
}

}  // namespace

Outcome<std::string> png_bytes(const PointImage& image) {
  if (!is_whole(image)) return unwritten("it does not have three bytes for each of its points");
  std::string bytes;
  const auto status = cairo_surface_write_to_png_stream(surface_of(image).get(), append, &bytes);
  if (status != CAIRO_STATUS_SUCCESS) return unwritten(cairo_status_to_string(status));
  return bytes;
}

}  // namespace prismwright
