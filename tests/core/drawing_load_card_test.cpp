#include "core/drawing/load_card.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <algorithm>

#include "core/drawing/text_box.h"
#include "core/works/works_cautions.h"
#include "tests/support/random_lens.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

WorksSettings plated() {
  WorksSettings works;
  works.resin = "clear casting syrup";
  works.resin_batch = "2027-14";
  works.vessel_max_bar = 6;
  works.vessel_max_c = 120;
  works.cure_bar = 4;
  works.cure_c = 45;
  works.tint_percent = 0.1;
  works.tint_name = "ruby";
  return works;
}

std::vector<LoadPiece> some_pieces() {
  std::vector<LoadPiece> pieces;
  for (int i = 0; i < 6; ++i) {
    LoadPiece piece;
    piece.name = "U0" + std::to_string(i + 1);
    piece.count = 5;
    piece.mould = {180.0 + 15 * i, 60, 50.0 + 3 * i};
    piece.thickest_mm = 24 + i;
    piece.casting_mm3 = 90000;
    piece.moulds = 3;
    pieces.push_back(piece);
  }
  return pieces;
}

LoadPlan planned(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  const auto plan = plan_loads(pieces, works);
  EXPECT_TRUE(plan.ok());
  return *plan;
}

LoadCardWords said(Paper paper = Paper::a4) {
  return {"Gull Rock, a title that is long enough to be cut where it meets the cells beside it", "2027-03-01",
          paper};
}

std::string all_words(const Drawing& card) {
  std::string words;
  for (const Sheet& sheet : card.sheets)
    for (const DrawnText& text : sheet.texts) words += text.words + " ";
  return words;
}

std::size_t boxes_with(const Drawing& card, const std::string& name) {
  std::size_t count = 0;
  for (const Sheet& sheet : card.sheets)
    count += static_cast<std::size_t>(std::ranges::count_if(sheet.texts, [&](const DrawnText& text) {
      return text.words == name && text.anchor == Anchor::middle;
    }));
  return count;
}

TEST(LoadCard, SaysWhatToWeighOutTheStepsAndWhatToMind) {
  const auto works = plated();
  const auto pieces = some_pieces();
  const LoadPlan plan = planned(pieces, works);
  const Drawing card = load_card(plan, 0, pieces, works, said());
  const std::string words = all_words(card);
  const CurePlan cure = plan_cure(works, plan.loads[0].thickest_mm);
  for (const CureStep& step : cure.steps) EXPECT_THAT(words, HasSubstr(step.what));
  EXPECT_THAT(words, HasSubstr("4 bar over the air's, 45 C"));
  EXPECT_THAT(words, HasSubstr("clear casting syrup"));
  EXPECT_THAT(words, HasSubstr("2027-14"));
  EXPECT_THAT(words, HasSubstr("Tint, 0.1 % of the resin: ruby"));
  EXPECT_THAT(words, HasSubstr(fmt::format("{:.1f} g", plan.loads[0].masses.resin_g)));
  for (const char* blank : {"weighed", "lot", "by", "date and hour", "load no. in book"})
    EXPECT_THAT(words, HasSubstr(blank));
}

TEST(LoadCard, CarriesEveryCautionToItsLastWord) {
  const auto works = plated();
  const auto pieces = some_pieces();
  const Drawing card = load_card(planned(pieces, works), 0, pieces, works, said());
  std::string words = all_words(card);
  for (const Caution& caution : casting_cautions()) EXPECT_THAT(words, HasSubstr(std::string(caution.text)));
}

TEST(LoadCard, DrawsEveryMouldOfTheLoadOnItsShelf) {
  const auto works = plated();
  const auto pieces = some_pieces();
  const LoadPlan plan = planned(pieces, works);
  for (std::size_t load = 0; load < plan.loads.size(); ++load) {
    const Drawing card = load_card(plan, load, pieces, works, said());
    for (std::size_t i = 0; i < pieces.size(); ++i)
      EXPECT_EQ(boxes_with(card, pieces[i].name), static_cast<std::size_t>(plan.loads[load].count_of(i)));
  }
}

TEST(LoadCard, WithoutTheVesselsPlateGivesNoPressureAndNoTemperature) {
  auto works = plated();
  works.vessel_max_bar.reset();
  const auto pieces = some_pieces();
  const std::string words = all_words(load_card(planned(pieces, works), 0, pieces, works, said()));
  EXPECT_THAT(words, testing::Not(HasSubstr("4 bar")));
  EXPECT_THAT(words, testing::Not(HasSubstr("45 C")));
  EXPECT_THAT(words, testing::Not(HasSubstr("80 C")));
  EXPECT_THAT(words, HasSubstr("plate is not entered"));
}

TEST(LoadCard, KeepsTextsApartWhateverIsLoaded) {
  Lot lot(75);
  for (int i = 0; i < 25; ++i) {
    auto works = plated();
    works.vessel_diameter_mm = lot.between(150, 900);
    works.vessel_height_mm = lot.between(60, 1500);
    works.resin =
        lot.once_in(2) ? "a syrup whose maker gave it a name that is longer than any cell of a card" : "";
    std::vector<LoadPiece> pieces;
    const int kinds = lot.whole(1, 40);
    for (int k = 0; k < kinds; ++k) {
      LoadPiece piece;
      piece.name = (lot.once_in(3) ? "R12b-P07" : "U") + std::to_string(k);
      piece.count = lot.whole(1, 9);
      piece.mould = {lot.between(30, 300), lot.between(20, 90), lot.between(20, 90)};
      piece.thickest_mm = lot.between(10, 60);
      piece.casting_mm3 = lot.between(1e3, 3e6);
      piece.moulds = lot.whole(1, 9);
      pieces.push_back(piece);
    }
    const LoadPlan plan = planned(pieces, works);
    if (plan.loads.empty()) continue;
    const Paper papers[] = {Paper::a4, Paper::a3, Paper::letter};
    const auto load = static_cast<std::size_t>(lot.whole(0, static_cast<int>(plan.loads.size()) - 1));
    const Drawing card = load_card(plan, load, pieces, works, said(papers[lot.whole(0, 2)]));
    for (const Sheet& sheet : card.sheets) expect_texts_apart(sheet);
  }
}

}  // namespace
}  // namespace prismwright
