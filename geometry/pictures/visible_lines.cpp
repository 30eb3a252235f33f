#include "geometry/pictures/visible_lines.h"

#include <algorithm>
#include <iterator>

#include "geometry/pictures/line_sight.h"
#include "geometry/pictures/picture_paint.h"
#include "geometry/pictures/two_threads.h"
#include "geometry/pictures/view_lines.h"

namespace prismwright {

namespace {

constexpr double kWithin_mm = 0.05;
constexpr double kLeastLine_mm = 0.02;
constexpr double kSteps = 1200;            ///< across the whole view, at which a line is looked at
constexpr double kWidestSlit = 1 / 400.0;  ///< of the whole view, that makes no outline
constexpr double kLeastOutline = 4;        ///< of the widest slit: a shorter stretch amidst an edge is none

/// A short stretch of outline beside a seen stretch of the same line is but a gap looked through, or the end of
/// an edge that meets the outline: it becomes part of that stretch.
std::vector<LineRun> settled(std::vector<LineRun> runs, double least_mm) {
  const auto seen = [&](std::size_t i) { return i < runs.size() && runs[i].state == LineSight::visible; };
  std::vector<LineRun> kept;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].state == LineSight::outline && (seen(i + 1) || (i > 0 && seen(i - 1))) &&
        length_of(runs[i].places) < least_mm) {
      runs[i].state = LineSight::visible;
    }
    if (!kept.empty() && kept.back().state == runs[i].state) {
      kept.back().places.insert(kept.back().places.end(), runs[i].places.begin() + 1, runs[i].places.end());
    } else {
      kept.push_back(runs[i]);
    }
  }
  return kept;
}

class LineFinder {
 public:
  LineFinder(const PictureScene& scene, const ViewPlane& plane, double chord_mm)
      : scene_(scene),
        plane_(plane),
        size_mm_(100 * fit_picture(scene, plane, 100, 100).mm_per_point),
        sight_(scene, plane, chord_mm, kWidestSlit * size_mm_) {}

  [[nodiscard]] std::vector<ViewLine> of_part(std::size_t part) const {
    std::vector<ViewLine> found;
    const bool glass = scene_.parts()[part].glass;
    for (const DrawnLine& line : drawn_lines(scene_.parts()[part], plane_.eye)) {
      const auto state = [&](const DrawnNode& node) { return static_cast<int>(sight_.state(node, line)); };
      auto runs = runs_of(line, size_mm_ / kSteps, state);
      for (const LineRun& run : settled(std::move(runs), kLeastOutline * kWidestSlit * size_mm_)) {
        if (run.state == LineSight::hidden) continue;
        auto points = simplified(flat(run), kWithin_mm);
        if (length_of(points) < kLeastLine_mm) continue;
        found.push_back({std::move(points), glass, run.state == LineSight::outline});
      }
    }
    return found;
  }

 private:
  [[nodiscard]] std::vector<PaperPoint> flat(const LineRun& run) const {
    std::vector<PaperPoint> points;
    for (const SpacePoint& place : run.places) points.push_back(plane_.flat(place));
    return points;
  }

  const PictureScene& scene_;
  const ViewPlane& plane_;
  double size_mm_;
  LineSight sight_;
};

void widen(LineView& view, const ViewLine& line) {
  for (const PaperPoint& p : line.points) {
    view.low = {std::min(view.low.x, p.x), std::min(view.low.y, p.y)};
    view.high = {std::max(view.high.x, p.x), std::max(view.high.y, p.y)};
  }
}

}  // namespace

std::optional<LineView> visible_lines(const PictureScene& scene, const ViewPlane& plane, double chord_mm,
                                      const Progress& progress) {
  const LineFinder finder(scene, plane, chord_mm);
  std::vector<std::vector<ViewLine>> found(scene.parts().size());
  const auto look_at = [&](std::size_t part) { found[part] = finder.of_part(part); };
  if (!in_two_threads(found.size(), {progress, "lines", 0, 1}, look_at)) return std::nullopt;
  LineView view;
  for (auto& of_part : found) std::move(of_part.begin(), of_part.end(), std::back_inserter(view.lines));
  if (view.lines.empty()) return view;
  view.low = view.high = view.lines.front().points.front();
  for (const ViewLine& line : view.lines) widen(view, line);
  return view;
}

}  // namespace prismwright
