#include "geometry/pictures/view_lines.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/pictures/contours.h"

namespace prismwright {

namespace {

constexpr int kHalvings = 7;

SpaceVector between(SpaceVector a, SpaceVector b, double t) { return a + t * (b - a); }

/// A line measured by its length.
class Course {
 public:
  explicit Course(const DrawnLine& line) : nodes_(line.nodes) {
    for (std::size_t i = 1; i < nodes_.size(); ++i) {
      reached_.push_back(reached_.back() + length(nodes_[i].place - nodes_[i - 1].place));
    }
  }

  [[nodiscard]] double length_mm() const { return reached_.back(); }

  [[nodiscard]] DrawnNode at(double s) const {
    const std::size_t i = stretch(s);
    const double whole = reached_[i + 1] - reached_[i];
    const double t = whole > 0 ? (s - reached_[i]) / whole : 0;
    const DrawnNode& a = nodes_[i];
    const DrawnNode& b = nodes_[i + 1];
    return {a.place + t * (b.place - a.place), between(a.first, b.first, t), between(a.second, b.second, t)};
  }

  [[nodiscard]] std::vector<SpacePoint> part(double from, double to) const {
    std::vector<SpacePoint> places = {at(from).place};
    for (std::size_t i = 1; i + 1 < nodes_.size(); ++i) {
      if (reached_[i] > from && reached_[i] < to) places.push_back(nodes_[i].place);
    }
    places.push_back(at(to).place);
    return places;
  }

 private:
  [[nodiscard]] std::size_t stretch(double s) const {
    const auto after = std::upper_bound(reached_.begin() + 1, reached_.end() - 1, s);
    return static_cast<std::size_t>(after - reached_.begin()) - 1;
  }

  const std::vector<DrawnNode>& nodes_;
  std::vector<double> reached_ = {0};
};

double distance_from(PaperPoint p, PaperPoint a, PaperPoint b) {
  const double x = b.x - a.x, y = b.y - a.y;
  const double square = x * x + y * y;
  const double t = square > 0 ? std::clamp(((p.x - a.x) * x + (p.y - a.y) * y) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - t * x, p.y - a.y - t * y);
}

}  // namespace

std::vector<DrawnLine> drawn_lines(const ScenePart& part, SpaceVector eye) {
  std::vector<DrawnLine> lines;
  const SpaceFrame& place = part.place;
  for (const PicturedSolid::Edge& edge : part.solid->edges) {
    DrawnLine& line = lines.emplace_back();
    for (const auto& [p, first, second] : edge) {
      line.nodes.push_back({place.out_of(p), place.out_of(first), place.out_of(second)});
    }
  }
  for (const Contour& contour : contours_of(*part.solid, place.into(eye))) {
    DrawnLine& line = lines.emplace_back();
    line.contour = true;
    for (const auto& [p, normal] : contour) {
      const SpaceVector n = place.out_of(normal);
      line.nodes.push_back({place.out_of(p), n, n});
    }
  }
  return lines;
}

std::vector<LineRun> runs_of(const DrawnLine& line, double step_mm,
                             const std::function<int(const DrawnNode&)>& state_at) {
  std::vector<LineRun> runs;
  const Course course(line);
  const double whole = course.length_mm();
  if (!(whole > 0)) return runs;
  // Asked in the middle of each piece: at the ends of a line other faces meet it.
  const auto pieces = std::max<std::size_t>(2, static_cast<std::size_t>(std::ceil(whole / step_mm)));
  const auto middle = [&](std::size_t i) {
    return whole * (static_cast<double>(i) + 0.5) / static_cast<double>(pieces);
  };
  double from = 0;
  int state = state_at(course.at(middle(0)));
  for (std::size_t i = 1; i < pieces; ++i) {
    const int next = state_at(course.at(middle(i)));
    if (next == state) continue;
    double low = middle(i - 1), high = middle(i);
    for (int k = 0; k < kHalvings; ++k) {
      const double half = (low + high) / 2;
      (state_at(course.at(half)) == state ? low : high) = half;
    }
    const double change = (low + high) / 2;
    runs.push_back({state, course.part(from, change)});
    from = change;
    state = next;
  }
  runs.push_back({state, course.part(from, whole)});
  return runs;
}

std::vector<PaperPoint> simplified(const std::vector<PaperPoint>& line, double within) {
  if (line.size() < 3) return line;
  std::vector<bool> stays(line.size(), false);
  stays.front() = stays.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> open = {{0, line.size() - 1}};
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    std::size_t worst = from;
    double most = within;
    for (std::size_t i = from + 1; i < to; ++i) {
      const double off = distance_from(line[i], line[from], line[to]);
      if (off > most) most = off, worst = i;
    }
    if (worst == from) continue;
    stays[worst] = true;
    open.emplace_back(from, worst);
    open.emplace_back(worst, to);
  }
  std::vector<PaperPoint> kept;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (stays[i]) kept.push_back(line[i]);
  }
  return kept;
}

double length_of(const std::vector<PaperPoint>& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
  }
  return sum;
}

double length_of(const std::vector<SpacePoint>& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += length(line[i] - line[i - 1]);
  return sum;
}

}  // namespace prismwright
