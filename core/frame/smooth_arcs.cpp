#include "core/frame/smooth_arcs.h"

#include <algorithm>
#include <cmath>

#include "core/frame/step_foot.h"
#include "core/optics/face_curve.h"

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kFlat_mm = 1e-9;  // an arc that leaves its chord by less is a straight line
constexpr int kMostHalvings = 10;
constexpr int kMeasured = 16;
constexpr double kShare = 0.9;  // the worst place may lie between two that are measured
constexpr double kSlopeStep = 1e-4;

PlatePoint minus(PlatePoint a, PlatePoint b) { return {a.u - b.u, a.v - b.v}; }
double dot(PlatePoint a, PlatePoint b) { return a.u * b.u + a.v * b.v; }
double cross(PlatePoint a, PlatePoint b) { return a.u * b.v - a.v * b.u; }

PlatePoint unit(PlatePoint a) {
  const double length = std::hypot(a.u, a.v);
  return {a.u / length, a.v / length};
}

PlateStep line(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

PlateStep about(PlatePoint from, PlatePoint to, PlatePoint centre) {
  const PlatePoint first = minus(from, centre);
  const PlatePoint last = minus(to, centre);
  return {from, to, std::atan2(cross(first, last), dot(first, last)), centre, std::hypot(first.u, first.v)};
}

PlateStep walked_back(PlateStep step) {
  std::swap(step.from, step.to);
  step.turn = -step.turn;
  return step;
}

struct ArcPair {
  PlateStep first;
  PlateStep second;
};

// Joins two places and slopes with equal legs d from both: |V - d (T0 + T1)| = 2 d, V the chord.
ArcPair pair_between(PlatePoint p0, PlatePoint t0, PlatePoint p1, PlatePoint t1) {
  const PlatePoint chord = minus(p1, p0);
  const double along = dot(chord, t0) + dot(chord, t1);
  const double square = dot(chord, chord);
  const double leg = square / (along + std::sqrt(along * along + 2 * (1 - dot(t0, t1)) * square));
  const PlatePoint joint{(p0.u + leg * t0.u + p1.u - leg * t1.u) / 2,
                         (p0.v + leg * t0.v + p1.v - leg * t1.v) / 2};
  return {arc_from(p0, t0, joint), walked_back(arc_from(p1, {-t1.u, -t1.v}, joint))};
}

class Fitter {
 public:
  Fitter(const SmoothCurve& curve, double within_mm) : curve_(curve), within_(kShare * within_mm) {}

  PlateChain fit() {
    add(curve_.from, curve_.to, 0);
    return std::move(chain_);
  }

 private:
  void add(double from, double to, int halvings) {
    const PlatePoint p0 = curve_.place(from);
    const PlatePoint p1 = curve_.place(to);
    if (halvings < kMostHalvings) {
      const double middle = (from + to) / 2;
      const bool closed = distance(p0, p1) < kFlat_mm;
      if (closed || !keeps(from, to, pair_of(p0, from, p1, to))) {
        add(from, middle, halvings + 1);
        add(middle, to, halvings + 1);
        return;
      }
    }
    const ArcPair pair = pair_of(p0, from, p1, to);
    chain_.push_back(pair.first);
    chain_.push_back(pair.second);
  }

  [[nodiscard]] ArcPair pair_of(PlatePoint p0, double from, PlatePoint p1, double to) const {
    return pair_between(p0, unit(curve_.slope(from)), p1, unit(curve_.slope(to)));
  }

  [[nodiscard]] bool keeps(double from, double to, const ArcPair& pair) const {
    for (int i = 1; i < kMeasured; ++i) {
      const PlatePoint p = curve_.place(from + (to - from) * i / kMeasured);
      const double off =
          std::min(distance(p, foot_on(pair.first, p).place), distance(p, foot_on(pair.second, p).place));
      if (!(off <= within_)) return false;
    }
    return true;
  }

  const SmoothCurve& curve_;
  double within_;
  PlateChain chain_;
};

// Both ends on the circle exactly: the centre is moved along the chord's middle line.
PlateStep arc_of(const Face& face) {
  const PlatePoint from{face.start().r, face.start().z};
  const PlatePoint to{face.end().r, face.end().z};
  const PlatePoint chord = minus(to, from);
  const PlatePoint middle{(from.u + to.u) / 2, (from.v + to.v) / 2};
  const PlatePoint across = unit({-chord.v, chord.u});
  const double half = std::hypot(chord.u, chord.v) / 2;
  const double height = std::sqrt(std::max(0.0, face.radius_mm * face.radius_mm - half * half));
  const double side = dot(minus({face.centre.r, face.centre.z}, middle), across) >= 0 ? height : -height;
  return about(from, to, {middle.u + side * across.u, middle.v + side * across.v});
}

// A true curve by one parameter that runs from 0 to the number of its pieces.
PlateChain true_curve(const Face& face, double within_mm) {
  const FaceCurve curve(face);
  const auto pieces = static_cast<double>(curve.pieces());
  const auto piece_at = [&](double at) { return std::min(std::floor(at), pieces - 1); };
  const auto place = [&](double at) {
    const double piece = piece_at(at);
    const auto number = static_cast<std::size_t>(piece);
    const double share = at - piece;
    const SectionPoint p = share == 0   ? face.points[number]
                           : share == 1 ? face.points[number + 1]
                                        : curve.place(number, share);
    return PlatePoint{p.r, p.z};
  };
  const auto slope = [&](double at) {
    const double piece = piece_at(at);
    const double share = at - piece;
    if (share == 0 || share == 1) {
      const SectionDirection tangent = face.tangents[static_cast<std::size_t>(piece + share)];
      return PlatePoint{tangent.r(), tangent.z()};
    }
    const double step = std::min({kSlopeStep, share, 1 - share});
    return minus(place(at + step), place(at - step));
  };
  return arcs_along({place, slope, 0, pieces}, within_mm);
}

}  // namespace

PlateStep arc_from(PlatePoint from, PlatePoint slope, PlatePoint to) {
  const PlatePoint chord = minus(to, from);
  const double aside = cross(unit(slope), chord);
  if (std::abs(aside) < kFlat_mm) return line(from, to);
  const double scale = dot(chord, chord) / (2 * aside);
  if (std::abs(scale) > kMostRadius_mm) return line(from, to);
  const PlatePoint along = unit(slope);
  return about(from, to, {from.u - scale * along.v, from.v + scale * along.u});
}

PlateChain arcs_along(const SmoothCurve& curve, double within_mm) { return Fitter(curve, within_mm).fit(); }

PlateChain section_chain(const Profile& profile, double within_mm) {
  PlateChain chain;
  for (const Face& face : profile.faces) {
    if (face.kind == FaceKind::straight) {
      chain.push_back(line({face.start().r, face.start().z}, {face.end().r, face.end().z}));
    } else if (face.kind == FaceKind::arc) {
      chain.push_back(arc_of(face));
    } else {
      const PlateChain arcs = true_curve(face, within_mm);
      chain.insert(chain.end(), arcs.begin(), arcs.end());
    }
  }
  return chain;
}

}  // namespace prismwright
