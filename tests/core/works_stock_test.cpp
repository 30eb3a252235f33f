#include "core/works/stock_profile.h"

#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/stock_checks.h"

namespace prismwright {
namespace {

WorksSettings stock_of(double mm, StockFaces faces = StockFaces::optical) {
  WorksSettings settings;
  settings.stock_mm = mm;
  settings.stock_faces = faces;
  return settings;
}

/// Worst departures of the moved faces of a prism.
struct StockErrors {
  double stocked_mm = 0;  ///< of a place above a face with stock, from being that far from it
  double kept_mm = 0;     ///< of a corner of a face without stock, from its line or circle
  double open_mm = 0;     ///< of one face's end from the next one's start
};

double off_line(const Face& face, SectionPoint p) {
  if (face.kind == FaceKind::arc) return std::abs(distance(p, face.centre) - face.radius_mm);
  const auto along = SectionDirection::along(face.end() - face.start());
  return std::abs(cross(p - face.start(), along));
}

void hold_to(const Face& before, const Face& after, double stock_mm, StockErrors& worst) {
  if (stock_mm == 0) {
    if (before.kind == FaceKind::true_curve) return;
    for (const SectionPoint p : {after.start(), after.end()}) {
      worst.kept_mm = std::max(worst.kept_mm, off_line(before, p));
    }
    return;
  }
  const auto chain = points_along(before, 1e-6);
  for (const SectionPoint p : points_along(after, 2e-3)) {
    const FaceFoot foot = foot_on(chain, p);
    if (foot.within) worst.stocked_mm = std::max(worst.stocked_mm, std::abs(foot.away_mm - stock_mm));
  }
}

void hold_prism(const PlannedPrism& prism, const PlannedPrism& stocked, const WorksSettings& settings,
                StockErrors& worst) {
  const auto& was = prism.profile.faces;
  const auto& is = stocked.profile.faces;
  ASSERT_EQ(was.size(), is.size());
  for (std::size_t i = 0; i < was.size(); ++i) {
    ASSERT_EQ(was[i].role, is[i].role);
    const bool rounded = was[i].role == FaceRole::land && was[i].kind == FaceKind::arc;
    hold_to(was[i], is[i], rounded ? settings.stock_mm : stock_on(was[i].role, settings), worst);
    worst.open_mm = std::max(worst.open_mm, distance(is[i].end(), is[(i + 1) % is.size()].start()));
  }
  EXPECT_GT(area_mm2(stocked.profile), area_mm2(prism.profile)) << prism.mark;
  auto grown = polygon_of(stocked.profile, 1e-3);
  grown.push_back(grown.front());
  for (const SectionPoint p : polygon_of(prism.profile, 0.1)) {
    const bool held = lies_within(grown, p) || foot_on(grown, p).away_mm < 2e-3;
    EXPECT_TRUE(held) << prism.mark << " at " << p.r << ", " << p.z << " by " << foot_on(grown, p).away_mm;
  }
}

std::vector<LensValues> every_kind_of_lens() {
  LensValues flat = starting_values("6", Work::belt, 24);
  flat.section.inner_face = InnerFace::flat;
  LensValues rounded = fourth_order_bullseye(Faces::arc);
  rounded.section.land_b.shape = LandShape::radius;
  rounded.section.upper.power = Power::hollow_exit;
  return {fourth_order_bullseye(Faces::true_curve),
          fourth_order_bullseye(Faces::arc),
          sixth_order_belt(Faces::true_curve),
          first_order_unequal(Faces::true_curve),
          every_band_its_own_way(),
          aimed_at_the_horizon(fourth_order_bullseye(Faces::arc)),
          flat,
          rounded};
}

class StockOfAThickness : public ::testing::TestWithParam<std::tuple<double, StockFaces>> {};

TEST_P(StockOfAThickness, LiesAllOverEveryFaceThatCarriesItAndLeavesTheOthersInTheirLine) {
  const auto [mm, faces] = GetParam();
  const WorksSettings settings = stock_of(mm, faces);
  StockErrors worst;
  for (const LensValues& values : every_kind_of_lens()) {
    const LensPlan plan = plan_of(values);
    for (const PlannedPrism* prism : distinct_prisms(plan)) {
      const auto stocked = with_stock(*prism, settings);
      ASSERT_TRUE(stocked.ok()) << stocked.problem().text;
      hold_prism(*prism, *stocked, settings, worst);
    }
  }
  EXPECT_LT(worst.stocked_mm, 2e-5);
  EXPECT_LT(worst.kept_mm, 1e-8);
  EXPECT_LT(worst.open_mm, 1e-10);
  RecordProperty("stocked_mm", std::to_string(worst.stocked_mm));
}

INSTANTIATE_TEST_SUITE_P(Of, StockOfAThickness,
                         ::testing::Combine(::testing::Values(0.1, 0.3, 1.0),
                                            ::testing::Values(StockFaces::optical, StockFaces::all)));

TEST(StockOfRandomLenses, IsRightOrRefusedWithASentence) {
  StockErrors worst;
  int made = 0;
  int refused = 0;
  for (unsigned seed = 1; seed <= 9; ++seed) {
    Lot lot(seed);
    const auto plan = plan_lens(random_lens(lot));
    const WorksSettings settings = stock_of(lot.between(0.05, 1.5), lot.any<StockFaces>());
    if (!plan) continue;
    for (const PlannedPrism* prism : distinct_prisms(*plan)) {
      const auto stocked = with_stock(*prism, settings);
      if (!stocked) {
        ++refused;
        EXPECT_NE(stocked.problem().text.find(prism->mark), std::string::npos);
        EXPECT_EQ(stocked.problem().code.rfind("stock.", 0), 0u) << stocked.problem().code;
        continue;
      }
      ++made;
      SCOPED_TRACE(seed);
      hold_prism(*prism, *stocked, settings, worst);
    }
  }
  EXPECT_GT(made, 30);
  EXPECT_LT(refused, made / 50);
  EXPECT_LT(worst.stocked_mm, 1e-4);
  EXPECT_LT(worst.kept_mm, 1e-7);
  EXPECT_LT(worst.open_mm, 1e-9);
}

/// A triangle with straight faces, all but for its role names.
PlannedPrism triangle() {
  PlannedPrism prism;
  prism.mark = "P01-U01";
  prism.turning = TurningAxis::lens;
  const SectionPoint a{210, 100};
  const SectionPoint b{190, 118};
  const SectionPoint c{214, 131};
  prism.profile = {{straight_face(FaceRole::exit, a, c), straight_face(FaceRole::reflecting, c, b),
                    straight_face(FaceRole::entry, b, a)}};
  return prism;
}

TEST(StockOfATriangle, AddsItsGirthAndTheMitresOfItsCorners) {
  // Derived: A + girth d + d^2 sum of 1 / tan(half of each corner).
  const PlannedPrism prism = triangle();
  const auto stocked = with_stock(prism, stock_of(0.4));
  ASSERT_TRUE(stocked.ok());
  double expected = area_mm2(prism.profile);
  const auto& faces = prism.profile.faces;
  for (std::size_t i = 0; i < 3; ++i) {
    const SectionOffset out = faces[i].end() - faces[i].start();
    const SectionOffset back = faces[(i + 2) % 3].start() - faces[(i + 2) % 3].end();
    expected += 0.4 * out.length();
    expected += 0.4 * 0.4 / std::tan(0.5 * std::acos(dot(out, back) / (out.length() * back.length())));
  }
  EXPECT_NEAR(area_mm2(stocked->profile), expected, 1e-9);
}

TEST(StockOnAllFaces, MovesEndsAndLevelJointsToo) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const PlannedPrism& half = *plan.find("P01-U01");
  const auto optical = with_stock(half, stock_of(0.3));
  const auto all = with_stock(half, stock_of(0.3, StockFaces::all));
  ASSERT_TRUE(optical.ok() && all.ok());
  EXPECT_EQ(optical->trim.set_back_mm, half.trim.set_back_mm);
  EXPECT_DOUBLE_EQ(all->trim.set_back_mm, half.trim.set_back_mm - 0.3);
  EXPECT_DOUBLE_EQ(all->trim.half_gap_mm, half.trim.half_gap_mm - 0.3);
  EXPECT_NE(all->shape_key, optical->shape_key);
}

TEST(NoStock, LeavesThePrismAsItIs) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::true_curve));
  const auto stocked = with_stock(plan.prisms.front(), stock_of(0));
  ASSERT_TRUE(stocked.ok());
  EXPECT_EQ(stocked->shape_key, plan.prisms.front().shape_key);
}

