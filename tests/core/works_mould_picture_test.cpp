#include "core/works/mould_picture.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "core/drawing/text_box.h"

namespace prismwright {
namespace {

using testing::Contains;

/// A square plate of 40 mm whose upper half is hidden and whose lower half is steep.
struct Plate {
  DrawFacts draw;
  MouldPicture picture;

  Plate() {
    draw.undercuts.push_back({"exit", UndercutKind::hidden, 120.46, 3.21, -12, {}});
    draw.undercuts.push_back({"end clockwise", UndercutKind::steep, 40.1, 0, 0.123, {}});
    for (int i = 0; i < 2; ++i) {
      MouldView view;
      view.lines.low = {-20, -20};
      view.lines.high = {20, 20};
      view.lines.lines.push_back({{{-20, -20}, {20, -20}, {20, 20}, {-20, 20}, {-20, -20}}, true, true});
      view.patches.push_back({0, {{{-20, 0}, {20, 0}, {20, 20}, {-20, 20}}}, 800, {0, 10}});
      // Not seen from the other side.
      if (i == 0) view.patches.push_back({1, {{{-20, -20}, {20, -20}, {20, 0}, {-20, 0}}}, 800, {0, -10}});
      picture.views.push_back(view);
    }
  }
};

std::vector<std::string> words_of(const Sheet& sheet) {
  std::vector<std::string> words;
  for (const DrawnText& text : sheet.texts) words.push_back(text.words);
  return words;
}

std::size_t rising(const Sheet& sheet, bool up) {
  return static_cast<std::size_t>(std::ranges::count_if(sheet.strokes, [up](const Stroke& stroke) {
    if (stroke.line != LineClass::hatch || stroke.steps.size() != 1) return false;
    const PaperPoint to = stroke.steps[0].to;
    return ((to.x - stroke.start.x) * (to.y - stroke.start.y) > 0) == up;
  }));
}

TEST(MouldSheet, HatchesLettersAndLabelsEveryUndercutByAreaAndDepth) {
  const Plate plate;
  MouldSheetWords words;
  words.title = "Test lens";
  words.name = "U03";
  words.notes = {"It stands 120 mm high."};
  const Sheet sheet = mould_sheet(plate.draw, plate.picture, words);
  const auto texts = words_of(sheet);
  EXPECT_EQ(std::ranges::count(texts, "a"), 2) << "in both views";
  EXPECT_EQ(std::ranges::count(texts, "b"), 1);
  EXPECT_EQ(std::ranges::count(texts, "a: 120.5 mm2, 3.2 mm deep"), 2);
  EXPECT_THAT(texts, Contains("b: 40.1 mm2, draft 0.12 deg"));
  EXPECT_GT(rising(sheet, true), 10U) << "hidden";
  EXPECT_GT(rising(sheet, false), 10U) << "steep";
}

TEST(MouldSheet, KeepsWordsInsideThePaperAndOffEachOther) {
  const Plate plate;
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
    for (const bool inches : {false, true}) {
      MouldSheetWords words{"Test lens", "U03-P02", "2027-03-01", {"P01-U03", "P02-U03"}, {}, paper, inches};
      const Sheet sheet = mould_sheet(plate.draw, plate.picture, words);
      for (std::size_t i = 0; i < sheet.texts.size(); ++i) {
        const PaperBox box = box_of(sheet.texts[i]);
        EXPECT_GE(box.low.x, 5) << sheet.texts[i].words;
        EXPECT_LE(box.high.x, sheet.size.width_mm() - 5) << sheet.texts[i].words;
        for (std::size_t j = 0; j < i; ++j)
          EXPECT_FALSE(overlap(box, box_of(sheet.texts[j])))
              << sheet.texts[i].words << " on " << sheet.texts[j].words;
      }
      if (inches) {
        EXPECT_THAT(words_of(sheet), Contains("a: 0.187 in2, 0.126 in deep"));
      }
    }
  }
}

TEST(MouldSheet, ShowsTheViewsAloneAndLargerForAScreen) {
  const Plate plate;
  MouldSheetWords words;
  words.name = "U03";
  const auto share = [&](bool bare) {
    words.bare = bare;
    const Sheet sheet = mould_sheet(plate.draw, plate.picture, words);
    double left = 1e9, right = 0;
    for (const Stroke& stroke : sheet.strokes) {
      if (!stroke.tone || stroke.steps.size() < 3 || stroke.steps[0].turn != 0) continue;
      for (const PaperStep& step : stroke.steps) {
        left = std::min(left, step.to.x);
        right = std::max(right, step.to.x);
      }
    }
    const auto texts = words_of(sheet);
    EXPECT_THAT(texts, Contains("a: 120.5 mm2, 3.2 mm deep"));
    EXPECT_EQ(std::ranges::count(texts, "undercuts") > 0, !bare) << "column and title block";
    return (right - left) / sheet.size.width_mm();
  };
  EXPECT_GT(share(true), 1.3 * share(false));
}

TEST(MouldSheet, KeepsRoomForTheViewsHoweverManyUndercutsThereAre) {
  Plate plate;
  for (std::size_t i = 2; i < 40; ++i) {
    plate.draw.undercuts.push_back({"land", UndercutKind::steep, 1, 0, 0.1, {}});
    for (MouldView& view : plate.picture.views) {
      const double x = -20 + static_cast<double>(i);
      view.patches.push_back({i, {{{x, -1}, {x + 1, -1}, {x + 1, 1}, {x, 1}}}, 2, {x + 0.5, 0}});
    }
  }
  for (const bool bare : {false, true}) {
    MouldSheetWords words;
    words.bare = bare;
    const Sheet sheet = mould_sheet(plate.draw, plate.picture, words);
    for (const Stroke& stroke : sheet.strokes) {
      ASSERT_TRUE(std::isfinite(stroke.start.x) && std::isfinite(stroke.start.y));
      EXPECT_GE(stroke.start.x, 0);
      EXPECT_LE(stroke.start.x, sheet.size.width_mm());
      EXPECT_GE(stroke.start.y, 0);
      EXPECT_LE(stroke.start.y, sheet.size.height_mm());
    }
    EXPECT_THAT(words_of(sheet), Contains(testing::StartsWith("and 3")));
  }
}

TEST(MouldSheet, SaysWhereNothingIsUndercut) {
  Plate plate;
  plate.draw.undercuts.clear();
  for (MouldView& view : plate.picture.views) view.patches.clear();
  const Sheet sheet = mould_sheet(plate.draw, plate.picture, {"Test lens", "C", "", {}, {}});
  EXPECT_THAT(words_of(sheet), Contains("Nothing is undercut."));
  EXPECT_EQ(rising(sheet, true) + rising(sheet, false), 0U);
}

TEST(MouldPicture, LettersGoOnBehindZ) {
  EXPECT_EQ(undercut_letter(0), "a");
  EXPECT_EQ(undercut_letter(25), "z");
  EXPECT_EQ(undercut_letter(26), "a2");
  EXPECT_EQ(eye_words(unit(SpaceVector{1, -1, 1})), "the sea, the clockwise end and above");
}

}  // namespace
}  // namespace prismwright
