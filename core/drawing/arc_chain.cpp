#include "core/drawing/arc_chain.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/face_curve.h"

namespace prismwright {

namespace {

/// An arc that leaves its chord by less than this is a straight line.
constexpr double kFlat_mm = 1e-9;
constexpr int kMostPairs = 1000;
/// Places per pair at which its distance from the curve is measured.
constexpr int kMeasured = 32;
/// The worst place may lie between two that are measured: a little is kept back.
constexpr double kShareOfTolerance = 0.98;

ChainPiece straight_piece(SectionPoint from, SectionPoint to) { return {from, to, 0, {}, 0}; }

ChainPiece piece_about(SectionPoint from, SectionPoint to, SectionPoint centre) {
  const SectionOffset first = from - centre;
  const SectionOffset last = to - centre;
  return {from, to, std::atan2(cross(first, last), dot(first, last)), centre, first.length()};
}

/// The arc that leaves `from` along `tangent` and ends at `to`.
ChainPiece tangent_piece(SectionPoint from, SectionDirection tangent, SectionPoint to) {
  const SectionOffset chord = to - from;
  const SectionDirection left = tangent.quarter_turn();
  const double aside = dot(chord, left);
  if (std::abs(aside) < kFlat_mm) return straight_piece(from, to);
  return piece_about(from, to, from + dot(chord, chord) / (2 * aside) * left);
}

/// A true curve by one parameter that runs from 0 to the number of its pieces.
class CurveWalk {
 public:
  explicit CurveWalk(const Face& face) : face_(face), curve_(face) {}

  [[nodiscard]] double length() const { return static_cast<double>(curve_.pieces()); }

  [[nodiscard]] SectionPoint place(double at) const {
    const auto [piece, share] = split(at);
    if (share == 0) return face_.points[piece];
    if (share == 1) return face_.points[piece + 1];
    return curve_.place(piece, share);
  }

  [[nodiscard]] SectionDirection tangent(double at) const {
    const auto [piece, share] = split(at);
    if (share == 0) return face_.tangents[piece];
    if (share == 1) return face_.tangents[piece + 1];
    const double step = std::min({1e-4, share, 1 - share});
    return SectionDirection::along(curve_.place(piece, share + step) - curve_.place(piece, share - step));
  }

 private:
  struct Spot {
    std::size_t piece;
    double share;
  };
  [[nodiscard]] Spot split(double at) const {
    const double piece = std::clamp(std::floor(at), 0.0, length() - 1);
    return {static_cast<std::size_t>(piece), std::clamp(at - piece, 0.0, 1.0)};
  }

