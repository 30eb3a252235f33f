#include <gtest/gtest.h>

#include <BRepAdaptor_Surface.hxx>
#include <BRepClass_FaceClassifier.hxx>
#include <BRepGProp.hxx>
#include <BRepTools.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Pnt2d.hxx>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/works/optical_area.h"
#include "geometry/prism_shape.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

/// Places inside the face, off its edges.
std::vector<gp_Pnt> places_inside(const TopoDS_Face& face) {
  constexpr int kAcross = 12;
  double u0 = 0, u1 = 0, v0 = 0, v1 = 0;
  BRepTools::UVBounds(face, u0, u1, v0, v1);
  const BRepAdaptor_Surface surface(face);
  std::vector<gp_Pnt> places;
  for (int i = 0; i < kAcross; ++i) {
    for (int k = 0; k < kAcross; ++k) {
      const gp_Pnt2d at(u0 + (u1 - u0) * (i + 0.4) / kAcross, v0 + (v1 - v0) * (k + 0.6) / kAcross);
      BRepClass_FaceClassifier where(face, at, 1e-7);
      if (where.State() == TopAbs_IN) places.push_back(surface.Value(at.X(), at.Y()));
    }
  }
  return places;
}

/// The place in the section that was turned there; below the turning axis as above it.
SectionPoint in_section(const PlannedPrism& prism, const gp_Pnt& p) {
  if (prism.turning == TurningAxis::lens) return {std::hypot(p.X(), p.Y()), p.Z()};
  const double dip = radians(prism.axis_dip_deg);
  const double z = p.Z() - prism.axis_z_mm;
  return {p.X() * std::cos(dip) - z * std::sin(dip),
          std::hypot(p.Y(), p.X() * std::sin(dip) + z * std::cos(dip))};
}

double distance_to(SectionPoint p, SectionPoint a, SectionPoint b) {
  const SectionOffset way = b - a;
  const double share =
      std::clamp(((p.r - a.r) * way.r + (p.z - a.z) * way.z) / (way.r * way.r + way.z * way.z), 0.0, 1.0);
  return distance(p, between(a, b, share));
}

bool lies_on(const std::vector<SectionPoint>& line, SectionPoint p) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (distance_to(p, line[i], line[i + 1]) < 2e-3) return true;
  }
  return false;
}

bool is_polished(FaceRole role) {
  return role == FaceRole::inner || role == FaceRole::outer || role == FaceRole::entry ||
         role == FaceRole::exit || role == FaceRole::reflecting;
}

bool is_optical(const PlannedPrism& prism, const TopoDS_Face& face) {
  const auto places = places_inside(face);
  if (places.empty()) return false;
  const auto all = [&](auto fits) { return std::all_of(places.begin(), places.end(), fits); };
  if (prism.trim.flat_inner_mm && prism.turning == TurningAxis::lens &&
      all([&](const gp_Pnt& p) { return std::abs(p.X() - *prism.trim.flat_inner_mm) < 1e-3; }))
    return true;
  for (const Face& part : prism.profile.faces) {
    if (!is_polished(part.role)) continue;
    auto line = points_along(part, 5e-4);
    for (SectionPoint& p : line) {
      if (prism.turning == TurningAxis::panel) p.z = std::abs(p.z);
    }
    if (all([&](const gp_Pnt& p) { return lies_on(line, in_section(prism, p)); })) return true;
  }
  return false;
}

double kernel_area_mm2(const PlannedPrism& prism, const TopoDS_Shape& shape) {
  double area = 0;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    const TopoDS_Face face = TopoDS::Face(it.Current());
    if (!is_optical(prism, face)) continue;
    GProp_GProps sums;
    BRepGProp::SurfaceProperties(face, sums, 1e-6);
    area += sums.Mass();
  }
  return area;
}

void expect_kernel_agrees(const LensValues& values, const std::vector<std::string>& marks) {
  const LensPlan plan = plan_of(values);
  for (const std::string& mark : marks) {
    const PlannedPrism* prism = plan.find(mark);
    ASSERT_NE(prism, nullptr) << mark;
    const auto shape = prism_shape(*prism);
    ASSERT_TRUE(shape.ok()) << mark;
    const double kernel = kernel_area_mm2(*prism, *shape);
    EXPECT_GT(kernel, 0) << mark;
    EXPECT_NEAR(optical_area_mm2(*prism), kernel, 2e-4 * kernel) << mark;
  }
}

TEST(OpticalArea, OfABullsEyeAgreesWithTheKernelsFaces) {
  expect_kernel_agrees(fourth_order_bullseye(Faces::arc),
                       {"P01-C", "P01-R1", "P01-R6a", "P01-R6b", "P01-U03", "P01-L02"});
}

TEST(OpticalArea, OfABeltAgreesWithTheKernelsFaces) {
  expect_kernel_agrees(sixth_order_belt(Faces::true_curve), {"P01-C", "P01-R2b", "P01-U05", "P01-L01"});
}

TEST(OpticalArea, OfAFlatFacetAgreesWithTheKernelsFaces) {
  LensValues values = sixth_order_belt(Faces::arc);
  values.section.inner_face = InnerFace::flat;
  values.section.edge_mm = 45;
  for (Panel& panel : values.panels) panel.axis_shift_deg = 4;
  expect_kernel_agrees(values, {"P01-C", "P02-R1a"});
}

TEST(OpticalArea, OfBandsAimedEachInItsOwnWayAgreesWithTheKernelsFaces) {
  LensValues values = every_band_its_own_way();
  values.section.faces = Faces::arc;
  expect_kernel_agrees(values, {"P01-C", "P01-U02", "P01-L01"});
}

TEST(OpticalArea, OfAHollowBandIsItsCircleTimesItsHeight) {
  // The inner face of a belt ring is a cylinder of radius f between two sides set back: by hand from its arc.
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  PlannedPrism prism = *plan.find("P01-C");
  const Face* inner = prism.profile.find(FaceRole::inner);
  ASSERT_NE(inner, nullptr);
  const double f = inner->start().r;
  const double width = radians(prism.trim.anticlockwise_side_deg - prism.trim.clockwise_side_deg) -
                       2 * std::asin(prism.trim.set_back_mm / f);
  const double by_hand = f * width * std::abs(inner->start().z - inner->end().z);
  for (Face& face : prism.profile.faces) {
    if (face.role == FaceRole::outer) face.role = FaceRole::land;  // leaves the inner face alone
  }
  EXPECT_NEAR(optical_area_mm2(prism), by_hand, 1e-9 * by_hand);
}

}  // namespace
}  // namespace prismwright
