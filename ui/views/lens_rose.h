#pragma once

#include <vector>

#include <Graphic3d_ArrayOfSegments.hxx>
#include <Graphic3d_ArrayOfTriangles.hxx>
#include <gp_Pnt.hxx>

#include "core/lens/brief.h"

namespace prismwright {

/// The compass rose that lies under the lens: a ring with the sides of the panels, a short pointer on every
/// panel's axis and a long seaward arrow on one of them. Lens frame, mm.
struct LensRose {
  double radius_mm = 1;
  double level_mm = 0;  ///< height at which it lies
  std::vector<PanelPlace> panels;
  int arrow_panel = 1;

  [[nodiscard]] Handle(Graphic3d_ArrayOfSegments) lines() const;
  [[nodiscard]] Handle(Graphic3d_ArrayOfTriangles) arrow() const;
  /// Where the number of a panel is written.
  [[nodiscard]] gp_Pnt numberPlace(const PanelPlace& panel) const;
  /// The tip of the seaward arrow.
  [[nodiscard]] gp_Pnt arrowTip() const;
  /// Points that a picture of the whole rose must hold.
  [[nodiscard]] std::vector<gp_Pnt> reach() const;

 private:
  [[nodiscard]] gp_Pnt at(double radius_share, double azimuth_deg) const;
  [[nodiscard]] double arrowAzimuth() const;
};

}  // namespace prismwright
