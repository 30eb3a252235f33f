#include "geometry/mould_standing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

#include <gp_Dir.hxx>

#include "geometry/mould_high_points.h"

namespace prismwright {

namespace {

constexpr double kTrap_mm = 0.3;     ///< air that may stay under a high place
constexpr double kFacing = 0.25;     ///< least part of a face's normal that looks up, for a gate on it
constexpr double kRoomShare = 0.92;  ///< of the room on a face that a throat takes
constexpr double kDropCost = 0.25;   ///< mm of throat that a millimetre below the high point is worth
constexpr double kHair_mm = 0.2;
constexpr double kBreaksInCost = 30;  ///< of a gate that cuts over the corner of a face
constexpr int kLooks = 7;             ///< places looked at along the side of a triangle

/// Looks for the place of one opening on the skin, seen along up.
class OpeningSearch {
 public:
  OpeningSearch(const MouldSkin& skin, const gp_Dir& up) : skin_(skin), up_(up) {
    std::map<std::pair<int, int>, int> sides;  // edge -> the one face beside it, or -1 where it lies within one
    for (const SkinTriangle& t : skin.triangles) {
      for (std::size_t k = 0; k < 3; ++k) {
        const std::pair<int, int> key = std::minmax(t.corners[k], t.corners[(k + 1) % 3]);
        const auto [at, fresh] = sides.try_emplace(key, t.face);
        if (fresh) continue;
        if (at->second == t.face) continue;
        rims_[t.face].push_back(key);
        rims_[at->second].push_back(key);
      }
    }
    // The two sides of a seam lie within one face and were passed over above.
  }

  /// The best place for an opening as wide as `wide_mm` near a high point; blank where no face there looks up.
  [[nodiscard]] std::optional<PlannedOpening> best(const gp_Pnt& high, double wide_mm) const {
    std::optional<PlannedOpening> best;
    double most = -std::numeric_limits<double>::infinity();
    for (const SkinTriangle& t : skin_.triangles) {
      const double facing = t.normal * gp_Vec(up_);
      if (facing < kFacing || away(skin_, t, high) > 2.5 * wide_mm) continue;
      for (const gp_Pnt& place : places_on(t)) {
        const double drop = height(high) - height(place);
        if (drop > wide_mm) continue;
        const double throat = std::min(wide_mm, 2 * kRoomShare * room(t.face, place));
        const SkinFace& face = skin_.faces[std::size_t(t.face)];
        const double worth = throat - kDropCost * drop - (face.optical ? wide_mm : 0);
        if (worth <= most) continue;
        most = worth;
        const double slope = std::sqrt(std::max(0.0, 1 - facing * facing)) / facing;
        best = PlannedOpening{};
        best->foot = place;
        best->throat_mm = throat;
        best->bore_mm = wide_mm;
        best->floor_mm = height(place) - throat / 2 * slope - kHair_mm;
        best->top_mm = height(place) + throat / 2 * slope;
        best->face = face.word;
        best->optical = face.optical;
      }
    }
    return best;
  }

  /// A vent over the high point itself, a little towards the casting.
  [[nodiscard]] PlannedOpening vent(const gp_Pnt& high, double wide_mm) const {
    PlannedOpening vent;
    gp_XYZ inward;
    double nearest = std::numeric_limits<double>::infinity();
    for (const SkinTriangle& t : skin_.triangles) {
      const gp_Pnt middle = skin_.middle(t);
      const bool here = touches(t, high);
      if (!here) continue;
      gp_XYZ step = middle.XYZ() - high.XYZ();
      step -= up_.XYZ() * (step * up_.XYZ());
      if (step.Modulus() > 1e-9 && t.normal * gp_Vec(up_) > 0) inward += step.Normalized() * t.area_mm2;
      const SkinFace& face = skin_.faces[std::size_t(t.face)];
      const double cost = (face.optical ? 10 : 0) - t.normal * gp_Vec(up_);
      if (cost >= nearest) continue;
      nearest = cost;
      vent.face = face.word;
      vent.optical = face.optical;
    }
    vent.foot = high;
    if (inward.Modulus() > 1e-9) vent.foot = gp_Pnt(high.XYZ() + inward.Normalized() * (0.25 * wide_mm));
    vent.throat_mm = vent.bore_mm = wide_mm;
    vent.top_mm = height(high);
    vent.floor_mm = height(high) - std::min(0.5 * wide_mm, 1.0);
    return vent;
  }

  [[nodiscard]] double height(const gp_Pnt& p) const { return p.XYZ() * up_.XYZ(); }

 private:
  [[nodiscard]] bool touches(const SkinTriangle& t, const gp_Pnt& p) const {
    return std::any_of(t.corners.begin(), t.corners.end(),
                       [&](int i) { return skin_.points[std::size_t(i)].Distance(p) < 1e-6; });
  }

