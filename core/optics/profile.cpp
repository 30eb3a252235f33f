#include "core/optics/profile.h"

#include <algorithm>
#include <cmath>

#include "core/optics/face_curve.h"

namespace prismwright {

const Face* Profile::find(FaceRole role) const {
  const auto found = std::find_if(faces.begin(), faces.end(), [&](const Face& f) { return f.role == role; });
  return found == faces.end() ? nullptr : &*found;
}

std::string_view name_of(FaceRole role) {
  switch (role) {
    case FaceRole::inner:
      return "inner";
    case FaceRole::outer:
      return "outer";
    case FaceRole::entry:
      return "entry";
    case FaceRole::exit:
      return "exit";
    case FaceRole::reflecting:
      return "reflecting";
    case FaceRole::joint_upper:
      return "joint_upper";
    case FaceRole::joint_lower:
      return "joint_lower";
    case FaceRole::land:
      return "land";
    case FaceRole::axis:
      return "axis";
  }
  return "land";
}

std::string_view name_of(FaceKind kind) {
  switch (kind) {
    case FaceKind::straight:
      return "straight";
    case FaceKind::arc:
      return "arc";
    case FaceKind::true_curve:
      return "true";
  }
  return "straight";
}

Face straight_face(FaceRole role, SectionPoint from, SectionPoint to) {
  return {role, FaceKind::straight, {from, to}, {}, {}, 0};
}

Face arc_face(FaceRole role, SectionPoint from, SectionPoint to, SectionPoint centre, double radius_mm) {
  return {role, FaceKind::arc, {from, to}, {}, centre, radius_mm};
}

Face true_face(FaceRole role, std::vector<SectionPoint> points, std::vector<SectionDirection> tangents) {
  return {role, FaceKind::true_curve, std::move(points), std::move(tangents), {}, 0};
}

Face reversed(Face face) {
  std::reverse(face.points.begin(), face.points.end());
  std::reverse(face.tangents.begin(), face.tangents.end());
  for (SectionDirection& tangent : face.tangents) tangent = tangent.reversed();
  return face;
}

Profile mirrored(const Profile& profile) {
  Profile image;
  for (auto face = profile.faces.rbegin(); face != profile.faces.rend(); ++face) {
    Face turned = reversed(*face);
    for (SectionPoint& p : turned.points) p = mirrored(p);
    for (SectionDirection& t : turned.tangents) t = t.mirrored();
    turned.centre = mirrored(turned.centre);
    if (turned.role == FaceRole::joint_upper) {
      turned.role = FaceRole::joint_lower;
    } else if (turned.role == FaceRole::joint_lower) {
      turned.role = FaceRole::joint_upper;
    }
    image.faces.push_back(std::move(turned));
  }
  return image;
}

namespace {

std::vector<SectionPoint> along_arc(const Face& face, double chord_mm) {
  const SectionOffset first = face.start() - face.centre;
  const SectionOffset last = face.end() - face.centre;
  const double turn = std::atan2(cross(first, last), dot(first, last));
  const double step = 2 * std::acos(std::max(0.0, 1 - chord_mm / face.radius_mm));
  const int count = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step)));
  std::vector<SectionPoint> points = {face.start()};
  for (int i = 1; i < count; ++i) {
    const double angle = turn * i / count;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    points.push_back(face.centre + SectionOffset{c * first.r - s * first.z, s * first.r + c * first.z});
  }
  points.push_back(face.end());
  return points;
}

std::vector<SectionPoint> along_curve(const Face& face, double chord_mm) {
  const FaceCurve curve(face);
  std::vector<SectionPoint> points = {face.start()};
  for (std::size_t i = 0; i < curve.pieces(); ++i) {
    const double length = distance(face.points[i], face.points[i + 1]);
    const double turn = std::abs(cross(face.tangents[i], face.tangents[i + 1]));
    const double sagitta = length * turn / 8;
    const int count = std::max(1, static_cast<int>(std::ceil(std::sqrt(sagitta / chord_mm))));
    for (int k = 1; k < count; ++k) points.push_back(curve.place(i, static_cast<double>(k) / count));
    points.push_back(face.points[i + 1]);
  }
  return points;
}

/// Area and first moments by the shoelace rule.
struct Moments {
  double area = 0;
  double r = 0;
  double z = 0;
};

Moments moments(const Profile& profile) {
  constexpr double kChord_mm = 1e-5;
  const auto polygon = polygon_of(profile, kChord_mm);
  Moments sum;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const SectionPoint p = polygon[i];
    const SectionPoint q = polygon[(i + 1) % polygon.size()];
    const double w = p.r * q.z - q.r * p.z;
    sum.area += w / 2;
    sum.r += w * (p.r + q.r) / 6;
    sum.z += w * (p.z + q.z) / 6;
  }
  return sum;
}

}  // namespace

std::vector<SectionPoint> points_along(const Face& face, double chord_mm) {
  switch (face.kind) {
    case FaceKind::straight:
      break;
    case FaceKind::arc:
      return along_arc(face, chord_mm);
    case FaceKind::true_curve:
      return along_curve(face, chord_mm);
  }
  return face.points;
}

std::vector<SectionPoint> polygon_of(const Profile& profile, double chord_mm) {
  std::vector<SectionPoint> polygon;
  for (const Face& face : profile.faces) {
    const auto points = points_along(face, chord_mm);
    polygon.insert(polygon.end(), points.begin(), points.end() - 1);
  }
  return polygon;
}

double area_mm2(const Profile& profile) { return moments(profile).area; }

SectionPoint centroid(const Profile& profile) {
  const Moments sum = moments(profile);
  return {sum.r / sum.area, sum.z / sum.area};
}

}  // namespace prismwright