  const Face& face_;
  FaceCurve curve_;
};

struct ArcPair {
  ChainPiece first;
  ChainPiece second;
};

ArcPair pair_between(const CurveWalk& walk, double from, double to) {
  const SectionPoint p0 = walk.place(from);
  const SectionPoint p1 = walk.place(to);
  const SectionDirection t0 = walk.tangent(from);
  const SectionDirection t1 = walk.tangent(to);
  const SectionOffset chord = p1 - p0;
  const double along = dot(chord, t0) + dot(chord, t1);
  const double square = dot(chord, chord);
  const double leg = square / (along + std::sqrt(along * along + 2 * (1 - dot(t0, t1)) * square));
  const SectionPoint joint = between(p0 + leg * t0, p1 - leg * t1, 0.5);
  ChainPiece second = tangent_piece(p1, t1.reversed(), joint);
  std::swap(second.from, second.to);
  second.turn = -second.turn;
  return {tangent_piece(p0, t0, joint), second};
}

double worst_departure_mm(const CurveWalk& walk, double from, double to, const ArcPair& pair) {
  double worst = 0;
  for (int i = 1; i < kMeasured; ++i) {
    const SectionPoint place = walk.place(from + (to - from) * i / kMeasured);
    worst = std::max(worst, std::min(pair.first.distance_to(place), pair.second.distance_to(place)));
  }
  return worst;
}

/// The curve in `count` pairs, or nothing where one of them departs too far.
std::vector<ChainPiece> in_pairs(const CurveWalk& walk, int count, double tolerance_mm) {
  std::vector<ChainPiece> chain;
  for (int i = 0; i < count; ++i) {
    const double from = walk.length() * i / count;
    const double to = i + 1 == count ? walk.length() : walk.length() * (i + 1) / count;
    const ArcPair pair = pair_between(walk, from, to);
    if (worst_departure_mm(walk, from, to, pair) > kShareOfTolerance * tolerance_mm && count < kMostPairs) {
      return {};
    }
    chain.push_back(pair.first);
    chain.push_back(pair.second);
  }
  return chain;
}

/// Arc between two places whose middle stands `rise` to the left of the chord (negative: to the right).
ChainPiece arc_with_rise(SectionPoint from, SectionPoint to, double rise) {
  if (std::abs(rise) < kFlat_mm) return straight_piece(from, to);
  const SectionOffset chord = to - from;
  const double half = chord.length() / 2;
  const double to_centre = (rise * rise - half * half) / (2 * rise);
  return piece_about(from, to,
                     between(from, to, 0.5) + to_centre * SectionDirection::along(chord).quarter_turn());
}

double worst_of(const std::vector<SectionPoint>& places, const ChainPiece& piece) {
  double worst = 0;
  for (const SectionPoint place : places) worst = std::max(worst, piece.distance_to(place));
  return worst;
}

/// Rise of the circle through both ends and a third place.
double rise_through(SectionPoint from, SectionPoint to, SectionPoint third) {
  const SectionDirection walk = SectionDirection::along(to - from);
  const double half = distance(from, to) / 2;
  const double along = dot(third - from, walk) - half;
  const double aside = cross(walk, third - from);
  if (std::abs(aside) < kFlat_mm) return 0;
  // Centre at height c on the middle line: along^2 + (aside - c)^2 = half^2 + c^2.
  const double c = (along * along + aside * aside - half * half) / (2 * aside);
  return half * half / (std::sqrt(half * half + c * c) + std::abs(c)) * (aside > 0 ? 1 : -1);
}

}  // namespace

SectionDirection ChainPiece::tangent_at_start() const {
  if (straight()) return SectionDirection::along(to - from);
  const SectionDirection round = SectionDirection::along(from - centre).quarter_turn();
  return turn > 0 ? round : round.reversed();
}

SectionDirection ChainPiece::tangent_at_end() const {
  if (straight()) return SectionDirection::along(to - from);
  const SectionDirection round = SectionDirection::along(to - centre).quarter_turn();
  return turn > 0 ? round : round.reversed();
}

double ChainPiece::distance_to(SectionPoint place) const {
  const double to_ends = std::min(distance(place, from), distance(place, to));
  if (straight()) {
    const SectionOffset chord = to - from;
    const double share = dot(place - from, chord) / dot(chord, chord);
    return share < 0 || share > 1 ? to_ends : distance(place, between(from, to, share));
  }
  const SectionOffset first = from - centre;
  const SectionOffset spoke = place - centre;
  const double swept = std::atan2(cross(first, spoke), dot(first, spoke));
  const bool within = turn > 0 ? swept >= 0 && swept <= turn : swept <= 0 && swept >= turn;
  return within ? std::abs(spoke.length() - radius_mm) : to_ends;
}

std::vector<ChainPiece> arcs_of(const Face& face, double tolerance_mm) {
  if (face.kind == FaceKind::straight) return {straight_piece(face.start(), face.end())};
  if (face.kind == FaceKind::arc) return {piece_about(face.start(), face.end(), face.centre)};
  const CurveWalk walk(face);
  for (int count = 1;; ++count) {
    auto chain = in_pairs(walk, count, std::max(tolerance_mm, kFinestArcTolerance_mm));
    if (!chain.empty()) return chain;
  }
}

std::vector<ChainPiece> arcs_of(const Profile& profile, double tolerance_mm) {
  std::vector<ChainPiece> whole;
  for (const Face& face : profile.faces) {
    const auto chain = arcs_of(face, tolerance_mm);
    whole.insert(whole.end(), chain.begin(), chain.end());
  }
  return whole;
}

SingleArc best_arc(const Face& face) {
  const auto places = points_along(face, kFinestArcTolerance_mm);
  double low = 0, high = 0;
  for (std::size_t i = 1; i + 1 < places.size(); ++i) {
    const double rise = rise_through(face.start(), face.end(), places[i]);
    low = i == 1 ? rise : std::min(low, rise);
    high = i == 1 ? rise : std::max(high, rise);
  }
  const auto worst_at = [&](double rise) {
    return worst_of(places, arc_with_rise(face.start(), face.end(), rise));
  };
  // The worst distance falls to its least and rises again: the interval is cut by thirds.
  for (int i = 0; i < 80; ++i) {
    const double a = low + (high - low) / 3;
    const double b = high - (high - low) / 3;
    const bool lower = worst_at(a) < worst_at(b);
    (lower ? high : low) = lower ? b : a;
  }
  const double rise = (low + high) / 2;
  return {arc_with_rise(face.start(), face.end(), rise), worst_at(rise)};
}

}  // namespace prismwright
