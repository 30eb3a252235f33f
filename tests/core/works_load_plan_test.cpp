#include "core/works/load_plan.h"

#include <gmock/gmock.h>

#include <cmath>
#include <map>

#include "tests/support/random_lens.h"

namespace prismwright {
namespace {

WorksSettings vessel(double diameter_mm, double height_mm, double spacing_mm) {
  WorksSettings works;
  works.vessel_diameter_mm = diameter_mm;
  works.vessel_height_mm = height_mm;
  works.load_spacing_mm = spacing_mm;
  return works;
}

LoadPiece piece(const char* name, int count, MouldBox mould, double thickest_mm, int moulds = 1) {
  LoadPiece made;
  made.name = name;
  made.count = count;
  made.mould = mould;
  made.thickest_mm = thickest_mm;
  made.casting_mm3 = mould.length_mm * mould.depth_mm * mould.height_mm / 4;
  made.moulds = moulds;
  return made;
}

LoadPlan planned(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  auto plan = plan_loads(pieces, works);
  EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problem().text);
  return plan.ok() ? *plan : LoadPlan{};
}

/// Room between two spans; negative where they share some.
double between_spans(double a, double half_a, double b, double half_b) {
  return std::abs(a - b) - half_a - half_b;
}

/// The box's edges are those of its mould, in some order.
bool is_its_mould(const LoadPlace& place, const LoadPiece& piece) {
  std::array<double, 3> has = {place.wide_mm, place.long_mm, place.high_mm};
  std::array<double, 3> wants = {piece.mould.length_mm, piece.mould.depth_mm, piece.mould.height_mm};
  std::ranges::sort(has);
  std::ranges::sort(wants);
  return has == wants;
}

/// Every box inside the vessel, none nearer to another than the spacing, whatever shelf they are said to be on:
/// an independent look at what was planned.
void expect_room(const PlannedLoad& load, const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  constexpr double kSlack = 1e-6;
  const double s = works.load_spacing_mm;
  for (std::size_t i = 0; i < load.places.size(); ++i) {
    const LoadPlace& a = load.places[i];
    EXPECT_TRUE(is_its_mould(a, pieces[a.piece]));
    const double corner = std::hypot(std::abs(a.x_mm) + a.wide_mm / 2, std::abs(a.y_mm) + a.long_mm / 2);
    EXPECT_LE(corner, works.vessel_diameter_mm / 2 - s + kSlack);
    EXPECT_GE(a.z_mm, 0);
    EXPECT_LE(a.z_mm + a.high_mm, works.vessel_height_mm + kSlack);
    for (std::size_t k = 0; k < i; ++k) {
      const LoadPlace& b = load.places[k];
      const double apart = std::max(
          {between_spans(a.x_mm, a.wide_mm / 2, b.x_mm, b.wide_mm / 2),
           between_spans(a.y_mm, a.long_mm / 2, b.y_mm, b.long_mm / 2),
           between_spans(a.z_mm + a.high_mm / 2, a.high_mm / 2, b.z_mm + b.high_mm / 2, b.high_mm / 2)});
      EXPECT_GE(apart, s - kSlack) << i << " and " << k;
    }
  }
}

void expect_sound(const LoadPlan& plan, const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  std::map<std::size_t, int> cast;
  for (const PlannedLoad& load : plan.loads) {
    ASSERT_FALSE(load.places.empty());
    expect_room(load, pieces, works);
    EXPECT_LE(load.thickest_mm, load.thinnest_mm * works.thickness_ratio * (1 + 1e-12));
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      EXPECT_LE(load.count_of(i), pieces[i].moulds);
      cast[i] += load.count_of(i);
    }
  }
  for (const UnfitPiece& unfit : plan.unfit) cast[unfit.piece] += pieces[unfit.piece].count;
  for (std::size_t i = 0; i < pieces.size(); ++i) EXPECT_EQ(cast[i], pieces[i].count) << pieces[i].name;
  EXPECT_GE(static_cast<int>(plan.loads.size()), plan.least_loads);
}

