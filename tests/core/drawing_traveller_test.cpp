#include "core/drawing/traveller.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/text_box.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

std::size_t times(const Sheet& sheet, const std::string& words) {
  return static_cast<std::size_t>(
      std::ranges::count_if(sheet.texts, [&](const DrawnText& text) { return text.words == words; }));
}

/// A piece as its inspection has it.
TravellerPiece piece_of(const PlannedPrism& prism) {
  TravellerPiece piece;
  piece.name = prism.zone;
  piece.words = std::string(name_of(prism.kind)) + ", 31.4 mm thick, 412 g";
  piece.profile = prism.profile;
  piece.corners = lettered_corners(prism.profile);
  piece.features = features_of(prism, {});
  return piece;
}

Traveller traveller_of_all(const LensPlan& plan, std::size_t castings) {
  Traveller traveller;
  traveller.title = "Gull Rock, a title that is long enough to be cut where it meets the cells beside it";
  traveller.date = "2026-11-26";
  for (const PlannedPrism* prism : distinct_prisms(plan)) traveller.pieces.push_back(piece_of(*prism));
  for (std::size_t i = 0; i < castings; ++i) {
    TravellerCasting casting;
    casting.piece = i % traveller.pieces.size();
    casting.mark = "P01-" + traveller.pieces[casting.piece].name;
    casting.serial = static_cast<long long>(100000 + i);
    casting.reached[Stage::mastered] = {"2026-10-01", "print room", ""};
    casting.reached[Stage::cast] = {"2026-10-30", "Ada and all who were there that day",
                                    "one bubble near the foot, outside the beam"};
    casting.record = {"2026-10-30 no. 100000 cast, load 3, resin, lot A-7",
                      "2026-11-02 width.A-B 31.42, bench 2"};
    traveller.castings.push_back(casting);
  }
  return traveller;
}

Traveller with_only(Traveller all, std::size_t piece) {
  all.castings = {all.castings[piece]};
  return all;
}

class TravellerOfALens : public testing::TestWithParam<Paper> {};

TEST_P(TravellerOfALens, KeepsEveryTextOffEveryOtherForEveryKindOfPrism) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::true_curve), sixth_order_belt(Faces::arc),
                                   first_order_unequal(Faces::true_curve)}) {
    const auto plan = plan_lens(values);
    ASSERT_TRUE(plan.ok());
    const Traveller all = traveller_of_all(*plan, distinct_prisms(*plan).size());
    for (std::size_t piece = 0; piece < all.pieces.size(); ++piece) {
      SCOPED_TRACE(all.pieces[piece].name);
      const auto drawing = traveller_sheets(with_only(all, piece), GetParam());
      ASSERT_TRUE(drawing.ok());
      ASSERT_EQ(drawing->sheets.size(), 1u);
      const Sheet& sheet = drawing->sheets[0];
      expect_texts_apart(sheet);
      expect_strokes_on_paper(sheet);
      EXPECT_EQ(times(sheet, all.castings[piece].mark), 1u);
      // Every letter of a corner finds a place; the widths do where sides are long enough on paper.
      for (const SectionCorner& corner : all.pieces[piece].corners) EXPECT_GE(times(sheet, corner.letter), 1u);
      for (const Stage stage : traveller_stages()) EXPECT_EQ(times(sheet, std::string(name_of(stage))), 1u);
    }
  }
}

TEST_P(TravellerOfALens, OfATrayHasARowForEveryPrismOnAsManySheetsAsItTakes) {
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok());
  for (const std::size_t castings : {std::size_t{2}, std::size_t{24}, std::size_t{130}}) {
    const Traveller tray = traveller_of_all(*plan, castings);
    const auto drawing = traveller_sheets(tray, GetParam());
    ASSERT_TRUE(drawing.ok());
    std::map<std::string, int> rows;
    for (const Sheet& sheet : drawing->sheets) {
      expect_texts_apart(sheet);
      expect_strokes_on_paper(sheet);
      for (const DrawnText& text : sheet.texts) ++rows[text.words];
    }
    for (const TravellerCasting& casting : tray.castings) EXPECT_EQ(rows[std::to_string(casting.serial)], 1);
  }
}

INSTANTIATE_TEST_SUITE_P(Papers, TravellerOfALens, testing::Values(Paper::a5, Paper::a4, Paper::letter),
                         [](const auto& tested) { return std::string(name_of(tested.param)); });

TEST(Traveller, FillsTheBoxesOfStagesThatWereReachedAndLeavesTheOthersBlank) {
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok());
  const auto drawing = traveller_sheets(with_only(traveller_of_all(*plan, 1), 0), Paper::a5);
  ASSERT_TRUE(drawing.ok());
  EXPECT_EQ(times(drawing->sheets[0], "2026-10-01"), 1u);
  EXPECT_EQ(times(drawing->sheets[0], "print room"), 1u);
  EXPECT_EQ(times(drawing->sheets[0], "2026-10-30"), 1u);
  EXPECT_EQ(times(drawing->sheets[0], "2026-11-02 width.A-B 31.42, bench 2"), 1u);
}

TEST(Traveller, OfATrayOfOnePieceShowsItsSectionWithWhatToMeasure) {
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok());
  Traveller tray = traveller_of_all(*plan, 12);
  tray.pieces.resize(1);
  for (TravellerCasting& casting : tray.castings) casting.piece = 0;
  const auto drawing = traveller_sheets(tray, Paper::a4);
  ASSERT_TRUE(drawing.ok());
  EXPECT_EQ(times(drawing->sheets[0], tray.pieces[0].features[0].key), 1u);
  EXPECT_EQ(times(drawing->sheets[0], "Tray of 12"), 1u);
}

TEST(Traveller, RefusesNoPrismAndOneWithoutADrawing) {
  EXPECT_FALSE(traveller_sheets({}, Paper::a4).ok());
  Traveller traveller;
  traveller.castings = {{"P01-C", 1, 0, {}, {}}};
  const auto refused = traveller_sheets(traveller, Paper::a4);
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, testing::HasSubstr("P01-C"));
}

}  // namespace
}  // namespace prismwright
