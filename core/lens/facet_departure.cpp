#include "core/lens/facet_departure.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/lens/flat_inner_face.h"
#include "core/lens/turned_face.h"
#include "core/optics/space_refraction.h"

namespace prismwright {

namespace {

constexpr int kAzimuths = 12;
constexpr int kHeights = 50;
constexpr int kHalvings = 30;
constexpr double kOnFace_mm = 1e-9;

/// From the panel's frame to that of a face turned about the upright axis, whose own axis comes first.
SpaceRay about_upright(const SpaceRay& ray) {
  return {{ray.from.z, ray.from.x, ray.from.y}, {ray.along.z, ray.along.x, ray.along.y}};
}

/// Height of a straight joint carried to a distance from the lens axis.
double height_at(const Face& joint, double r) {
  const SectionPoint a = joint.start();
  const SectionPoint b = joint.end();
  return a.z + (r - a.r) / (b.r - a.r) * (b.z - a.z);
}

}  // namespace

struct FacetZone::Inside {
  struct Meeting {
    SpacePoint place;
    SpaceVector outward;
    FaceRole role = FaceRole::outer;
  };

  /// The first face but the inner one that a ray inside the glass meets.
  [[nodiscard]] std::optional<Meeting> first_met(const SpaceRay& ray) const {
    const SpaceRay local = about_upright(ray);
    const TurnRay past(local);
    std::optional<Meeting> found;
    double nearest = 0;
    for (const TurnedFace& face : faces) {
      if (face.role() == FaceRole::inner) continue;
      const TurnHits hits = face.meet(past);
      for (int i = 0; i < hits.count; ++i) {
        const TurnHit& hit = hits.hits[static_cast<std::size_t>(i)];
        if (hit.s < kOnFace_mm || (found && hit.s >= nearest)) continue;
        nearest = hit.s;
        const SpacePoint place = place_on(ray, hit.s);
        const double off = std::hypot(place.x, place.y);
        found = {place,
                 {hit.normal_off * place.x / off, hit.normal_off * place.y / off, hit.normal_along},
                 face.role()};
      }
    }
    return found;
  }

  [[nodiscard]] SpacePoint place(double azimuth, double share) const {
    const double r = focal_mm / std::cos(azimuth);
    const double low = height_at(below, r);
    return {focal_mm, focal_mm * std::tan(azimuth), low + share * (height_at(above, r) - low)};
  }

  std::vector<TurnedFace> faces;
  Face above;
  Face below;
  double focal_mm = 0;
  double index = 1;
  double focus_z_mm = 0;
  double aim_deg = 0;
};

FacetZone::FacetZone(const Profile& profile, double focal_mm, double index, double focus_z_mm, double aim_deg)
    : inside_(std::make_unique<Inside>(
          Inside{TurnedFace::pieces_of(profile, TurningAxis::lens), *profile.find(FaceRole::joint_upper),
                 *profile.find(FaceRole::joint_lower), focal_mm, index, focus_z_mm, aim_deg})) {}
FacetZone::~FacetZone() = default;
FacetZone::FacetZone(FacetZone&&) noexcept = default;
FacetZone& FacetZone::operator=(FacetZone&&) noexcept = default;

std::optional<FacetRay> FacetZone::trace(double azimuth_deg, double share) const {
  const SpacePoint place = inside_->place(radians(azimuth_deg), share);
  const SpaceVector in = unit(place - SpacePoint{0, 0, inside_->focus_z_mm});
  const SpaceVector glass = refract(in, {-1, 0, 0}, 1, inside_->index).along;
  const auto met = inside_->first_met({place, glass});
  if (!met || met->role != FaceRole::outer) return std::nullopt;
  const Refracted out = refract(glass, met->outward, inside_->index, 1);
  if (out.total) return std::nullopt;
  const auto elevation = [](SpaceVector v) { return degrees(std::atan2(v.z, std::hypot(v.x, v.y))); };
  return FacetRay{azimuth_deg, elevation(in), elevation(out.along) + inside_->aim_deg,
                  degrees(std::atan2(out.along.y, out.along.x)) - azimuth_deg};
}

double FacetZone::elevation_deg(double azimuth_deg, double share) const {
  const SpacePoint place = inside_->place(radians(azimuth_deg), share);
  return degrees(std::atan2(place.z - inside_->focus_z_mm, std::hypot(place.x, place.y)));
}

double FacetZone::height_mm(double azimuth_deg) const {
  return inside_->place(radians(azimuth_deg), 1).z - inside_->place(radians(azimuth_deg), 0).z;
}

namespace {

/// Adds up what rays on one image of a zone do.
class Sums {
 public:
  explicit Sums(FacetDeparture& result) : result_(result) {}

  void add(const FacetZone& zone, double focal_mm, double most_azimuth_deg) {
    for (int i = 0; i <= kAzimuths; ++i) add_azimuth(zone, focal_mm, most_azimuth_deg * i / kAzimuths);
  }

