#include "geometry/drawing_pdf.h"

#include <cmath>
#include <map>
#include <memory>

#include <cairo-pdf.h>
#include <fmt/format.h>

#include "core/drawing/text_box.h"
#include "geometry/image_surface.h"

namespace prismwright {

namespace {

constexpr double kPointsPer_mm = 72 / 25.4;
constexpr double kQuarter = 1.5707963267948966;

/// Pictures in hand: one that lies on several sheets is one in the file.
using Surfaces = std::map<const PointImage*, SurfaceOwner>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

void trace(cairo_t* pen, const Stroke& stroke) {
  cairo_new_path(pen);
  cairo_move_to(pen, stroke.start.x, stroke.start.y);
  PaperPoint from = stroke.start;
  for (const PaperStep& step : stroke.steps) {
    if (step.turn != 0) {
      const double start = std::atan2(from.y - step.centre.y, from.x - step.centre.x);
      const auto sweep = step.turn > 0 ? cairo_arc : cairo_arc_negative;
      sweep(pen, step.centre.x, step.centre.y, step.radius_mm, start, start + step.turn);
    }
    // After an arc this closes what rounding leaves between its end and the corner.
    cairo_line_to(pen, step.to.x, step.to.y);
    from = step.to;
  }
  if (stroke.closed) cairo_close_path(pen);
}

void draw(cairo_t* pen, const DrawnPicture& picture, Surfaces& surfaces) {
  if (!picture.image || !is_whole(*picture.image)) return;
  const auto [at, fresh] = surfaces.try_emplace(picture.image.get());
  if (fresh) at->second = surface_of(*picture.image);
  cairo_save(pen);
  // The sheet's y runs up, the picture's rows run down.
  cairo_translate(pen, picture.low.x, picture.high.y);
  cairo_scale(pen, (picture.high.x - picture.low.x) / picture.image->wide,
              (picture.low.y - picture.high.y) / picture.image->high);
  cairo_set_source_surface(pen, at->second.get(), 0, 0);
  cairo_rectangle(pen, 0, 0, picture.image->wide, picture.image->high);
  cairo_fill(pen);
  cairo_restore(pen);
}

/// Over what was drawn before, under the stroke's own line.
void fill(cairo_t* pen, const Stroke& stroke) {
  if (stroke.tone) {
    cairo_set_source_rgb(pen, stroke.tone->red / 255.0, stroke.tone->green / 255.0, stroke.tone->blue / 255.0);
  }
  if (stroke.tone || stroke.filled) cairo_fill_preserve(pen);
  cairo_set_source_rgb(pen, 0, 0, 0);
}

void draw(cairo_t* pen, const Stroke& stroke) {
  trace(pen, stroke);
  fill(pen, stroke);
  const auto dashes = dashes_mm(stroke.line);
  cairo_set_dash(pen, dashes.data(), static_cast<int>(dashes.size()), 0);
  cairo_set_line_width(pen, width_mm(stroke.line));
  cairo_stroke(pen);
}

void draw(cairo_t* pen, const DrawnText& text) {
  cairo_select_font_face(pen, "sans", CAIRO_FONT_SLANT_NORMAL,
                         text.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_save(pen);
  cairo_translate(pen, text.place.x, text.place.y);
  if (text.turned) cairo_rotate(pen, kQuarter);
  // The sheet's y runs up, letters' y runs down.
  cairo_scale(pen, 1, -1);
  cairo_set_font_size(pen, text.size_mm);
  const std::string words = clean_words(text.words);
  cairo_text_extents_t extents;
  cairo_text_extents(pen, words.c_str(), &extents);
  const double share = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::middle ? 0.5 : 1;
  cairo_move_to(pen, -share * extents.x_advance, 0);
  cairo_show_text(pen, words.c_str());
  cairo_restore(pen);
}

void draw(cairo_t* pen, const Sheet& sheet, Surfaces& surfaces) {
  cairo_save(pen);
  cairo_translate(pen, 0, sheet.size.height_mm() * kPointsPer_mm);
  cairo_scale(pen, kPointsPer_mm, -kPointsPer_mm);
  cairo_set_line_join(pen, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(pen, CAIRO_LINE_CAP_BUTT);
  for (const DrawnPicture& picture : sheet.pictures) draw(pen, picture, surfaces);
  cairo_set_source_rgb(pen, 0, 0, 0);
  for (const Stroke& stroke : sheet.strokes) draw(pen, stroke);
  for (const DrawnText& text : sheet.texts) draw(pen, text);
  cairo_restore(pen);
  cairo_show_page(pen);
}

Problem undrawn(cairo_status_t status) {
  return request_problem("pdf", "drawing",
                         fmt::format("The PDF could not be made ({}). Write the drawing as SVG or DXF.",
                                     cairo_status_to_string(status)));
}

}  // namespace

Outcome<std::string> pdf_bytes(const Drawing& drawing) {
  std::string bytes;
  const SurfaceOwner surface(cairo_pdf_surface_create_for_stream(append, &bytes, 595, 842));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, clean_words(drawing.title).c_str());
  if (!drawing.date.empty()) {
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE,
                                   clean_words(drawing.date).c_str());
  }
  {
    Surfaces surfaces;
    const PenOwner pen(cairo_create(surface.get()));
    const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> unhinted(
        cairo_font_options_create(), cairo_font_options_destroy);
    cairo_font_options_set_hint_metrics(unhinted.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(unhinted.get(), CAIRO_HINT_STYLE_NONE);
    cairo_set_font_options(pen.get(), unhinted.get());
    for (const Sheet& sheet : drawing.sheets) {
      cairo_pdf_surface_set_size(surface.get(), sheet.size.width_mm() * kPointsPer_mm,
                                 sheet.size.height_mm() * kPointsPer_mm);
      draw(pen.get(), sheet, surfaces);
    }
    if (const auto status = cairo_status(pen.get()); status != CAIRO_STATUS_SUCCESS) return undrawn(status);
  }
  cairo_surface_finish(surface.get());
  if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
    return undrawn(status);
  return bytes;
}

}  // namespace prismwright
