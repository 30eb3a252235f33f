#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Section.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Pln.hxx>

#include "core/base/angle.h"
#include "core/frame/prism_end.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/frame_bodies.h"
#include "geometry/profile_wire.h"
#include "geometry/room_field.h"
#include "geometry/solid_gap.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

// Prisms turned about an axis that falls seaward, between side planes that stay upright.

namespace prismwright {
namespace {

/// A ring of rectangular section, 200 to 212 mm along its axis and 60 to 75 mm away from it.
PlannedPrism dipping_ring(double dip_deg, double axis_z_mm, Half half) {
  PlannedPrism prism;
  prism.mark = "P01-R1";
  const SectionPoint a{200, 60}, b{212, 60}, c{212, 75}, d{200, 75};
  prism.profile.faces = {straight_face(FaceRole::joint_lower, a, b), straight_face(FaceRole::outer, b, c),
                         straight_face(FaceRole::joint_upper, c, d), straight_face(FaceRole::inner, d, a)};
  if (half == Half::lower) prism.profile = mirrored(prism.profile);
  prism.axis_dip_deg = dip_deg;
  prism.axis_z_mm = axis_z_mm;
  prism.trim = {-15, 18, 2.5, half, 0.25};
  return prism;
}

gp_Trsf about(const gp_Dir& line, double angle) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), line), angle);
  return turn;
}

gp_Trsf moved_by(double x, double y, double z) {
  gp_Trsf move;
  move.SetTranslation(gp_Vec(x, y, z));
  return move;
}

/// A huge box with one face at y = `at`, reaching towards +Y or -Y, then turned about Z.
TopoDS_Shape half_space(double at, bool towards_plus, double azimuth_deg) {
  const gp_Pnt low(-900, towards_plus ? at : at - 900, -900);
  const TopoDS_Shape box = BRepPrimAPI_MakeBox(low, 1800, 900, 1800).Shape();
  return BRepBuilderAPI_Transform(box, about(gp_Dir(0, 0, 1), radians(azimuth_deg)), true).Shape();
}

/// The same prism made another way: a full ring laid on its axis, then cut by upright boxes in the panel's
/// frame and by a box that lies along the axis.
TopoDS_Shape cut_in_the_panel(const PlannedPrism& prism) {
  const bool below = prism.trim.half == Half::lower;
  const Profile profile = below ? mirrored(prism.profile) : prism.profile;
  const TopoDS_Face face = profile_face(profile, ProfilePlane(TurningAxis::panel, 1.1));
  const TopoDS_Shape ring = BRepPrimAPI_MakeRevol(face, turning_line(TurningAxis::panel)).Shape();
  const gp_Trsf place = moved_by(0, 0, prism.axis_z_mm) * about(gp_Dir(0, 1, 0), radians(prism.axis_dip_deg));
  const double gap = prism.trim.half_gap_mm;
  const TopoDS_Shape level =
      BRepPrimAPI_MakeBox(gp_Pnt(-900, -900, below ? -900 - gap : gap), 1800, 1800, 900).Shape();
  TopoDS_Shape left = BRepBuilderAPI_Transform(ring, place, true).Shape();
  const double s = prism.trim.set_back_mm;
  for (const TopoDS_Shape& room : {half_space(s, true, prism.trim.clockwise_side_deg),
                                   half_space(-s, false, prism.trim.anticlockwise_side_deg),
                                   BRepBuilderAPI_Transform(level, place, true).Shape()}) {
    left = BRepAlgoAPI_Common(left, room).Shape();
  }
  return left;
}

struct DipCase {
  double dip_deg;
  double axis_z_mm;
  Half half;
};

class DippingRing : public ::testing::TestWithParam<DipCase> {};

TEST_P(DippingRing, IsTheRingCutInThePanelItself) {
  const DipCase& dip = GetParam();
  const PlannedPrism prism = dipping_ring(dip.dip_deg, dip.axis_z_mm, dip.half);
  const auto made = prism_shape(prism);
  ASSERT_TRUE(made.ok()) << made.problem().text;
  EXPECT_THAT(*made, IsValidSolid());
  EXPECT_TRUE(made->Location().IsIdentity()) << "its faces themselves lie in the panel's frame";
  const TopoDS_Shape expected = cut_in_the_panel(prism);
  const double volume = kernel_volume_mm3(expected);
  EXPECT_NEAR(kernel_volume_mm3(*made) / volume, 1, 1e-6);
  EXPECT_NEAR(kernel_volume_mm3(BRepAlgoAPI_Common(*made, expected).Shape()) / volume, 1, 1e-6);
  EXPECT_NEAR(trimmed_volume_mm3(prism) / volume, 1, 1e-7);
}

INSTANTIATE_TEST_SUITE_P(OfEitherHalf, DippingRing,
                         ::testing::Values(DipCase{0.25, 0, Half::upper}, DipCase{0.25, 0, Half::lower},
                                           DipCase{5, 0, Half::upper}, DipCase{5, 12, Half::lower},
                                           DipCase{-3, -7, Half::upper}, DipCase{0, 10, Half::upper}));