  void close() { result_.own_way = all_ > 0 ? own_ / all_ : 1; }

 private:
  void add_azimuth(const FacetZone& zone, double focal_mm, double azimuth_deg) {
    const double height = zone.height_mm(azimuth_deg);
    if (!(height > 0)) return;
    bool before = false;
    for (int i = 0; i <= kHeights; ++i) {
      const double share = static_cast<double>(i) / kHeights;
      const auto ray = zone.trace(azimuth_deg, share);
      if (ray) take(*ray);
      if (i > 0 && before != ray.has_value()) {
        const double lit = static_cast<double>(before ? i - 1 : i) / kHeights;
        take_edge(zone, azimuth_deg, lit, static_cast<double>(before ? i : i - 1) / kHeights);
      }
      before = ray.has_value();
    }
    weigh(zone, focal_mm, azimuth_deg, height);
  }

  /// The last ray that leaves by the outer face, between a lit share and a dark one.
  void take_edge(const FacetZone& zone, double azimuth_deg, double lit, double dark) {
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (lit + dark);
      (zone.trace(azimuth_deg, middle) ? lit : dark) = middle;
    }
    if (const auto ray = zone.trace(azimuth_deg, lit)) take(*ray);
  }

  /// Light by the middles of equal strips. Per width of the face along y it falls off as the cosine at the face
  /// over the square of the distance; a step in azimuth makes a step in y of 1 / cos^2.
  void weigh(const FacetZone& zone, double focal_mm, double azimuth_deg, double height) {
    const double q = radians(azimuth_deg);
    for (int i = 0; i < kHeights; ++i) {
      const double share = (i + 0.5) / kHeights;
      const double t = radians(zone.elevation_deg(azimuth_deg, share));
      const double distance = focal_mm / (std::cos(q) * std::cos(t));
      const double weight = focal_mm * height / (distance * distance * distance * std::cos(q) * std::cos(q));
      all_ += weight;
      if (zone.trace(azimuth_deg, share)) own_ += weight;
    }
  }

  void take(const FacetRay& ray) {
    if (std::abs(ray.departure_deg) > std::abs(result_.worst.departure_deg)) result_.worst = ray;
    result_.lit_to_deg = std::max(result_.lit_to_deg, ray.azimuth_deg + ray.sideways_deg);
    if (std::abs(ray.sideways_deg) > std::abs(result_.most_turned.sideways_deg)) result_.most_turned = ray;
  }

  FacetDeparture& result_;
  double own_ = 0;
  double all_ = 0;
};

/// The greatest azimuth that the flat face of any glazed panel reaches, degrees.
double most_azimuth_deg(const LensPlan& plan) {
  double most = 0;
  for (const PlannedPrism& prism : plan.prisms) {
    if (!prism.trim.flat_inner_mm) continue;
    const double f = *prism.trim.flat_inner_mm;
    for (const double side_deg : {-prism.trim.clockwise_side_deg, prism.trim.anticlockwise_side_deg}) {
      const double side = radians(side_deg);
      if (std::cos(side) < 1e-6) continue;
      most = std::max(most, (f * std::sin(side) - prism.trim.set_back_mm) / (f * std::cos(side)));
    }
  }
  return degrees(std::atan(most));
}

}  // namespace

std::vector<FacetDeparture> facet_departures(const LensPlan& plan) {
  std::vector<FacetDeparture> departures;
  if (!has_flat_facets(plan.values)) return departures;
  const double reach_deg = most_azimuth_deg(plan);
  const SectionInput& input = plan.section.input;
  for (const Zone& zone : plan.section.zones) {
    if (!is_refracting(zone.kind)) continue;
    const BandAim aim = plan.section.aim_of(zone.kind);
    FacetDeparture departure;
    departure.zone = zone.mark;
    departure.side_deg = reach_deg;
    Sums sums(departure);
    const auto add = [&](const Profile& profile) {
      sums.add(FacetZone(profile, input.focal_mm, input.index, aim.focus_z_mm, aim.aim_deg), input.focal_mm,
               reach_deg);
    };
    add(zone.profile);
    if (zone.kind == ZoneKind::ring) add(lower_image_of(zone));
    sums.close();
    departures.push_back(departure);
  }
  return departures;
}

double lit_to_deg(const std::vector<FacetDeparture>& departures) {
  double most = 0;
  for (const FacetDeparture& departure : departures) most = std::max(most, departure.lit_to_deg);
  return most;
}

const FacetDeparture* worst_of(const std::vector<FacetDeparture>& departures) {
  const auto worst = std::max_element(
      departures.begin(), departures.end(), [](const FacetDeparture& a, const FacetDeparture& b) {
        return std::abs(a.worst.departure_deg) < std::abs(b.worst.departure_deg);
      });
  return worst == departures.end() ? nullptr : &*worst;
}

}  // namespace prismwright
