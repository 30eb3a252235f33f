#include "geometry/profile_wire.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <Geom_BSplineCurve.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "core/base/angle.h"
#include "geometry/prism_shape.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

/// Edges of an outline whose curve is a spline.
std::vector<TopoDS_Edge> splines_of(const TopoDS_Wire& wire) {
  std::vector<TopoDS_Edge> splines;
  for (TopExp_Explorer it(wire, TopAbs_EDGE); it.More(); it.Next()) {
    const TopoDS_Edge edge = TopoDS::Edge(it.Current());
    if (BRepAdaptor_Curve(edge).GetType() == GeomAbs_BSplineCurve) splines.push_back(edge);
  }
  return splines;
}

/// A quarter-ring section whose outer face is a circle's arc of 150 mm given as a true curve: its exact slope
/// is known everywhere.
Profile circle_as_true_curve(int points) {
  const SectionPoint centre{100, 10};
  std::vector<SectionPoint> places;
  std::vector<SectionDirection> slopes;
  for (int i = 0; i < points; ++i) {
    const double angle = radians(12 + 10.0 * i / (points - 1));
    places.push_back(centre + 150 * SectionDirection::at(angle));
    slopes.push_back(SectionDirection::at(angle).quarter_turn());
  }
  const SectionPoint low{230, places.front().z}, high{230, places.back().z};
  Profile profile;
  profile.faces = {
      straight_face(FaceRole::joint_lower, low, places.front()), true_face(FaceRole::outer, places, slopes),
      straight_face(FaceRole::joint_upper, places.back(), high), straight_face(FaceRole::inner, high, low)};
  return profile;
}

double worst_slope_error_deg(const TopoDS_Edge& edge, gp_Pnt centre) {
  const BRepAdaptor_Curve curve(edge);
  double worst = 0;
  for (int i = 0; i <= 1000; ++i) {
    const double u = curve.FirstParameter() + (curve.LastParameter() - curve.FirstParameter()) * i / 1000;
    gp_Pnt place;
    gp_Vec slope;
    curve.D1(u, place, slope);
    worst = std::max(worst, std::abs(slope.Angle(gp_Vec(centre, place)) - kPi / 2));
  }
  return degrees(worst);
}

class TrueCurve : public ::testing::TestWithParam<int> {};

TEST_P(TrueCurve, HoldsItsSlopeBetweenItsPoints) {
  const ProfilePlane plane(TurningAxis::lens, 0.4);
  const auto splines = splines_of(profile_wire(circle_as_true_curve(GetParam()), plane));
  ASSERT_EQ(splines.size(), 1u);
  EXPECT_LT(worst_slope_error_deg(splines[0], plane.place({100, 10})), 1e-5);
}

INSTANTIATE_TEST_SUITE_P(ThroughPoints, TrueCurve, ::testing::Values(9, 12, 13, 17, 33, 65));

/// Greatest angle between a profile's exact slopes and its spline's at the same places.
double worst_angle_to_exact_deg(const Face& face, const TopoDS_Edge& edge, const ProfilePlane& plane) {
  const BRepAdaptor_Curve curve(edge);
  const int count = curve.NbKnots();
  if (count != static_cast<int>(face.points.size())) return 1e9;
  TColStd_Array1OfReal knots(1, count);
  curve.BSpline()->Knots(knots);
  double worst = 0;
  for (int i = 0; i < count; ++i) {
    gp_Pnt place;
    gp_Vec slope;
    curve.D1(knots(i + 1), place, slope);
    worst = std::max(
        {worst, slope.Angle(plane.direction(face.tangents[i])), place.Distance(plane.place(face.points[i]))});
  }
  return degrees(worst);
}

TEST(TrueCurves, OfALensKeepTheirExactSlopesAtTheirPoints) {
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok());
  const ProfilePlane plane(TurningAxis::lens, 0);
  int curves = 0;
  for (const PlannedPrism* prism : distinct_prisms(*plan)) {
    SCOPED_TRACE(prism->mark);
    const auto face = std::find_if(prism->profile.faces.begin(), prism->profile.faces.end(),
                                   [](const Face& f) { return f.kind == FaceKind::true_curve; });
    ASSERT_NE(face, prism->profile.faces.end());
    const auto splines = splines_of(profile_wire(prism->profile, plane));
    ASSERT_EQ(splines.size(), 1u);
    EXPECT_LT(worst_angle_to_exact_deg(*face, splines[0], plane), 1e-5);
    ++curves;
  }
  EXPECT_GT(curves, 20);
}

int count_faces_of(const TopoDS_Shape& shape, GeomAbs_SurfaceType type) {
  int count = 0;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    if (BRepAdaptor_Surface(TopoDS::Face(it.Current())).GetType() == type) ++count;
  }
  return count;
}

/// A belt with an outer arc of `radius` about `centre`, 20 mm high.
PlannedPrism arc_belt(SectionPoint centre, double radius) {
  const double half = std::asin(10 / radius);
  const SectionPoint low = centre + radius * SectionDirection::at(-half);
  const SectionPoint high = centre + radius * SectionDirection::at(half);
  PlannedPrism prism;
  prism.mark = "P01-C";
  prism.turning = TurningAxis::lens;
  const double back = low.r - 8;
  prism.profile.faces = {straight_face(FaceRole::joint_lower, {back, low.z}, low),
                         arc_face(FaceRole::outer, low, high, centre, radius),
                         straight_face(FaceRole::joint_upper, high, {back, high.z}),
                         straight_face(FaceRole::inner, {back, high.z}, {back, low.z})};
  return prism;
}

TEST(Arcs, BecomeTorusFacesWhereTheirCentreLiesFartherOffThanTheirRadius) {
  const auto shape = prism_shape(arc_belt({190, 3}, 60));
  ASSERT_TRUE(shape.ok()) << shape.problem().text;
  EXPECT_THAT(*shape, IsValidSolid());
  EXPECT_EQ(count_faces_of(*shape, GeomAbs_Torus), 1);
}

TEST(Arcs, BecomeSphereFacesWhereTheirCentreLiesOnTheTurningLine) {
  const auto shape = prism_shape(arc_belt({0, 3}, 200));
  ASSERT_TRUE(shape.ok()) << shape.problem().text;
  EXPECT_THAT(*shape, IsValidSolid());
  EXPECT_EQ(count_faces_of(*shape, GeomAbs_Sphere), 1);
}

}  // namespace
}  // namespace prismwright
