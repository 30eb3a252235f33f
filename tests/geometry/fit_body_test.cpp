#include <gtest/gtest.h>

#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <cmath>

#include "core/base/angle.h"
#include "geometry/fit_body.h"
#include "geometry/flat_solid.h"
#include "geometry/loop_field.h"
#include "geometry/prism_shape.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

double to_skin_mm(const TopoDS_Shape& solid, SpacePoint p) {
  const TopoDS_Shape skin = TopExp_Explorer(solid, TopAbs_SHELL).Current();
  const BRepExtrema_DistShapeShape gap(BRepBuilderAPI_MakeVertex(gp_Pnt(p.x, p.y, p.z)).Vertex(), skin);
  return gap.Value();
}

bool lies_in(const TopoDS_Shape& solid, SpacePoint p) {
  return BRepClass3d_SolidClassifier(solid, gp_Pnt(p.x, p.y, p.z), 1e-6).State() == TopAbs_IN;
}

// Against the kernel's distance and classifier, at places drawn by lot about the skin.
void expect_agrees_with_solid(const FitBody& body, const TopoDS_Shape& solid, double within_mm,
                              double scatter_mm, Lot& lot) {
  int within = 0;
  for (int i = 0; i < 25; ++i) {
    const SpacePoint on =
        body.skin()[static_cast<std::size_t>(lot.whole(0, static_cast<int>(body.skin().size()) - 1))];
    const SpacePoint p{on.x + lot.between(-scatter_mm, scatter_mm), on.y + lot.between(-scatter_mm, scatter_mm),
                       on.z + lot.between(-scatter_mm, scatter_mm)};
    const double signed_mm = body.signed_mm(p);
    const double true_mm = to_skin_mm(solid, p);
    EXPECT_LE(std::abs(signed_mm), true_mm + within_mm);
    if (true_mm < within_mm) continue;
    EXPECT_EQ(signed_mm < 0, lies_in(solid, p)) << p.x << " " << p.y << " " << p.z << ": " << signed_mm;
    within += signed_mm < 0 ? 1 : 0;
  }
  EXPECT_GT(within, 2) << "the lot must try the inside too";
}

TEST(LoopField, AgreesWithACirclesClosedForm) {
  PlateOutline circle;
  for (int i = 0; i < 720; ++i)
    circle.push_back({10 + 30 * std::cos(kPi * i / 360), 30 * std::sin(kPi * i / 360)});
  PlateOutline hole;
  for (int i = 0; i < 360; ++i)
    hole.push_back({10 + 10 * std::cos(kPi * i / 180), 10 * std::sin(kPi * i / 180)});
  const LoopField field({circle, hole}, 2);
  Lot lot(5);
  for (int i = 0; i < 2000; ++i) {
    const PlatePoint p{lot.between(-40, 60), lot.between(-50, 50)};
    const double away = std::hypot(p.u - 10, p.v);
    const double exact = std::max(away - 30, 10 - away);
    const double found = field.signed_mm(p);
    EXPECT_LE(std::abs(found), std::abs(exact) + 1e-3) << "never more than the true distance";
    if (std::abs(exact) > 1e-3) {
      EXPECT_EQ(found < 0, exact < 0) << away;
    }
    if (std::abs(exact) < 1.9) {
      EXPECT_NEAR(found, exact, 1e-3);
    }
  }
}

class FitBodyOfPrism : public ::testing::TestWithParam<LensValues> {};

TEST_P(FitBodyOfPrism, LiesWhereItsSolidLies) {
  const LensPlan plan = *plan_lens(GetParam());
  const auto distinct = distinct_prisms(plan);
  Lot lot(3);
  for (std::size_t i = 0; i < distinct.size(); i += 7) {
    SCOPED_TRACE(distinct[i]->mark);
    const auto body = turned_body(*distinct[i], 5);
    expect_agrees_with_solid(*body, *prism_shape(*distinct[i]), 0.006, 2, lot);
  }
}

TEST_P(FitBodyOfPrism, HasItsSkinOnTheSolidsSkin) {
  const LensPlan plan = *plan_lens(GetParam());
  const auto distinct = distinct_prisms(plan);
  for (std::size_t i = 0; i < distinct.size(); i += 7) {
    const auto body = turned_body(*distinct[i], 5);
    const TopoDS_Shape solid = *prism_shape(*distinct[i]);
    for (std::size_t k = 0; k < body->skin().size(); k += body->skin().size() / 20) {
      EXPECT_LT(to_skin_mm(solid, body->skin()[k]), 0.006) << distinct[i]->mark;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(OfEachKind, FitBodyOfPrism,
                         ::testing::Values(sixth_order_belt(Faces::arc), fourth_order_bullseye(Faces::arc),
                                           every_band_its_own_way()));

TEST(FitBodyOfPlate, LiesWhereItsSolidLies) {
  FlatPart part;
  part.thickness_mm = 6;
  part.outline = straight_chain({{0, 0}, {60, 0}, {60, 40}, {0, 40}});
  part.openings = {circle_chain({15, 20}, 8)};
  part.pockets = {{straight_chain({{30, 10}, {50, 15}, {45, 30}, {30, 30}}), 4, {}}};
  Lot lot(11);
  expect_agrees_with_solid(*plate_body(part, {}), flat_solid(part), 0.01, 2, lot);
}

TEST(FitBodyOfPlate, StandsInItsPlace) {
  FlatPart part;
  part.thickness_mm = 6;
  part.outline = straight_chain({{0, 0}, {60, 0}, {60, 40}, {0, 40}});
  const auto body = plate_body(part, {{100, 0, 5}, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}});
  EXPECT_NEAR(body->signed_mm({103, 30, 25}), -3, 1e-9);
  EXPECT_NEAR(body->signed_mm({97.5, 30, 25}), 2.5, 1e-9);
}

}  // namespace
}  // namespace prismwright
