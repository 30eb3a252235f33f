#include <algorithm>
#include <cmath>
#include <limits>

#include "core/optics/face_words.h"
#include "geometry/convert.h"
#include "geometry/mould_skin.h"

namespace prismwright {

namespace {

constexpr double kTurnWeight_mm =
    60;  ///< how many mm of distance a normal turned by 60 deg (1 - cos = 1/2) costs, twice

/// Keeps the word that fits best so far.
class BestWord {
 public:
  void offer(const std::string& word, bool optical, double distance_mm, double cosine) {
    const double cost = distance_mm + kTurnWeight_mm * (1 - cosine);
    if (cost >= cost_) return;
    cost_ = cost;
    best_ = {word, optical};
  }
  [[nodiscard]] const FaceWord& best() const { return best_; }

 private:
  double cost_ = std::numeric_limits<double>::infinity();
  FaceWord best_;
};

/// A place and a normal seen in the section: along r and away from the turning line.
struct InSection {
  SectionPoint place;
  double r = 0;
  double z = 0;
};

InSection in_section(const PlannedPrism& prism, const gp_Pnt& place, const gp_Vec& normal) {
  const gp_Trsf back = axis_place(prism).Inverted();
  const gp_Pnt p = place.Transformed(back);
  const gp_Vec n = normal.Transformed(back);
  if (prism.turning == TurningAxis::lens) {
    const double r = std::max(1e-9, std::hypot(p.X(), p.Y()));
    return {{r, p.Z()}, (n.X() * p.X() + n.Y() * p.Y()) / r, n.Z()};
  }
  const double z = std::max(1e-9, std::hypot(p.Y(), p.Z()));
  return {{p.X(), z}, n.X(), (n.Y() * p.Y() + n.Z() * p.Z()) / z};
}

bool lies_below(const Profile& profile) {
  double low = 0;
  for (const Face& face : profile.faces) {
    for (const SectionPoint& p : face.points) low = std::min(low, p.z);
  }
  return low < -1e-9;
}

void offer_profile(const PlannedPrism& prism, const InSection& seen, BestWord& best) {
  const bool below = prism.turning == TurningAxis::panel && lies_below(prism.profile);
  for (const Face& face : (below ? mirrored(prism.profile) : prism.profile).faces) {
    if (face.role == FaceRole::axis) continue;
    const auto line = points_along(face, 0.02);
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const double r = line[i + 1].r - line[i].r;
      const double z = line[i + 1].z - line[i].z;
      const double size = std::hypot(r, z);
      if (size <= 0) continue;
      const double along = std::clamp(
          ((seen.place.r - line[i].r) * r + (seen.place.z - line[i].z) * z) / (size * size), 0.0, 1.0);
      const double away = distance(seen.place, between(line[i], line[i + 1], along));
      best.offer(words_of(face.role), is_optical(face.role), away, (seen.r * z - seen.z * r) / size);
    }
  }
}

void offer_cuts(const PlannedPrism& prism, const gp_Pnt& p, const gp_Vec& n, BestWord& best) {
  const Trim& trim = prism.trim;
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  const gp_Vec clockwise(-std::sin(a), std::cos(a), 0);
  const gp_Vec anticlockwise(std::sin(b), -std::cos(b), 0);
  const gp_Vec from_axis(p.XYZ());
  best.offer("end clockwise", false, std::abs(from_axis * clockwise - trim.set_back_mm), -(n * clockwise));
  best.offer("end anticlockwise", false, std::abs(from_axis * anticlockwise - trim.set_back_mm),
             -(n * anticlockwise));
  if (prism.turning == TurningAxis::panel && trim.half != Half::whole) {
    const double side = trim.half == Half::upper ? 1 : -1;
    best.offer("level cut", false, std::abs(side * p.Z() - trim.half_gap_mm), -side * n.Z());
  }
  if (trim.flat_inner_mm) best.offer("inner", true, std::abs(p.X() - *trim.flat_inner_mm), -n.X());
}

}  // namespace

FaceWord face_word(const PlannedPrism& prism, const gp_Pnt& place, const gp_Vec& normal) {
  BestWord best;
  offer_profile(prism, in_section(prism, place, normal), best);
  offer_cuts(prism, place, normal, best);
  return best.best();
}

}  // namespace prismwright