TEST(StockThatCannotBePutOn, IsRefusedWithMarkFaceAndAdvice) {
  PlannedPrism hollow = triangle();
  const SectionPoint b = hollow.profile.faces[2].start();
  const SectionPoint a = hollow.profile.faces[2].end();
  // A hollow entry of 14 mm radius: its centre lies out of the glass.
  const SectionPoint middle = between(a, b, 0.5);
  const double half = distance(a, b) / 2;
  const auto out = SectionDirection::along(a - b).quarter_turn().reversed();
  hollow.profile.faces[2] =
      arc_face(FaceRole::entry, b, a, middle + std::sqrt(14.0 * 14 - half * half) * out, 14);
  const auto refused = with_stock(hollow, stock_of(13.95));
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "stock.hollow");
  EXPECT_NE(refused.problem().text.find("P01-U01"), std::string::npos);
  EXPECT_NE(refused.problem().text.find("entry"), std::string::npos);
  EXPECT_NE(refused.problem().text.find("smaller"), std::string::npos);

  PlannedPrism near_axis = triangle();
  near_axis.turning = TurningAxis::panel;
  for (Face& face : near_axis.profile.faces) {
    for (SectionPoint& p : face.points) p.z -= 99.8;
  }
  const auto past = with_stock(near_axis, stock_of(0.5));
  ASSERT_FALSE(past.ok());
  EXPECT_EQ(past.problem().code, "stock.axis");
}

}  // namespace
}  // namespace prismwright
