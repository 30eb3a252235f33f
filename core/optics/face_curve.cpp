#include "core/optics/face_curve.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

SectionDirection right_of(SectionDirection walk) { return walk.quarter_turn().reversed(); }

}  // namespace

FaceCurve::FaceCurve(const Face& face) : face_(face) {
  if (face.kind == FaceKind::arc) {
    // Half the chord over the radius is the sine of half the turn; twice that is never less than its sine.
    turn_ = distance(face.start(), face.end()) / face.radius_mm;
    return;
  }
  if (face.kind != FaceKind::true_curve) return;
  turn_ = std::acos(std::clamp(dot(face.tangents.front(), face.tangents.back()), -1.0, 1.0));
  reach_.reserve(face.points.size() - 1);
  for (std::size_t i = 0; i + 1 < face.points.size(); ++i) {
    // This length makes a cubic follow a circle to sixth order: chord / cos^2(turn / 4).
    const double turn = std::asin(cross(face.tangents[i], face.tangents[i + 1]));
    const double quarter = std::cos(turn / 4);
    reach_.push_back(distance(face.points[i], face.points[i + 1]) / (quarter * quarter));
  }
}

SectionPoint FaceCurve::place(std::size_t piece, double t) const {
  const double t2 = t * t;
  const double t3 = t2 * t;
  const SectionPoint a = face_.points[piece];
  const SectionPoint b = face_.points[piece + 1];
  const SectionOffset chord = b - a;
  const SectionOffset start = reach_[piece] * face_.tangents[piece];
  const SectionOffset end = reach_[piece] * face_.tangents[piece + 1];
  return a + (3 * t2 - 2 * t3) * chord + (t3 - 2 * t2 + t) * start + (t3 - t2) * end;
}

SectionOffset FaceCurve::slope(std::size_t piece, double t) const {
  const double t2 = t * t;
  const SectionOffset chord = face_.points[piece + 1] - face_.points[piece];
  const SectionOffset start = reach_[piece] * face_.tangents[piece];
  const SectionOffset end = reach_[piece] * face_.tangents[piece + 1];
  return (6 * t - 6 * t2) * chord + (3 * t2 - 4 * t + 1) * start + (3 * t2 - 2 * t) * end;
}

void FaceCurve::touches(SectionPoint from, std::vector<double>& elevations) const {
  if (face_.kind == FaceKind::arc) touch_arc(from, elevations);
  if (face_.kind == FaceKind::true_curve) touch_curve(from, elevations);
}

void FaceCurve::touch_arc(SectionPoint from, std::vector<double>& elevations) const {
  const SectionOffset to_centre = face_.centre - from;
  const double away = to_centre.length();
  if (away <= face_.radius_mm) return;
  const double aside = std::asin(face_.radius_mm / away);
  const SectionOffset chord = face_.end() - face_.start();
  const double centre_side = cross(chord, face_.centre - face_.start());
  for (const double turned : {-aside, aside}) {
    const double elevation = std::atan2(to_centre.z, to_centre.r) + turned;
    const SectionPoint touch = from + away * std::cos(aside) * SectionDirection::at(elevation);
    // An arc no longer than half its circle lies on the other side of its chord than its centre.
    const double along = dot(touch - face_.start(), chord);
    if (cross(chord, touch - face_.start()) * centre_side > 0 || along < 0 || along > dot(chord, chord))
      continue;
    elevations.push_back(elevation);
  }
}

void FaceCurve::touch_curve(SectionPoint from, std::vector<double>& elevations) const {
  for (std::size_t i = 0; i < reach_.size(); ++i) {
    const auto turning = [&](double t) { return cross(slope(i, t), place(i, t) - from); };
    double low = 0;
    double high = 1;
    const bool rises = turning(0) > 0;
    if (rises == (turning(1) > 0)) continue;
    for (int k = 0; k < 50; ++k) {
      const double middle = 0.5 * (low + high);
      ((turning(middle) > 0) == rises ? low : high) = middle;
    }
    const SectionOffset touch = place(i, low) - from;
    elevations.push_back(std::atan2(touch.z, touch.r));
  }
}

void FaceCurve::meet(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const {
  switch (face_.kind) {
    case FaceKind::straight:
      return meet_straight(from, ray, hits);
    case FaceKind::arc:
      return meet_arc(from, ray, hits);
    case FaceKind::true_curve:
      return meet_curve(from, ray, hits);
  }
}

void FaceCurve::meet_straight(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const {
  const SectionOffset chord = face_.end() - face_.start();
  const double length = chord.length();
  const SectionDirection walk = SectionDirection::along(chord);
  const double across = cross(ray, walk);
  if (std::abs(across) < 1e-12) return;
  const SectionOffset reach = face_.start() - from;
  const double along = cross(reach, walk) / across;
  const double place_on_face = cross(reach, ray) / across;
  if (place_on_face < -kEndSlack_mm || place_on_face > length + kEndSlack_mm) return;
  hits.push_back({along, from + along * ray, right_of(walk)});
}

void FaceCurve::meet_arc(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const {
  const SectionOffset to_centre = face_.centre - from;
  const double middle = dot(to_centre, ray);
  const double aside = cross(to_centre, ray);
  const double half_squared = face_.radius_mm * face_.radius_mm - aside * aside;
  if (half_squared < 0) return;
  const double half = std::sqrt(half_squared);
  // Walked anticlockwise about its centre, the outward normal points away from the centre.
  const bool anticlockwise = cross(face_.start() - face_.centre, face_.end() - face_.centre) > 0;
  const SectionOffset chord = face_.end() - face_.start();
  const SectionDirection walk = SectionDirection::along(chord);
  const double centre_side = cross(walk, face_.centre - face_.start());
  for (const double along : {middle - half, middle + half}) {
    const SectionPoint place = from + along * ray;
    const double on_chord = dot(place - face_.start(), walk);
    if (on_chord < -kEndSlack_mm || on_chord > chord.length() + kEndSlack_mm) continue;
    // The far side of the circle projects on the chord too: the arc bulges away from its centre.
    const double height = cross(walk, place - face_.start());
    if (height * centre_side > 0 && std::abs(height) > kEndSlack_mm) continue;
    const SectionDirection away = SectionDirection::along(place - face_.centre);
    hits.push_back({along, place, anticlockwise ? away : away.reversed()});
  }
}

void FaceCurve::meet_curve(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const {
  const auto side = [&](SectionPoint p) { return cross(1.0 * ray, p - from); };
  const std::size_t last = reach_.size() - 1;
  double before = side(face_.points[0]);
  for (std::size_t i = 0; i <= last; ++i) {
    const double after = side(face_.points[i + 1]);
    double low = before;
    double high = after;
    before = after;
    const bool crosses = (low <= 0 && high > 0) || (low >= 0 && high < 0);
    const bool at_first = i == 0 && std::abs(low) <= kEndSlack_mm;
    const bool at_last = i == last && std::abs(high) <= kEndSlack_mm;
    if (!crosses && !at_first && !at_last) continue;
    // Newton from the straight guess; pieces are so short that their side function is all but linear.
    double t = crosses ? low / (low - high) : (at_first ? 0.0 : 1.0);
    for (int turn = 0; turn < 4 && crosses; ++turn) {
      const double step = side(place(i, t)) / cross(1.0 * ray, slope(i, t));
      if (!std::isfinite(step)) break;
      t -= step;
      if (std::abs(step) < 1e-14) break;
    }
    const SectionPoint where = place(i, t);
    hits.push_back({dot(where - from, ray), where, right_of(SectionDirection::along(slope(i, t)))});
  }
}

}  // namespace prismwright
