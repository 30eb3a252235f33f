#pragma once

#include <cmath>

#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>

#include "core/base/angle.h"
#include "core/lens/plan.h"
#include "core/optics/section_plane.h"

namespace prismwright {

/// The line that a profile is turned about, in its own frame (see `axis_place`).
inline gp_Ax1 turning_line(TurningAxis turning) {
  return {gp_Pnt(0, 0, 0), turning == TurningAxis::lens ? gp_Dir(0, 0, 1) : gp_Dir(1, 0, 0)};
}

/// Whether the prism is turned about a line other than the panel's level axis through the focus.
inline bool is_aimed(const PlannedPrism& prism) {
  return prism.turning == TurningAxis::panel && (prism.axis_z_mm != 0 || prism.axis_dip_deg != 0);
}

/// From the frame of the prism's turning axis (X along it) to the panel's own frame: turned down seaward, then
/// lifted to where the axis crosses the lens axis.
inline gp_Trsf axis_place(const PlannedPrism& prism) {
  gp_Trsf dip;
  if (!is_aimed(prism)) return dip;
  dip.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 1, 0)), radians(prism.axis_dip_deg));
  gp_Trsf lift;
  lift.SetTranslation(gp_Vec(0, 0, prism.axis_z_mm));
  return lift * dip;
}

/// The half plane that holds a profile at one angle about its turning line, in the frame of that line.
///
/// lens: the angle is the azimuth from +X; r is the radius, z the height.
/// panel: the angle runs from +Y towards +Z; r lies along +X, z (not negative) is the distance from X.
class ProfilePlane {
 public:
  ProfilePlane(TurningAxis turning, double angle)
      : r_(turning == TurningAxis::lens ? gp_Dir(std::cos(angle), std::sin(angle), 0) : gp_Dir(1, 0, 0)),
        z_(turning == TurningAxis::lens ? gp_Dir(0, 0, 1) : gp_Dir(0, std::cos(angle), std::sin(angle))),
        outward_(turning == TurningAxis::lens ? r_ : z_) {}

  [[nodiscard]] gp_Pnt place(SectionPoint p) const {
    return gp_Pnt(p.r * r_.X() + p.z * z_.X(), p.r * r_.Y() + p.z * z_.Y(), p.r * r_.Z() + p.z * z_.Z());
  }
  [[nodiscard]] gp_Vec direction(SectionDirection d) const { return d.r() * gp_Vec(r_) + d.z() * gp_Vec(z_); }
  /// Away from the turning line.
  [[nodiscard]] const gp_Dir& outward() const { return outward_; }
  /// The side from which a profile is walked anticlockwise.
  [[nodiscard]] gp_Dir facing() const { return r_.Crossed(z_); }

 private:
  gp_Dir r_;
  gp_Dir z_;
  gp_Dir outward_;
};

}  // namespace prismwright