TEST(DippingRing, ThatClearsBothSidesIsWhole) {
  PlannedPrism prism = dipping_ring(4, 6, Half::whole);
  prism.trim.clockwise_side_deg = -40;
  prism.trim.anticlockwise_side_deg = 45;
  const auto made = prism_shape(prism);
  ASSERT_TRUE(made.ok()) << made.problem().text;
  const double expected = kPi * (75.0 * 75 - 60.0 * 60) * 12;
  EXPECT_NEAR(kernel_volume_mm3(*made) / expected, 1, 1e-8);
  EXPECT_NEAR(trimmed_volume_mm3(prism) / expected, 1, 1e-8);
}

// Both sides graze the inner edge of this half a little beyond its level.
TEST(DippingRing, LosesTheSplintersThatItsSidesLeave) {
  LensValues values = fourth_order_bullseye(Faces::true_curve);
  values.section.refracting.aim_deg = values.section.upper.aim_deg = values.section.lower.aim_deg = 5;
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  const PlannedPrism* prism = plan->find("P01-R6b");
  ASSERT_TRUE(prism);
  const auto made = prism_shape(*prism);
  ASSERT_TRUE(made.ok()) << made.problem().text;
  EXPECT_THAT(*made, IsValidSolid());
  EXPECT_NEAR(kernel_volume_mm3(*made) / trimmed_volume_mm3(*prism), 1, 2e-6);
}

