#include "geometry/surroundings.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "geometry/likeness.h"
#include "geometry/nearest_place.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

constexpr double kFarBelow_mm = 10000;

/// What lies outside an upright tube round the lens axis.
class OutsideOfTube : public RoomField {
 public:
  explicit OutsideOfTube(double radius_mm) : radius_(radius_mm) {}

  [[nodiscard]] Hit at(const gp_Pnt& p) const override {
    const double radius = std::hypot(p.X(), p.Y());
    if (radius >= radius_) return {0, p};
    if (radius == 0) return {radius_, gp_Pnt(radius_, 0, p.Z())};
    return {radius_ - radius, gp_Pnt(p.X() * radius_ / radius, p.Y() * radius_ / radius, p.Z())};
  }

  void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                 const std::function<void(const RoomPiece&)>& take) const override {
    const double radius = std::hypot(p.X(), p.Y());
    if (radius_ - radius > within_mm) return;
    RoomPiece piece;
    piece.distance_mm = radius_ - radius;
    piece.away = radius > 0 ? gp_Vec(-p.X() / radius, -p.Y() / radius, 0) : gp_Vec(-1, 0, 0);
    if (radius > 4 * reach_mm) {
      piece.turns[0] = {gp_Vec(piece.away.Y(), -piece.away.X(), 0), -1 / radius};
    } else {
      const double left = radius - reach_mm;
      piece.sag_per_mm = left > 0 ? 1 / left : std::numeric_limits<double>::infinity();
      piece.swing_per_mm = piece.sag_per_mm;
    }
    take(piece);
  }

 private:
  double radius_;
};

Surrounding column(std::string mark, double radius_mm, double from_mm, double to_mm) {
  const std::vector<PlateChain> section{straight_chain(plate_rectangle({0, from_mm}, {radius_mm, to_mm}))};
  return {std::move(mark), fmt::format("column {:.6f} {:.6f} {:.6f}", radius_mm, from_mm, to_mm),
          std::make_shared<TurnedField>(section, true)};
}

}  // namespace

std::vector<Surrounding> surroundings_of(const FrameSettings& settings) {
  std::vector<Surrounding> all;
  if (settings.changer_radius_mm > 0 && settings.changer_to_mm > settings.changer_from_mm) {
    all.push_back(
        column("lamp-changer", settings.changer_radius_mm, settings.changer_from_mm, settings.changer_to_mm));
  }
  if (settings.lantern_radius_mm > 0) {
    all.push_back({"lantern-glazing", fmt::format("tube {:.6f}", settings.lantern_radius_mm),
                   std::make_shared<OutsideOfTube>(settings.lantern_radius_mm)});
  }
  if (settings.pedestal_radius_mm > 0) {
    all.push_back(column("pedestal", settings.pedestal_radius_mm,
                         std::min(-kFarBelow_mm, settings.pedestal_top_mm - kFarBelow_mm),
                         settings.pedestal_top_mm));
  }
  return all;
}

std::optional<SolidGap> gap_to(const MeasuredPart& part, const Surrounding& surrounding, double no_farther_mm) {
  const auto nearest = nearest_place(*part.form, part.place, *surrounding.room, no_farther_mm);
  if (!nearest) return std::nullopt;
  return SolidGap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
}

std::string round_word(const MeasuredPart& part, const Surrounding& surrounding) {
  const UprightTurn turn = upright_turn(part.place);
  return surrounding.key + part.form->word() + (turn.is_turn ? "turned" : place_word(part.place));
}

}  // namespace prismwright
