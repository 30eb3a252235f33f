#include "ui/views/lens_rose.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kInner = 1.0;
constexpr double kOuter = 1.05;
constexpr double kNumber = 1.13;
constexpr double kArrowFoot = 1.08;
constexpr double kArrowTip = 1.36;

}  // namespace

gp_Pnt LensRose::at(double radius_share, double azimuth_deg) const {
  const double r = radius_share * radius_mm;
  return {r * std::cos(radians(azimuth_deg)), r * std::sin(radians(azimuth_deg)), level_mm};
}

double LensRose::arrowAzimuth() const {
  for (const PanelPlace& panel : panels)
    if (panel.number == arrow_panel) return panel.axis_deg;
  return 0;
}

Handle(Graphic3d_ArrayOfSegments) LensRose::lines() const {
  std::vector<gp_Pnt> ends;
  const auto line = [&](const gp_Pnt& a, const gp_Pnt& b) {
    ends.push_back(a);
    ends.push_back(b);
  };
  constexpr int kSteps = 180;
  for (int i = 0; i < kSteps; ++i) {
    const double from = 360.0 * i / kSteps;
    const double to = 360.0 * (i + 1) / kSteps;
    line(at(kInner, from), at(kInner, to));
    line(at(kOuter, from), at(kOuter, to));
  }
  for (int tens = 0; tens < 36; ++tens)
    line(at(tens % 9 == 0 ? 0.97 : kInner, tens * 10), at(kOuter, tens * 10));
  for (const PanelPlace& panel : panels) {
    line(at(0.9, panel.from_deg), at(kOuter, panel.from_deg));
    line(at(kOuter, panel.axis_deg), at(1.09, panel.axis_deg));
  }
  line(at(kArrowFoot, arrowAzimuth()), at(kArrowTip - 0.06, arrowAzimuth()));
  Handle(Graphic3d_ArrayOfSegments) lines = new Graphic3d_ArrayOfSegments(static_cast<int>(ends.size()));
  for (const gp_Pnt& end : ends) lines->AddVertex(end);
  return lines;
}

Handle(Graphic3d_ArrayOfTriangles) LensRose::arrow() const {
  const double azimuth = arrowAzimuth();
  const double half_width_deg = degrees(0.035 / kArrowTip);
  Handle(Graphic3d_ArrayOfTriangles) head = new Graphic3d_ArrayOfTriangles(3);
  head->AddVertex(at(kArrowTip, azimuth));
  head->AddVertex(at(kArrowTip - 0.09, azimuth + half_width_deg));
  head->AddVertex(at(kArrowTip - 0.09, azimuth - half_width_deg));
  return head;
}

gp_Pnt LensRose::numberPlace(const PanelPlace& panel) const { return at(kNumber, panel.axis_deg); }

gp_Pnt LensRose::arrowTip() const { return at(kArrowTip + 0.02, arrowAzimuth()); }

std::vector<gp_Pnt> LensRose::reach() const {
  std::vector<gp_Pnt> points;
  for (int i = 0; i < 24; ++i) points.push_back(at(kNumber + 0.06, 15.0 * i));
  points.push_back(at(kArrowTip + 0.3, arrowAzimuth()));
  return points;
}

}  // namespace prismwright
