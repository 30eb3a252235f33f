#include "core/works/stock_course.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {

namespace {

/// A point of a true curve no nearer to a new end than this share of the points' spacing is kept.
constexpr double kNearestPoint = 0.3;

SectionDirection outward(SectionDirection tangent) { return tangent.quarter_turn().reversed(); }

/// This length of end slopes makes a cubic follow a circle to sixth order (as FaceCurve has it).
double piece_length(SectionPoint from, SectionPoint to, SectionDirection a, SectionDirection b) {
  const double quarter = std::cos(std::asin(std::clamp(cross(a, b), -1.0, 1.0)) / 4);
  return distance(from, to) / (quarter * quarter);
}

}  // namespace

StockCourse::StockCourse(const Face& face, double stock_mm)
    : moved_(face), stock_mm_(stock_mm), hollow_radius_mm_(std::numeric_limits<double>::infinity()) {
  if (face.kind == FaceKind::arc) {
    turn_ = cross(face.start() - face.centre, face.end() - face.centre) >= 0 ? 1 : -1;
    if (turn_ < 0) hollow_radius_mm_ = face.radius_mm;
  }
  if (face.kind == FaceKind::true_curve) {
    for (std::size_t i = 0; i + 1 < face.points.size(); ++i) {
      const double turn = std::asin(std::clamp(cross(face.tangents[i], face.tangents[i + 1]), -1.0, 1.0));
      if (turn >= 0) continue;
      const double length =
          piece_length(face.points[i], face.points[i + 1], face.tangents[i], face.tangents[i + 1]);
      hollow_radius_mm_ = std::min(hollow_radius_mm_, -length / turn);
    }
  }
  if (stock_mm < hollow_radius_mm_) move();
  if (face.kind == FaceKind::true_curve) measure_curve();
}

void StockCourse::move() {
  switch (moved_.kind) {
    case FaceKind::straight: {
      const SectionOffset out = stock_mm_ * outward(SectionDirection::along(moved_.end() - moved_.start()));
      for (SectionPoint& p : moved_.points) p = p + out;
      return;
    }
    case FaceKind::arc: {
      const double radius = moved_.radius_mm + turn_ * stock_mm_;
      for (SectionPoint& p : moved_.points) p = moved_.centre + radius / moved_.radius_mm * (p - moved_.centre);
      moved_.radius_mm = radius;
      return;
    }
    case FaceKind::true_curve:
      for (std::size_t i = 0; i < moved_.points.size(); ++i) {
        moved_.points[i] = moved_.points[i] + stock_mm_ * outward(moved_.tangents[i]);
      }
  }
}

void StockCourse::measure_curve() {
  const auto& points = moved_.points;
  const auto& tangents = moved_.tangents;
  std::vector<double> bends;
  reached_ = {0};
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double length = piece_length(points[i], points[i + 1], tangents[i], tangents[i + 1]);
    reached_.push_back(reached_.back() + length);
    bends.push_back(std::asin(std::clamp(cross(tangents[i], tangents[i + 1]), -1.0, 1.0)) / length);
  }
  // Bends are those at the middles of the pieces: carried on in a straight line to the ends.
  const std::size_t n = bends.size();
  start_bend_ = n > 1 ? 1.5 * bends[0] - 0.5 * bends[1] : bends[0];
  end_bend_ = n > 1 ? 1.5 * bends[n - 1] - 0.5 * bends[n - 2] : bends[0];
}

double StockCourse::length_mm() const {
  if (moved_.kind == FaceKind::straight) return distance(moved_.start(), moved_.end());
  if (moved_.kind == FaceKind::true_curve) return reached_.back();
  const SectionOffset first = moved_.start() - moved_.centre;
  const SectionOffset last = moved_.end() - moved_.centre;
  return moved_.radius_mm * std::abs(std::atan2(cross(first, last), dot(first, last)));
}

StockCourse::Walk StockCourse::at(double mm) const {
  switch (moved_.kind) {
    case FaceKind::straight:
      break;
    case FaceKind::arc:
      return on_circle(mm);
    case FaceKind::true_curve:
      return on_curve(mm);
  }
  return on_line(mm);
}