/// Where the kernel cuts a solid by the plane of a rib, as lines of the plane's own coordinates.
std::vector<std::vector<PlatePoint>> kernel_section(const TopoDS_Shape& solid, const PlannedPrism& prism,
                                                    Side side, double depth) {
  const bool clockwise = side == Side::clockwise;
  const double azimuth = radians(clockwise ? prism.trim.clockwise_side_deg : prism.trim.anticlockwise_side_deg);
  const double hand = clockwise ? 1 : -1;
  const gp_Dir inward(-hand * std::sin(azimuth), hand * std::cos(azimuth), 0);
  const gp_Pln plane(gp_Pnt(gp_XYZ(0, 0, 0) + depth * inward.XYZ()), inward);
  BRepAlgoAPI_Section cut(solid, plane);
  std::vector<std::vector<PlatePoint>> lines;
  for (TopExp_Explorer it(cut.Shape(), TopAbs_EDGE); it.More(); it.Next()) {
    BRepAdaptor_Curve curve(TopoDS::Edge(it.Current()));
    const GCPnts_QuasiUniformDeflection points(curve, 5e-4);
    std::vector<PlatePoint> line;
    for (int i = 1; i <= points.NbPoints(); ++i) {
      const gp_Pnt p = points.Value(i);
      line.push_back({p.X() * std::cos(azimuth) + p.Y() * std::sin(azimuth), p.Z()});
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

/// The greatest distance of either outline from the other, mm.
double apart_mm(const PlateRegion& region, const std::vector<std::vector<PlatePoint>>& lines) {
  if (region.empty() || lines.empty()) return region.empty() && lines.empty() ? 0 : 1e3;
  const RegionField planned(region);
  const RegionField cut = RegionField::within(lines);
  double worst = 0;
  for (const auto& line : lines) {
    for (const PlatePoint p : line) worst = std::max(worst, planned.to_boundary(p).distance_mm);
  }
  for (const PlateOutline& outline : region) {
    for (const PlatePoint p : outline) worst = std::max(worst, cut.to_boundary(p).distance_mm);
  }
  return worst;
}

double worst_end_mm(const PlannedPrism& prism) {
  const auto made = prism_shape(prism);
  EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.problem().text);
  if (!made) return 1e3;
  double worst = 0;
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    for (const double further : {0.05, 1.5}) {
      const double depth = prism.trim.set_back_mm + further;
      const double apart =
          apart_mm(end_slice(prism, side, depth, 0.002), kernel_section(*made, prism, side, depth));
      EXPECT_LT(apart, 0.01) << prism.mark << " at " << depth;
      worst = std::max(worst, apart);
    }
  }
  return worst;
}

TEST(FlatFacedPrismEnd, LiesWhereTheKernelCutsTheSolid) {
  LensValues values = starting_values("4", Work::belt, 8);
  values.section.inner_face = InnerFace::flat;
  values.section.edge_mm = 30;
  values.section.refracting.division = Division::count;
  values.section.refracting.count = 3;
  values.panels = equal_panels(8);
  values.panels[0].axis_shift_deg = 3;
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  int ends = 0;
  for (const PlannedPrism* prism : distinct_prisms(*plan)) {
    if (!is_refracting(prism->kind) || prism->panel != 1) continue;
    worst_end_mm(*prism);
    ++ends;
  }
  EXPECT_EQ(ends, 5) << "the centre, and rings above and below";
}

TEST(AimedPrismEnd, LiesWhereTheKernelCutsTheSolid) {
  double worst = 0;
  for (const LensValues& values :
       {aimed_at_the_horizon(fourth_order_bullseye(Faces::true_curve)), every_band_its_own_way()}) {
    const auto plan = plan_lens(values);
    ASSERT_TRUE(plan.ok()) << plan.problem().text;
    const auto prisms = distinct_prisms(*plan);
    for (std::size_t i = 0; i < prisms.size(); i += 4) worst = std::max(worst, worst_end_mm(*prisms[i]));
  }
  RecordProperty("worst_mm", std::to_string(worst));
}

TEST(AimedPrismEnd, IsRightForSteepAxesAndBothHalves) {
  double worst = 0;
  for (const double dip : {5.0, -5.0}) {
    for (const Half half : {Half::upper, Half::lower})
      worst = std::max(worst, worst_end_mm(dipping_ring(dip, 4, half)));
  }
  // The side plane meets the ring beyond the level, on the way down as on the way up.
  for (const double set_back : {-8.0, -9.5, -10.5}) {
    PlannedPrism grazed = dipping_ring(5, 0, Half::lower);
    grazed.trim = {-15, 18, set_back, Half::lower, 0.25};
    worst = std::max(worst, worst_end_mm(grazed));
  }
  PlannedPrism whole = dipping_ring(5, 4, Half::whole);
  whole.trim.clockwise_side_deg = -40;
  whole.trim.anticlockwise_side_deg = 45;
  worst = std::max(worst, worst_end_mm(whole));
  RecordProperty("worst_mm", std::to_string(worst));
}

// Slice by slice, all that the prism covers on its way into the rib, and no more than that.
TEST(AimedPrismEnd, SweptIsTheSumOfItsSlices) {
  for (const Half half : {Half::upper, Half::lower}) {
    PlannedPrism prism = dipping_ring(5, 4, half);
    // The side plane leaves the ring partly beyond its level.
    prism.trim.clockwise_side_deg = prism.trim.anticlockwise_side_deg = 18.5;
    prism.trim.clockwise_side_deg *= -1;
    for (const Side side : {Side::clockwise, Side::anticlockwise}) {
      std::vector<PlateOutline> slices;
      for (int i = 0; i <= 60; ++i) {
        for (const PlateOutline& outline : end_slice(prism, side, 2.5 + 3.5 * i / 60, 0.002))
          slices.push_back(outline);
      }
      const PlateRegion sum = united(slices);
      const PlateRegion swept = swept_end(prism, side, 0, 6, 0.002);
      EXPECT_LT(area_mm2(first_less_second(sum, swept)), 0.05) << area_mm2(sum);
      EXPECT_LT(area_mm2(first_less_second(swept, sum)), 0.3) << "steps between the slices";
      EXPECT_NEAR(extent_of(swept).low.v, extent_of(sum).low.v, 0.01);
      EXPECT_NEAR(extent_of(swept).high.v, extent_of(sum).high.v, 0.01);
      EXPECT_NEAR(extent_of(swept).high.u, extent_of(sum).high.u, 0.01);
    }
  }
}

class AimedLens : public ::testing::TestWithParam<bool> {};

TEST_P(AimedLens, StandsInItsFrameWithoutAClash) {
  LensValues values =
      GetParam() ? every_band_its_own_way() : aimed_at_the_horizon(starting_values("6", Work::bullseye, 8));
  for (std::size_t i = 1; i < values.panels.size(); ++i) values.panels[i].blind = true;
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  BodyShop shop;
  const auto bodies = shop.make(*plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  const FramePlan frame = plan_frame(*plan);
  const auto metal = make_frame(frame);
  ASSERT_TRUE(metal.ok()) << metal.problem().text;
  const auto all = find_clearances(*plan, *bodies, frame, *metal);
  ASSERT_TRUE(all.ok()) << all.problem().text;
  EXPECT_GT(all->size(), 50u);
  for (const Clearance& c : *all) {
    EXPECT_NE(c.verdict, Verdict::clash) << c.first << " " << c.second << " " << c.overlap_mm3 << " mm3";
  }
  // Neighbours told by their sections agree with the kernel.
  int checked = 0;
  for (const Clearance& c : *all) {
    const PrismBody* first = bodies->find(c.first);
    const PrismBody* second = bodies->find(c.second);
    if (!first || !second || ++checked % 6 != 1) continue;
    EXPECT_NEAR(gap_between(first->shape, second->shape).gap_mm, c.gap_mm, 3e-4) << c.first << " " << c.second;
  }
  EXPECT_GT(checked, 10);
}

INSTANTIATE_TEST_SUITE_P(AtTheHorizonOrBandByBand, AimedLens, ::testing::Bool());

}  // namespace
}  // namespace prismwright