  static double away(const MouldSkin& skin, const SkinTriangle& t, const gp_Pnt& p) {
    // Near enough for passing over: by the box of the triangle.
    gp_XYZ low(1e300, 1e300, 1e300), high(-1e300, -1e300, -1e300);
    for (const int i : t.corners) {
      for (int k = 1; k <= 3; ++k) {
        const double at = skin.points[std::size_t(i)].Coord(k);
        low.SetCoord(k, std::min(low.Coord(k), at));
        high.SetCoord(k, std::max(high.Coord(k), at));
      }
    }
    double sum = 0;
    for (int k = 1; k <= 3; ++k) {
      const double out = std::max({0.0, low.Coord(k) - p.Coord(k), p.Coord(k) - high.Coord(k)});
      sum += out * out;
    }
    return std::sqrt(sum);
  }

  [[nodiscard]] std::vector<gp_Pnt> places_on(const SkinTriangle& t) const {
    std::vector<gp_Pnt> places;
    for (int i = 0; i <= kLooks; ++i) {
      for (int k = 0; i + k <= kLooks; ++k) {
        const double a = (i + 1.0 / 3) / (kLooks + 1), b = (k + 1.0 / 3) / (kLooks + 1);
        places.emplace_back(skin_.points[std::size_t(t.corners[0])].XYZ() * a +
                            skin_.points[std::size_t(t.corners[1])].XYZ() * b +
                            skin_.points[std::size_t(t.corners[2])].XYZ() * (1 - a - b));
      }
    }
    return places;
  }

  /// Distance from the face's edge, seen along up.
  [[nodiscard]] double room(int face, const gp_Pnt& place) const {
    double least = std::numeric_limits<double>::infinity();
    const auto rim = rims_.find(face);
    if (rim == rims_.end()) return least;
    const auto level = [&](gp_XYZ v) { return v - up_.XYZ() * (v * up_.XYZ()); };
    for (const auto& [i, k] : rim->second) {
      const gp_XYZ a = level(skin_.points[std::size_t(i)].XYZ() - place.XYZ());
      const gp_XYZ along = level(skin_.points[std::size_t(k)].XYZ() - place.XYZ()) - a;
      const double share = std::clamp(-(a * along) / std::max(1e-18, along.SquareModulus()), 0.0, 1.0);
      least = std::min(least, (a + along * share).Modulus());
    }
    return least;
  }

  const MouldSkin& skin_;
  gp_Dir up_;
  std::map<int, std::vector<std::pair<int, int>>> rims_;
};

double extent(const MouldSkin& skin, const gp_Dir& up) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const gp_Pnt& p : skin.points) {
    low = std::min(low, p.XYZ() * up.XYZ());
    high = std::max(high, p.XYZ() * up.XYZ());
  }
  return high - low;
}

Standing standing(const MouldSkin& skin, const gp_Dir& up, const WorksSettings& settings) {
  Standing stands;
  stands.up = up;
  const OpeningSearch search(skin, up);
  const auto highs = high_points(skin, gp_Vec(up), kTrap_mm);
  std::size_t served = 0;
  double most = -1;
  std::optional<PlannedOpening> gate;
  for (std::size_t i = 0; i < highs.size(); ++i) {
    const auto place = search.best(skin.points[std::size_t(highs[i])], settings.gate_mm);
    if (!place) continue;
    const double worth = place->throat_mm - (place->optical ? 2 * settings.gate_mm : 0);
    if (gate && worth <= most) continue;
    gate = place;
    most = worth;
    served = i;
  }
  const gp_Pnt highest = skin.points[std::size_t(highs[served])];
  if (!gate || gate->throat_mm < settings.vent_mm) {
    // No face has room: the gate breaks in over the high point itself.
    gate = search.vent(highest, std::min(settings.gate_mm, std::max(settings.vent_mm, 0.5 * settings.gate_mm)));
    gate->bore_mm = settings.gate_mm;
    stands.cost += kBreaksInCost;
  }
  gate->gate = true;
  stands.openings.push_back(*gate);
  for (std::size_t i = 0; i < highs.size(); ++i) {
    const gp_Pnt high = skin.points[std::size_t(highs[i])];
    if (i == served && gate->top_mm > search.height(high) - kTrap_mm) continue;
    stands.openings.push_back(search.vent(high, settings.vent_mm));
  }
  const double height = extent(skin, up) + 2 * settings.mould_wall_mm;
  stands.cost += (gate->optical ? 100 : 0) + (height > settings.vessel_height_mm ? 40 : 0) +
                 20 * (1 - gate->throat_mm / settings.gate_mm) +
                 4 * static_cast<double>(stands.openings.size()) + (std::abs(up.Z()) > 0.5 ? 2 : 0);
  return stands;
}

}  // namespace

Standing chosen_standing(const MouldSkin& skin, const WorksSettings& settings) {
  std::optional<Standing> best;
  for (const gp_Dir& up : {gp_Dir(1, 0, 0), gp_Dir(-1, 0, 0), gp_Dir(0, 1, 0), gp_Dir(0, -1, 0),
                           gp_Dir(0, 0, 1), gp_Dir(0, 0, -1)}) {
    const Standing here = standing(skin, up, settings);
    if (!best || here.cost < best->cost - 1e-6) best = here;
  }
  return *best;
}

}  // namespace prismwright
