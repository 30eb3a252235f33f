#include "geometry/prism_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <Standard_Failure.hxx>
#include <TopoDS_Solid.hxx>

#include "core/base/angle.h"
#include "core/lens/trimmed_ring.h"
#include "core/lens/trimmed_volume.h"
#include "geometry/profile_wire.h"
#include "geometry/solid_check.h"
#include "geometry/trimmer.h"

namespace prismwright {

namespace {

constexpr double kGoodShare = 1e-5;     ///< volume error at which no other cut is tried
constexpr double kAllowedShare = 1e-4;  ///< volume error at which a solid is refused
constexpr double kBeyond = kPi / 60;    ///< how far a ring is turned beyond what the cut keeps

struct Cut {
  double further_back_mm;
  CuttingWay way;
};
constexpr Cut kCuts[] = {{0, CuttingWay::wedge},
                         {0, CuttingWay::plane_by_plane},
                         {1e-4, CuttingWay::wedge},
                         {-1e-4, CuttingWay::wedge},
                         {1e-3, CuttingWay::wedge},
                         {-1e-3, CuttingWay::wedge},
                         {1e-3, CuttingWay::plane_by_plane}};

TrimmedRing::Span turn_without_cut(const TrimmedRing& ring) {
  // The seam of a full turn lies at the top, away from the side planes.
  if (ring.turning() == TurningAxis::panel) return {kPi / 2, kPi / 2 + 2 * kPi};
  return {radians(ring.trim().clockwise_side_deg), radians(ring.trim().anticlockwise_side_deg)};
}

/// The turn that holds all that the cut keeps, and a little more at both ends.
TrimmedRing::Span turn_to_cut(const TrimmedRing& ring, TrimmedRing::Span kept) {
  const bool panel = ring.turning() == TurningAxis::panel;
  if (panel && ring.trim().half == Half::whole) return {kPi / 2, kPi / 2 + 2 * kPi};
  if (panel && ring.trim().half_gap_mm < 0) {  // past the level plane: the seam on the far side
    const double seam = ring.trim().half == Half::upper ? -kPi / 2 : kPi / 2;
    return {seam, seam + 2 * kPi};
  }
  TrimmedRing::Span turn = {kept.from - kBeyond, kept.to + kBeyond};
  if (panel && ring.trim().half == Half::lower) turn = {-turn.to, -turn.from};
  if (turn.to - turn.from >= 2 * kPi - kBeyond) turn.to = turn.from + 2 * kPi;
  return turn;
}

TopoDS_Shape turned(const TrimmedRing& ring, TrimmedRing::Span turn) {
  const ProfilePlane plane(ring.turning(), turn.from);
  const TopoDS_Face face = profile_face(ring.profile(), plane);
  const gp_Ax1 line = turning_line(ring.turning());
  const double angle = turn.to - turn.from;
  const bool full = angle > 2 * kPi - 1e-9;
  BRepPrimAPI_MakeRevol revolution =
      full ? BRepPrimAPI_MakeRevol(face, line) : BRepPrimAPI_MakeRevol(face, line, angle);
  return revolution.Shape();
}

/// The solid with its faces themselves at their place in the panel's frame.
TopoDS_Shape in_panel(const TopoDS_Shape& solid, const PlannedPrism& prism) {
  if (!is_aimed(prism)) return solid;
  return BRepBuilderAPI_Transform(solid, axis_place(prism), Standard_True).Shape();
}

/// A solid and how far its volume is from the independent one.
struct Candidate {
  TopoDS_Solid solid;
  double error = std::numeric_limits<double>::infinity();
};

class PrismMaker {
 public:
  explicit PrismMaker(const PlannedPrism& prism)
      : prism_(prism), ring_(prism), volume_mm3_(trimmed_volume_mm3(prism)) {}

  Outcome<TopoDS_Shape> make() {
    const auto kept = ring_.kept_anywhere();
    if (!kept || !(volume_mm3_ > 0)) return nothing_left();
    if (ring_.needs_no_cut()) {
      consider(turned(ring_, turn_without_cut(ring_)));
    } else {
      cut(turned(ring_, turn_to_cut(ring_, *kept)));
    }
    if (best_.error <= kAllowedShare) return in_panel(best_.solid, prism_);
    return best_.solid.IsNull() ? *trouble_ : wrong_volume();
  }

  [[nodiscard]] Problem kernel_trouble(std::string_view why) const {
    return request_problem(
        "solid", prism_.mark,
        fmt::format("{}: no solid could be made ({}). Change the panel's width, the end gap or "
                    "the division of the zones a little.",
                    prism_.mark, why));
  }

 private:
  void cut(const TopoDS_Shape& ring) {
    for (const Cut& way : kCuts) {
      Trim trim = ring_.trim();
      trim.set_back_mm += way.further_back_mm;
      try {
        consider(trimmed(ring, trim, ring_.dip(), way.way));
      } catch (const Standard_Failure& failure) {
        keep(kernel_trouble(failure.GetMessageString()));
      }
      if (best_.error <= kGoodShare) return;
    }
  }

  void consider(const TopoDS_Shape& shape) {
    const auto solid = sound_solid(shape, prism_.mark);
    if (!solid) return keep(solid.problem());
    const double error = std::abs(measured(*solid, volume_mm3_).volume_mm3 / volume_mm3_ - 1);
    if (error < best_.error) best_ = {*solid, error};
  }

  void keep(const Problem& problem) {
    if (!trouble_) trouble_ = problem;
  }

  [[nodiscard]] Problem nothing_left() const {
    return request_problem(
        "solid", prism_.mark,
        fmt::format("{}: the panel's sides, set back by {:g} mm, leave nothing of it. Make the "
                    "panel wider than {:g} deg or the set-back smaller.",
                    prism_.mark, prism_.trim.set_back_mm,
                    prism_.trim.anticlockwise_side_deg - prism_.trim.clockwise_side_deg));
  }

  [[nodiscard]] Problem wrong_volume() const {
    return request_problem(
        "solid", prism_.mark,
        fmt::format("{}: its solid differs by {:.2g} from the volume of its section, {:g} is allowed: a side "
                    "plane all but touches an edge. Change the end gap by a hundredth of a millimetre.",
                    prism_.mark, best_.error, kAllowedShare));
  }

  const PlannedPrism& prism_;
  TrimmedRing ring_;
  double volume_mm3_;
  Candidate best_;
  std::optional<Problem> trouble_;
};

}  // namespace

Outcome<TopoDS_Shape> prism_shape(const PlannedPrism& prism) {
  PrismMaker maker(prism);
  try {
    return maker.make();
  } catch (const Standard_Failure& failure) {
    return maker.kernel_trouble(failure.GetMessageString());
  }
}

}  // namespace prismwright
