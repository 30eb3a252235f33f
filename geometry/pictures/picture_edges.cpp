#include "geometry/pictures/picture_edges.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/image_surface.h"
#include "geometry/pictures/line_sight.h"
#include "geometry/pictures/two_threads.h"
#include "geometry/pictures/view_lines.h"

namespace prismwright {

namespace {

constexpr int kLayers = 4;          ///< an edge behind more glass than this is not drawn
constexpr double kStep_points = 4;  ///< between the places where an edge is looked at
constexpr double kWithin_points = 0.06;
constexpr double kFrom = 0.8;
constexpr PaperColour kGlassEdge = {0x2F, 0x6B, 0x62};
constexpr PaperColour kBrassEdge = {0x4A, 0x35, 0x0C};

/// Edges of one stuff behind so many layers of glass, in points of the picture.
using Polylines = std::vector<std::vector<PaperPoint>>;
struct EdgesSeen {
  std::array<Polylines, kLayers + 1> behind;
};

class EdgePainter {
 public:
  EdgePainter(const PictureScene& scene, const ViewPlane& plane, const PictureFit& fit, double chord_mm)
      : scene_(scene),
        plane_(plane),
        fit_(fit),
        sight_(scene, plane, chord_mm, fit.mm_per_point),
        seen_(scene.parts().size()) {}

  bool look(const Progress& progress) {
    return in_two_threads(seen_.size(), {progress, "edges", kFrom, 1},
                          [&](std::size_t part) { look_at(part); });
  }

  void draw(PointImage& image) const {
    const SurfaceOwner surface = surface_of(image);
    const PenOwner pen(cairo_create(surface.get()));
    cairo_set_line_join(pen.get(), CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(pen.get(), CAIRO_LINE_CAP_ROUND);
    // Lines keep their look in pictures of every size.
    const double size = std::max(0.75, std::sqrt(static_cast<double>(image.wide) * image.high) / 1040);
    for (int layers = kLayers; layers >= 0; --layers) {
      for (const bool glass : {false, true}) stroke(pen.get(), layers, glass, size);
    }
    image = points_of(surface.get());
  }

 private:
  void look_at(std::size_t part) {
    std::vector<Meeting> met;
    const bool glass = scene_.parts()[part].glass;
    for (const DrawnLine& line : drawn_lines(scene_.parts()[part], plane_.eye)) {
      const auto state = [&](const DrawnNode& node) { return sight_.glass_before(node, line, glass, met); };
      for (const LineRun& run : runs_of(line, kStep_points * fit_.mm_per_point, state)) {
        if (run.state < 0 || run.state > kLayers) continue;
        std::vector<PaperPoint> points;
        for (const SpacePoint& place : run.places) points.push_back(fit_.point(plane_.flat(place)));
        seen_[part].behind[static_cast<std::size_t>(run.state)].push_back(simplified(points, kWithin_points));
      }
    }
  }

  void stroke(cairo_t* pen, int layers, bool glass, double size) const {
    const PaperColour& c = glass ? kGlassEdge : kBrassEdge;
    const double alpha = (glass ? 0.85 : 0.9) * std::pow(glass ? 0.45 : 0.6, layers);
    cairo_set_source_rgba(pen, c.red / 255.0, c.green / 255.0, c.blue / 255.0, alpha);
    cairo_set_line_width(pen, size * (glass ? 0.8 : 0.9));
    for (std::size_t part = 0; part < seen_.size(); ++part) {
      if (scene_.parts()[part].glass != glass) continue;
      for (const auto& line : seen_[part].behind[static_cast<std::size_t>(layers)]) {
        cairo_new_sub_path(pen);
        for (const PaperPoint& p : line) cairo_line_to(pen, p.x, p.y);
      }
      cairo_stroke(pen);
    }
  }

  const PictureScene& scene_;
  const ViewPlane& plane_;
  const PictureFit& fit_;
  LineSight sight_;
  std::vector<EdgesSeen> seen_;
};

}  // namespace

bool draw_edges(const PictureScene& scene, const ViewPlane& plane, const PictureFit& fit, double chord_mm,
                PointImage& image, const Progress& progress) {
  EdgePainter painter(scene, plane, fit, chord_mm);
  if (!painter.look(progress)) return false;
  painter.draw(image);
  return true;
}

}  // namespace prismwright