TEST(LoadPlan, StacksFourCubesOnEachOfThreeShelvesWhereJustThatFits) {
  // Two by two cubes of 100 with 10 between them: 210 across, diagonal 296.98, and 10 to the wall all round.
  // Three shelves: 3 x 100 + 2 x 10.
  const auto works = vessel(317, 320, 10);
  const std::vector pieces = {piece("U01", 12, {100, 100, 100}, 20, 12)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  EXPECT_EQ(plan.loads.size(), 1U);
  EXPECT_THAT(plan.loads.front().shelf_foot_mm, testing::ElementsAre(0, 110, 220));
  EXPECT_NEAR(plan.loads.front().filled_share, 12e6 / (std::acos(-1.0) * 317 * 317 / 4 * 320), 1e-12);
}

TEST(LoadPlan, NeedsAnotherLoadWhereTheVesselIsAHairTooNarrowForFour) {
  const auto works = vessel(316.9, 100, 10);
  const std::vector pieces = {piece("U01", 4, {100, 100, 100}, 20, 4)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  EXPECT_EQ(plan.loads.size(), 2U);
}

TEST(LoadPlan, FillsAMouldOnceInALoad) {
  const auto works = vessel(400, 400, 10);
  const std::vector pieces = {piece("R1a", 9, {60, 60, 60}, 20, 2), piece("R2a", 3, {60, 60, 60}, 20, 1)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  EXPECT_EQ(plan.loads.size(), 5U);
  EXPECT_EQ(plan.least_loads, 5);
}

TEST(LoadPlan, KeepsUnlikeThicknessesApart) {
  // 40 goes with 27 (1.48) but not with 26 (1.54); 26 goes with 18 (1.44).
  const auto works = vessel(400, 400, 10);
  const std::vector pieces = {piece("a", 1, {60, 60, 60}, 18), piece("b", 1, {60, 60, 60}, 40),
                              piece("c", 1, {60, 60, 60}, 26), piece("d", 1, {60, 60, 60}, 27)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  ASSERT_EQ(plan.loads.size(), 2U);
  EXPECT_EQ(plan.least_loads, 2);
  EXPECT_EQ(plan.loads[0].thickest_mm, 40);
  EXPECT_EQ(plan.loads[0].thinnest_mm, 27);
  EXPECT_EQ(plan.loads[1].thickest_mm, 26);
  EXPECT_EQ(plan.loads[1].thinnest_mm, 18);
}

TEST(LoadPlan, LaysALongMouldDownOrStandsItOnEndToMakeItFit) {
  const std::vector pieces = {piece("U09", 1, {350, 50, 60}, 20)};
  const LoadPlan low = planned(pieces, vessel(400, 100, 10));
  ASSERT_EQ(low.loads.size(), 1U);
  EXPECT_NE(low.loads[0].places[0].upward, Upward::length);
  const LoadPlan narrow = planned(pieces, vessel(120, 400, 10));
  ASSERT_EQ(narrow.loads.size(), 1U);
  EXPECT_EQ(narrow.loads[0].places[0].upward, Upward::length);
}

TEST(LoadPlan, KeepsAMouldUprightThatMustStand) {
  std::vector pieces = {piece("U09", 1, {350, 50, 60}, 20)};
  pieces[0].any_side_up = false;
  const LoadPlan plan = planned(pieces, vessel(120, 400, 10));
  EXPECT_TRUE(plan.loads.empty());
  ASSERT_EQ(plan.unfit.size(), 1U);
  EXPECT_THAT(plan.unfit[0].words, testing::HasSubstr("with its gate up its mould stands 60 mm high"));
  EXPECT_THAT(plan.unfit[0].words, testing::HasSubstr("not laid on its side"));
  EXPECT_EQ(plan.unfit[0].needs_height_mm, 60);
}

TEST(LoadPlan, TurnsAMouldAboutTheUprightRatherThanLayItOnItsSide) {
  // Beside the long one there is room for the other only when its long edge runs the same way.
  std::vector pieces = {piece("U01", 1, {300, 100, 200}, 20), piece("U02", 1, {290, 120, 210}, 20)};
  for (LoadPiece& one : pieces) one.any_side_up = false;
  const auto works = vessel(400, 220, 10);
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  ASSERT_EQ(plan.loads.size(), 1U);
  ASSERT_EQ(plan.loads[0].places.size(), 2U);
  for (const LoadPlace& place : plan.loads[0].places) {
    EXPECT_EQ(place.upward, Upward::height);
    EXPECT_EQ(place.high_mm, pieces[place.piece].mould.height_mm);
  }
}

TEST(LoadPlan, TellsWhichMouldsStandGateUpAndWhichAreAGuess) {
  std::vector pieces = {piece("U01", 1, {300, 100, 200}, 20), piece("U02", 0, {300, 100, 200}, 20)};
  EXPECT_THAT(way_up_note(pieces), testing::StartsWith("1 of 1 kinds of mould are not worked out"));
  pieces[0].any_side_up = false;
  EXPECT_THAT(way_up_note(pieces), testing::StartsWith("Every mould stands with its gate up"));
  pieces[0].count = 0;
  EXPECT_EQ(way_up_note(pieces), "");
}

TEST(LoadPlan, TellsWhatFitsInNoVesselAndWhatItWouldNeed) {
  // Lying with 300 x 40 level: diagonal 302.655, and twice the spacing.
  const auto works = vessel(200, 100, 10);
  const std::vector pieces = {piece("R5b", 3, {300, 40, 50}, 20, 3), piece("R1a", 1, {60, 60, 60}, 20)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  EXPECT_EQ(plan.castings, 1);
  ASSERT_EQ(plan.unfit.size(), 1U);
  EXPECT_EQ(plan.unfit[0].piece, 0U);
  EXPECT_NEAR(plan.unfit[0].needs_diameter_mm, std::hypot(300, 40) + 20, 1e-9);
  EXPECT_EQ(plan.unfit[0].needs_height_mm, 50);
  EXPECT_THAT(plan.unfit[0].words, testing::HasSubstr("R5b"));
  EXPECT_THAT(plan.unfit[0].words, testing::HasSubstr("323 mm inside and 50 mm height"));
  auto wider = works;
  wider.vessel_diameter_mm = plan.unfit[0].needs_diameter_mm;
  wider.vessel_height_mm = 100;
  EXPECT_TRUE(planned(pieces, wider).unfit.empty());
}

TEST(LoadPlan, WeighsOutResinWithItsHeadInitiatorAndTint) {
  auto works = vessel(400, 400, 10);
  works.resin_density_g_cm3 = 0.95;
  works.resin_head_percent = 20;
  works.initiator_percent = 0.5;
  works.tint_percent = 0.1;
  const std::vector pieces = {piece("R1a", 2, {100, 50, 40}, 20, 2)};
  // Two castings of 50 cm3: 100 x 1.2 x 0.95 = 114 g of resin.
  const LoadPlan plan = planned(pieces, works);
  ASSERT_EQ(plan.loads.size(), 1U);
  for (const LoadMasses& masses : {plan.loads[0].masses, plan.masses}) {
    EXPECT_NEAR(masses.castings_mm3, 100000, 1e-9);
    EXPECT_NEAR(masses.resin_g, 114, 1e-9);
    EXPECT_NEAR(masses.initiator_g, 0.57, 1e-9);
    EXPECT_NEAR(masses.tint_g, 0.114, 1e-9);
  }
}

TEST(LoadPlan, PlansNothingFromNothing) {
  const LoadPlan plan = planned({}, WorksSettings{});
  EXPECT_TRUE(plan.loads.empty());
  EXPECT_EQ(plan.least_loads, 0);
  EXPECT_EQ(plan.castings, 0);
}

TEST(LoadPlan, RefusesPiecesThatCannotBe) {
  const auto code_of = [](LoadPiece bad) {
    const auto plan = plan_loads({bad}, WorksSettings{});
    return plan.ok() ? std::string("planned") : plan.problem().code;
  };
  LoadPiece good = piece("R1a", 1, {60, 60, 60}, 20);
  EXPECT_EQ(code_of(good), "planned");
  LoadPiece bad = good;
  bad.count = -1;
  EXPECT_EQ(code_of(bad), "load.piece");
  bad = good;
  bad.moulds = 0;
  EXPECT_EQ(code_of(bad), "load.piece");
  bad = good;
  bad.mould.depth_mm = 0;
  EXPECT_EQ(code_of(bad), "load.piece");
  bad = good;
  bad.thickest_mm = std::nan("");
  EXPECT_EQ(code_of(bad), "load.piece");
}

std::vector<LoadPiece> drawn_pieces(Lot& lot) {
  std::vector<LoadPiece> pieces;
  const int kinds = lot.whole(1, 25);
  for (int i = 0; i < kinds; ++i) {
    pieces.push_back(piece(("k" + std::to_string(i)).c_str(), lot.whole(0, 20),
                           {lot.between(20, 420), lot.between(15, 120), lot.between(15, 120)},
                           lot.between(4, 60), lot.whole(1, 4)));
    pieces.back().any_side_up = !lot.once_in(4);
  }
  return pieces;
}

TEST(LoadPlan, KeepsRoomThicknessAndMouldsWhateverIsToBeCast) {
  Lot lot(71);
  double loads = 0;
  double least = 0;
  for (int i = 0; i < 200; ++i) {
    auto works = vessel(lot.between(60, 700), lot.between(30, 700), lot.once_in(4) ? 0 : lot.between(0, 30));
    works.thickness_ratio = lot.once_in(5) ? 1 : lot.between(1, 4);
    const auto pieces = drawn_pieces(lot);
    const LoadPlan plan = planned(pieces, works);
    expect_sound(plan, pieces, works);
    loads += static_cast<double>(plan.loads.size());
    least += plan.least_loads;
  }
  RecordProperty("loads_on_bound", std::to_string(loads / least));
  EXPECT_LT(loads, 1.2 * least);
}

TEST(LoadPlan, FillsAVesselWellWhereMouldsAreMany) {
  // Small boxes with plenty of moulds and no spacing: by far the most of the round is covered.
  const auto works = vessel(400, 400, 0);
  const std::vector pieces = {piece("s", 2000, {50, 40, 40}, 20, 2000)};
  const LoadPlan plan = planned(pieces, works);
  expect_sound(plan, pieces, works);
  EXPECT_GT(plan.loads.front().filled_share, 0.8);
  EXPECT_LE(static_cast<int>(plan.loads.size()), plan.least_loads + 2);
}

}  // namespace
}  // namespace prismwright
