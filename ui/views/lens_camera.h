#pragma once

#include <vector>

#include <Graphic3d_Camera.hxx>
#include <gp_Pnt.hxx>

namespace prismwright {

/// Where the eye of the 3D view stands. The focus of the lens is the origin; angles in degrees, lengths in mm.
///
/// Outside, the eye goes round the focus and looks at it; a pan slides the picture and leaves the centre of
/// turning in the focus. From the lamp, the eye stands in the focus and turns its head.
class LensCamera {
 public:
  enum class Stand { outside, lamp };

  [[nodiscard]] Stand stand() const { return stand_; }
  /// Azimuth and elevation: outside, of the eye as seen from the focus; from the lamp, of the line of sight.
  [[nodiscard]] double azimuth_deg() const { return azimuth_deg_; }
  [[nodiscard]] double elevation_deg() const { return elevation_deg_; }
  [[nodiscard]] double opening_deg() const { return opening_deg_; }  ///< upright opening angle, from the lamp
  [[nodiscard]] double distance_mm() const { return distance_mm_; }

  void standOutside(double azimuth_deg, double elevation_deg);
  void standInFocus(double azimuth_deg, double elevation_deg, double opening_deg);

  /// Turns by a drag over the view, pixels (y down), in a view of that height.
  void turn(double dx_px, double dy_px, double view_height_px);
  void pan(double dx_px, double dy_px, double view_height_px);
  /// Nearer by `factor` (> 1) keeping what lies under the pointer; the pointer is given from the middle of
  /// the view, pixels (y down). From the lamp it narrows the opening angle.
  void zoom(double factor, double from_middle_x_px, double from_middle_y_px, double view_height_px);

  /// Frames these points: turns nothing; outside it moves and pans, from the lamp it looks at their middle.
  void frame(const std::vector<gp_Pnt>& points, double width_px, double height_px);
  /// How far a drag of one pixel goes at the focus, mm.
  [[nodiscard]] double mmPerPixel(double view_height_px) const;

  void apply(const Handle(Graphic3d_Camera) & camera) const;

 private:
  struct Axes;
  [[nodiscard]] Axes axes() const;
  void frameOutside(const std::vector<gp_Pnt>& points, double aspect);
  void frameFromLamp(const std::vector<gp_Pnt>& points, double aspect);

  Stand stand_ = Stand::outside;
  double azimuth_deg_ = 0;
  double elevation_deg_ = 15;
  double distance_mm_ = 2000;
  double pan_right_mm_ = 0;
  double pan_up_mm_ = 0;
  double opening_deg_ = 70;
};

}  // namespace prismwright
