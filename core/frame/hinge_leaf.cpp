#include "core/frame/hinge_leaf.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kShareOfSide = 0.4;  // of the rib's thickness and of the flange that a relief may take
constexpr double kShareOfRoom = 0.9;  // between the rib's edge and the knuckle
constexpr double kLeastRadius_mm = 1e-3;

class LeafDrawer {
 public:
  explicit LeafDrawer(const LeafPlan& leaf) : leaf_(leaf), cutter_mm_(leaf.inside_radius_mm) {}

  PlateChain drawn() {
    start_at_foot();
    const double flange_y = leaf_.front_y_mm + leaf_.flange_mm;
    // The block keeps the knuckle's brass round the pin on the panel's side too.
    const double block_y = std::max(flange_y, leaf_.knuckle_mm);
    line_to({leaf_.knuckle_mm, block_y});
    if (block_y > flange_y) step_down(block_y, flange_y);
    line_to({leaf_.flange_x_mm, flange_y});
    line_to({leaf_.flange_x_mm, leaf_.front_y_mm});
    relieve_rib_corner();
    line_to({leaf_.edge_x_mm, leaf_.back_y_mm});
    line_to(chain_.front().from);
    return std::move(chain_);
  }

 private:
  // The fillet touches the back and the knuckle: its centre stands a radius below the one and a radius outside
  // the other.
  void start_at_foot() {
    const double radius = leaf_.knuckle_mm;
    const PlatePoint nose{radius, 0};
    const double fillet = std::min(cutter_mm_, kShareOfRoom * room_at_foot_mm());
    const double below = leaf_.back_y_mm - fillet;
    const double out = radius + fillet;
    const PlatePoint centre{-std::sqrt(out * out - below * below), below};
    const bool fits = fillet > kLeastRadius_mm;
    const double rise = std::asin((fits ? below / out * radius : leaf_.back_y_mm) / radius);
    const PlatePoint foot{-radius * std::cos(rise), radius * std::sin(rise)};
    if (fits) {
      const PlatePoint back{centre.u, leaf_.back_y_mm};
      chain_.push_back({back, foot, turn_between(back - centre, foot - centre), centre, fillet});
    }
    chain_.push_back({foot, nose, kPi + rise, {}, radius});
  }

  // Radius of the fillet that would begin at the rib's very edge.
  [[nodiscard]] double room_at_foot_mm() const {
    const double knuckle = leaf_.knuckle_mm;
    const double back = leaf_.back_y_mm;
    return (leaf_.edge_x_mm * leaf_.edge_x_mm - knuckle * knuckle + back * back) / (2 * (knuckle + back));
  }

  // From the block down to the flange; a step lower than the cutter's radius is a part of its round.
  void step_down(double block_y, double flange_y) {
    const double edge = leaf_.edge_x_mm;
    const double radius = std::min(cutter_mm_, (edge - leaf_.flange_x_mm) / 2);
    line_to({edge, block_y});
    if (radius < kLeastRadius_mm) return line_to({edge, flange_y});
    const double high = std::min(block_y - flange_y, radius);
    if (block_y - flange_y > radius) line_to({edge, flange_y + radius});
    const PlatePoint centre{edge - std::sqrt(radius * radius - (radius - high) * (radius - high)),
                            flange_y + radius};
    round_to({centre.u, flange_y}, centre, radius);
  }

  void relieve_rib_corner() {
    const PlatePoint corner{leaf_.edge_x_mm, leaf_.front_y_mm};
    const double side = std::min(leaf_.front_y_mm - leaf_.back_y_mm, leaf_.edge_x_mm - leaf_.flange_x_mm);
    const double radius = std::min(cutter_mm_, kShareOfSide * side / std::sqrt(2.0));
    if (radius < kLeastRadius_mm) return line_to(corner);
    const double reach = std::sqrt(2.0) * radius;
    line_to({corner.u - reach, corner.v});
    const PlatePoint centre{corner.u - reach / 2, corner.v - reach / 2};
    chain_.push_back({chain_.back().to, {corner.u, corner.v - reach}, -kPi, centre, radius});
  }

  void line_to(PlatePoint p) { chain_.push_back(straight_step(chain_.back().to, p)); }
  void round_to(PlatePoint p, PlatePoint centre, double radius) {
    const PlatePoint from = chain_.back().to;
    chain_.push_back({from, p, turn_between(from - centre, p - centre), centre, radius});
  }

  const LeafPlan& leaf_;
  double cutter_mm_;
  PlateChain chain_;
};

}  // namespace

PlateChain leaf_outline(const LeafPlan& leaf) { return LeafDrawer(leaf).drawn(); }

}  // namespace prismwright