StockCourse::Walk StockCourse::on_line(double mm) const {
  const auto along = SectionDirection::along(moved_.end() - moved_.start());
  return {moved_.start() + mm * along, along};
}

StockCourse::Walk StockCourse::on_circle(double mm) const {
  const SectionOffset spoke = moved_.start() - moved_.centre;
  const double angle = std::atan2(spoke.z, spoke.r) + turn_ * mm / moved_.radius_mm;
  const auto out = SectionDirection::at(angle);
  const SectionDirection left = out.quarter_turn();
  return {moved_.centre + moved_.radius_mm * out, turn_ > 0 ? left : left.reversed()};
}

StockCourse::Walk StockCourse::on_curve(double mm) const {
  const auto along_hugging_circle = [](SectionPoint from, SectionDirection tangent, double bend, double way) {
    const double turn = bend * way;
    // Chord of an arc: sin(x) / x and its like, kept exact near 0.
    const double half = turn / 2;
    const double share = std::abs(half) < 1e-9 ? 1 : std::sin(half) / half;
    const auto chord = SectionDirection::at(tangent.elevation() + half);
    return Walk{from + way * share * chord, SectionDirection::at(tangent.elevation() + turn)};
  };
  if (mm < 0) return along_hugging_circle(moved_.start(), moved_.tangents.front(), start_bend_, mm);
  if (mm > reached_.back()) {
    return along_hugging_circle(moved_.end(), moved_.tangents.back(), end_bend_, mm - reached_.back());
  }
  const auto above = std::upper_bound(reached_.begin() + 1, reached_.end() - 1, mm);
  const auto i = static_cast<std::size_t>(above - reached_.begin()) - 1;
  const double reach = reached_[i + 1] - reached_[i];
  const double t = (mm - reached_[i]) / reach;
  const double t2 = t * t;
  const double t3 = t2 * t;
  const SectionOffset chord = moved_.points[i + 1] - moved_.points[i];
  const SectionOffset a = reach * moved_.tangents[i];
  const SectionOffset b = reach * moved_.tangents[i + 1];
  return {moved_.points[i] + (3 * t2 - 2 * t3) * chord + (t3 - 2 * t2 + t) * a + (t3 - t2) * b,
          SectionDirection::along((6 * t - 6 * t2) * chord + (3 * t2 - 4 * t + 1) * a + (3 * t2 - 2 * t) * b)};
}

SectionPoint StockCourse::beyond(End end, double mm) const {
  return end == End::start ? at(-mm).place : at(length_mm() + mm).place;
}

SectionDirection StockCourse::tangent(End end) const {
  return end == End::start ? at(0).tangent : at(length_mm()).tangent;
}

Face StockCourse::between_corners(double start_mm, SectionPoint from, double end_mm, SectionPoint to) const {
  Face face = moved_;
  if (face.kind != FaceKind::true_curve) {
    face.points = {from, to};
    return face;
  }
  const double first = -start_mm;
  const double last = length_mm() + end_mm;
  const double spacing = length_mm() / static_cast<double>(moved_.points.size() - 1);
  const double near = kNearestPoint * spacing;
  // Where the curve goes on far beyond its end, points as close as its own.
  std::vector<double> stops;
  for (double mm = -spacing; mm > first + near; mm -= spacing) stops.insert(stops.begin(), mm);
  for (const double mm : reached_) {
    if (mm > first + near && mm < last - near) stops.push_back(mm);
  }
  for (double mm = length_mm() + spacing; mm < last - near; mm += spacing) stops.push_back(mm);
  face.points = {from};
  face.tangents = {at(first).tangent};
  for (const double mm : stops) {
    face.points.push_back(at(mm).place);
    face.tangents.push_back(at(mm).tangent);
  }
  face.points.push_back(to);
  face.tangents.push_back(at(last).tangent);
  return face;
}

}  // namespace prismwright
