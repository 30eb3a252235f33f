#include "core/lens/turned_face.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace prismwright {

namespace {

constexpr double kArcPiece = 0.05;  ///< radians of an arc that one cubic follows, within 1e-10 of its radius
constexpr double kEndSlack_mm = 1e-8;

/// Points of a curve with the walk's unit tangents.
struct Curve {
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
};

Curve curve_of(const Face& face) {
  if (face.kind == FaceKind::true_curve) return {face.points, face.tangents};
  const SectionOffset from = face.start() - face.centre;
  const SectionOffset to = face.end() - face.centre;
  const double turn = std::atan2(cross(from, to), dot(from, to));
  const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / kArcPiece)));
  Curve curve;
  for (int i = 0; i <= pieces; ++i) {
    const SectionDirection out =
        SectionDirection::at(std::atan2(from.z, from.r) + turn * (static_cast<double>(i) / pieces));
    curve.points.push_back(i == 0        ? face.start()
                           : i == pieces ? face.end()
                                         : face.centre + face.radius_mm * out);
    curve.tangents.push_back(turn > 0 ? out.quarter_turn() : out.quarter_turn().reversed());
  }
  return curve;
}

std::array<double, 4> hermite(double a, double b, double slope_a, double slope_b) {
  return {a, slope_a, 3 * (b - a) - 2 * slope_a - slope_b, 2 * (a - b) + slope_a + slope_b};
}
double value(const std::array<double, 4>& c, double t) { return c[0] + t * (c[1] + t * (c[2] + t * c[3])); }
double slope(const std::array<double, 4>& c, double t) { return c[1] + t * (2 * c[2] + t * 3 * c[3]); }

/// Numbers of points at which a curve is parted so that no part bends too far.
std::vector<std::size_t> parts_of(const Curve& curve) {
  std::vector<std::size_t> ends{0};
  for (std::size_t i = 1; i + 1 < curve.points.size(); ++i) {
    const double bend =
        std::acos(std::clamp(dot(curve.tangents[ends.back()], curve.tangents[i + 1]), -1.0, 1.0));
    if (bend > TurnedFace::kMostBend) ends.push_back(i);
  }
  ends.push_back(curve.points.size() - 1);
  return ends;
}

}  // namespace

TurnedFace::TurnedFace(FaceRole role, bool flipped, std::vector<Cubic> pieces, bool straight)
    : role_(role), out_(flipped ? -1 : 1), straight_(straight), pieces_(std::move(pieces)) {
  from_ = place(0);
  const TurnPoint to = place(1);
  chord_ = {to.along - from_.along, to.off - from_.off};
  chord2_ = chord_.along * chord_.along + chord_.off * chord_.off;
  constexpr int kParts = 64;
  for (int i = 0; i < kParts; ++i) length_ += speed_mm((i + 0.5) / kParts) / kParts;
}

std::vector<TurnedFace> TurnedFace::pieces_of(const Profile& profile, TurningAxis axis) {
  std::vector<TurnedFace> faces;
  const bool flipped = axis == TurningAxis::lens;
  for (const Face& face : profile.faces) {
    if (face.role == FaceRole::axis) continue;
    if (face.kind == FaceKind::straight) {
      const TurnPoint a = turned(face.start(), axis);
      const TurnPoint b = turned(face.end(), axis);
      if (distance(face.start(), face.end()) < 1e-12) continue;
      const Cubic line{{a.along, b.along - a.along, 0, 0}, {a.off, b.off - a.off, 0, 0}};
      faces.push_back(TurnedFace(face.role, flipped, {line}, true));
      continue;
    }
    const Curve curve = curve_of(face);
    const auto ends = parts_of(curve);
    for (std::size_t part = 0; part + 1 < ends.size(); ++part) {
      std::vector<Cubic> pieces;
      for (std::size_t i = ends[part]; i < ends[part + 1]; ++i) {
        const double bend = std::asin(std::clamp(cross(curve.tangents[i], curve.tangents[i + 1]), -1.0, 1.0));
        const double quarter = std::cos(bend / 4);
        // With this reach a cubic follows a circle to sixth order.
        const double reach = distance(curve.points[i], curve.points[i + 1]) / (quarter * quarter);
        const TurnPoint a = turned(curve.points[i], axis);
        const TurnPoint b = turned(curve.points[i + 1], axis);
        const auto tangent = [&](std::size_t k) {
          const SectionDirection t = curve.tangents[k];
          return axis == TurningAxis::lens ? TurnPoint{reach * t.z(), reach * t.r()}
                                           : TurnPoint{reach * t.r(), reach * t.z()};
        };
        const TurnPoint ta = tangent(i);
        const TurnPoint tb = tangent(i + 1);
        pieces.push_back(
            {hermite(a.along, b.along, ta.along, tb.along), hermite(a.off, b.off, ta.off, tb.off)});
      }
      faces.push_back(TurnedFace(face.role, flipped, std::move(pieces), false));
    }
  }
  return faces;
}

std::pair<const TurnedFace::Cubic&, double> TurnedFace::piece_at(double share) const {
  const double scaled = share * static_cast<double>(pieces_.size());
  const auto last = static_cast<double>(pieces_.size() - 1);
  const double piece = std::clamp(std::floor(scaled), 0.0, last);
  return {pieces_[static_cast<std::size_t>(piece)], scaled - piece};
}

TurnPoint TurnedFace::place(double share) const {
  const auto [piece, t] = piece_at(share);
  return {value(piece.along, t), value(piece.off, t)};
}

TurnPoint TurnedFace::normal(double share) const {
  const auto [piece, t] = piece_at(share);
  const double along = slope(piece.along, t);
  const double off = slope(piece.off, t);
  const double k = out_ / std::sqrt(along * along + off * off);
  return {k * off, -k * along};
}

double TurnedFace::speed_mm(double share) const {
  const auto [piece, t] = piece_at(share);
  return std::hypot(slope(piece.along, t), slope(piece.off, t)) * static_cast<double>(pieces_.size());
}

/// Meetings with the cone that the chord makes: the line across . (place - from) = 0 squared is a quadratic in
/// s, of which the roots on the other half of the cone fall away.
int TurnedFace::chord_starts(const TurnRay& ray, std::array<Start, 2>& starts) const {
  const double across_along = -chord_.off;
  const double across_off = chord_.along;
  const double e = across_along * (from_.along - ray.start) + across_off * from_.off;
  const double f = across_along * ray.d;
  const double chord2 = chord2_;
  int count = 0;
  const auto add = [&](double s) {
    const double off = ray.off(s);
    // A curve leaves its chord by as much as a twentieth of its length.
    if (straight_ && across_off * (e - f * s) < -1e-9 * chord2) return;
    const double share =
        ((ray.along(s) - from_.along) * chord_.along + (off - from_.off) * chord_.off) / chord2;
    starts[count++] = {s, share};
  };
  if (across_off * across_off < 1e-24 * chord2) {
    if (std::abs(f) > 1e-14) add(e / f);
    return count;
  }
  const double a = across_off * across_off * ray.q2 - f * f;
  const double b = across_off * across_off * ray.q1 + e * f;
  const double c = across_off * across_off * ray.q0 - e * e;
  if (std::abs(a) < 1e-12 * chord2) {
    if (std::abs(b) > 0) add(-c / (2 * b));
    return count;
  }
  const double rest = b * b - a * c;
  if (rest < 0) {
    // The ray misses the chord but may touch the curve beyond it.
    if (!straight_) add(-b / a);
    return count;
  }
  const double root = std::sqrt(rest);
  const double sum = -(b + std::copysign(root, b));
  add(sum / a);
  if (sum != 0) add(c / sum);
  return count;
}

/// Newton's rule for along and off of ray and curve at once; false where it does not settle.
bool TurnedFace::polish(const TurnRay& ray, Start& start) const {
  const auto pieces = static_cast<double>(pieces_.size());
  for (int i = 0; i < 12; ++i) {
    const auto [piece, t] = piece_at(start.share);
    const double off = ray.off(start.s);
    const double miss_along = value(piece.along, t) - ray.along(start.s);
    const double miss_off = value(piece.off, t) - off;
    if (std::abs(miss_along) + std::abs(miss_off) < 1e-11 * (1 + std::abs(from_.along) + from_.off))
      return true;
    const double ca = slope(piece.along, t) * pieces;
    const double co = slope(piece.off, t) * pieces;
    const double ra = ray.d;
    const double ro = off > 0 ? (ray.q1 + ray.q2 * start.s) / off : 0;
    const double det = ra * co - ro * ca;
    if (det == 0) return false;
    start.share += (ro * miss_along - ra * miss_off) / det;
    start.s += (co * miss_along - ca * miss_off) / det;
    if (!(start.share > -0.5 && start.share < 1.5)) return false;
  }
  return false;
}

TurnHits TurnedFace::meet(const TurnRay& ray) const {
  std::array<Start, 2> starts;
  const int count = chord_starts(ray, starts);
  const double slack = kEndSlack_mm / length_;
  TurnHits hits;
  for (int i = 0; i < count; ++i) {
    Start start = starts[i];
    if (!straight_) {
      if (!(start.share > -0.3 && start.share < 1.3) || !polish(ray, start)) continue;
    }
    if (start.share < -slack || start.share > 1 + slack) continue;
    const TurnPoint out = normal(start.share);
    hits.hits[hits.count++] = {start.s, start.share, out.along, out.off};
  }
  return hits;
}

}  // namespace prismwright
