#include "core/drawing/section_sheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/drawing/section_images.h"
#include "core/drawing/text_box.h"
#include "core/lens/quantities.h"
#include "core/lens/whole_rings.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

Section solved(const LensValues& values) {
  auto section = solve_section(values.section_input());
  EXPECT_TRUE(section.ok()) << section.problem().text;
  return section.ok() ? *section : Section{};
}

SectionSheetSettings said(std::optional<Paper> paper, bool inches = false) {
  SectionSheetSettings settings;
  settings.title = "Gull Rock, a title that is long enough to be cut where it meets the cells beside it";
  settings.order = "fourth order";
  settings.material = "acrylic";
  settings.date = "2026-03-01";
  settings.revision = "second, after the survey of the seats of the old lens";
  settings.paper = paper;
  settings.inches = inches;
  return settings;
}

/// Every text inside the border, none on another's ground.
void expect_texts_apart(const Drawing& drawing) {
  for (std::size_t page = 0; page < drawing.sheets.size(); ++page) {
    const Sheet& sheet = drawing.sheets[page];
    const PaperBox border = {{10, 10}, {sheet.size.width_mm() - 10, sheet.size.height_mm() - 10}};
    std::vector<PaperBox> boxes;
    for (const DrawnText& text : sheet.texts) {
      boxes.push_back(box_of(text));
      EXPECT_TRUE(holds(border, boxes.back())) << "sheet " << page + 1 << ": " << text.words;
      EXPECT_EQ(text.words, clean_words(text.words));
    }
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        EXPECT_FALSE(overlap(boxes[i], boxes[k]))
            << "sheet " << page + 1 << ": " << sheet.texts[i].words << " on " << sheet.texts[k].words;
      }
    }
  }
}

std::size_t times(const Sheet& sheet, const std::string& words) {
  return static_cast<std::size_t>(
      std::ranges::count_if(sheet.texts, [&](const DrawnText& text) { return text.words == words; }));
}

struct Case {
  const char* order;
  Work work;
  Faces faces;
  std::optional<Paper> paper;
  bool inches;
};

class SectionSheets : public ::testing::TestWithParam<Case> {};

TEST_P(SectionSheets, KeepEveryTextOffEveryOtherAndOffTheBorder) {
  LensValues values = starting_values(GetParam().order, GetParam().work, 8);
  values.section.faces = GetParam().faces;
  const Section section = solved(values);
  const auto drawing = section_sheet(section, said(GetParam().paper, GetParam().inches));
  ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
  expect_texts_apart(*drawing);
  ASSERT_GE(drawing->sheets.size(), 2u);
  for (const SectionImage& image : images_of(section))
    EXPECT_EQ(times(drawing->sheets[0], image.mark), 1u) << image.mark;
  for (const Zone& zone : section.zones) EXPECT_EQ(times(drawing->sheets[1], zone.mark), 1u) << zone.mark;
  for (const char* words : {"focus", "focal plane", "lens axis", "76.500\u00B0", "28.500\u00B0"}) {
    EXPECT_EQ(times(drawing->sheets[0], words), 1u) << words;
  }
}

INSTANTIATE_TEST_SUITE_P(OfEveryKind, SectionSheets,
                         ::testing::Values(Case{"1", Work::bullseye, Faces::arc, Paper::a4, false},
                                           Case{"1", Work::bullseye, Faces::true_curve, {}, false},
                                           Case{"hyper-radial", Work::belt, Faces::arc, Paper::a3, true},
                                           Case{"3", Work::bullseye, Faces::true_curve, Paper::letter, true},
                                           Case{"4", Work::bullseye, Faces::true_curve, Paper::a4, false},
                                           Case{"4", Work::bullseye, Faces::arc, Paper::a3, false},
                                           Case{"6", Work::belt, Faces::true_curve, Paper::a4, false},
                                           Case{"6", Work::belt, Faces::true_curve, Paper::a3, true}));

TEST(SectionSheet, KeepsItsTextsApartWithBandsOfTheirOwnFocusAndAim) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.section.upper.focus_z_mm = 9;
  values.section.lower.focus_z_mm = -3;
  values.section.upper.aim_deg = 0.4;
  values.section.upper_rib_mm = 8;
  const Section section = solved(values);
  const auto drawing = section_sheet(section, said({}));
  ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
  expect_texts_apart(*drawing);
}

/// Marks of the prisms without their panels.
std::set<std::string> pieces_of(const LensPlan& plan) {
  std::set<std::string> pieces;
  for (const PlannedPrism& prism : plan.prisms) pieces.insert(prism.mark.substr(prism.mark.find('-') + 1));
  return pieces;
}

TEST(SectionImages, AreNamedAsTheMarksOfThePrismsEnd) {
  std::size_t whole = 0;
  for (const LensValues& values : {fourth_order_bullseye(Faces::true_curve), sixth_order_belt(Faces::arc),
                                   starting_values("1", Work::bullseye, 16)}) {
    const auto plan = plan_lens(values);
    ASSERT_TRUE(plan.ok()) << plan.problem().text;
    std::set<std::string> named;
    for (const SectionImage& image : images_of(plan->section, whole_rings(*plan))) named.insert(image.mark);
    EXPECT_EQ(named, pieces_of(*plan));
    whole += whole_rings(*plan).size();
  }
  EXPECT_GT(whole, 0u) << "rings that clear the sides of the panel are among them";
}

TEST(SectionSheet, NamesAWholeRingOnceAndHalvesByTheirLetters) {
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  SectionSheetSettings settings = said(Paper::a4);
  settings.whole_rings = whole_rings(*plan);
  const auto drawing = section_sheet(plan->section, settings);
  ASSERT_TRUE(drawing.ok());
  for (const SectionImage& image : images_of(plan->section, settings.whole_rings)) {
    if (image.zone->kind != ZoneKind::ring) continue;
    const bool is_whole = settings.whole_rings.contains(image.zone->mark);
    EXPECT_EQ(times(drawing->sheets[0], image.mark), is_whole ? 2u : 1u) << image.mark;
    EXPECT_EQ(times(drawing->sheets[0], image.zone->mark), is_whole ? 2u : 0u) << image.zone->mark;
  }
}

TEST(SectionSheet, InInchesSaysNoLengthInMillimetres) {
  for (const double tolerance : {kFinestArcTolerance_mm, kArcTolerance_mm}) {
    SectionSheetSettings settings = said(Paper::a4, true);
    settings.tolerance_mm = tolerance;
    const auto drawing = section_sheet(solved(fourth_order_bullseye(Faces::true_curve)), settings);
    ASSERT_TRUE(drawing.ok());
    expect_texts_apart(*drawing);
    for (const Sheet& sheet : drawing->sheets) {
      for (const DrawnText& text : sheet.texts)
        EXPECT_EQ(text.words.find(" mm"), std::string::npos) << text.words;
    }
  }
}

TEST(TitleBlock, CarriesLongWordsToTheirLastLetter) {
  const std::string title = "Gull Rock and the Outer Skerries, replica of the upper lens, the second of three";
  const std::string unbroken(70, 'W');
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
    for (const std::string& words : {title, title + ", " + title + ", " + title, unbroken}) {
      SectionSheetSettings settings = said(paper);
      settings.title = words;
      settings.material = "poly(methyl methacrylate), cast, tinted sea green, from the second delivery";
      settings.revision = title;
      const auto drawing = section_sheet(solved(fourth_order_bullseye(Faces::arc)), settings);
      ASSERT_TRUE(drawing.ok());
      expect_texts_apart(*drawing);
      std::string foot;
      for (const DrawnText& text : drawing->sheets.front().texts) {
        if (text.place.y < 36) foot += text.words;
        EXPECT_FALSE(text.words.ends_with("...")) << text.words;
      }
      std::erase(foot, ' ');
      for (std::string whole : {words, settings.material}) {
        std::erase(whole, ' ');
        EXPECT_NE(foot.find(whole), std::string::npos) << whole << " in " << foot;
      }
    }
  }
}

TEST(TitleBlock, CutsWithThreeDotsOnlyWhatTheSmallestLettersDoNotHold) {
  SectionSheetSettings settings = said(Paper::a4);
  for (int i = 0; i < 6; ++i) settings.title += settings.title;
  const auto drawing = section_sheet(solved(fourth_order_bullseye(Faces::arc)), settings);
  ASSERT_TRUE(drawing.ok());
  expect_texts_apart(*drawing);
  EXPECT_EQ(std::ranges::count_if(drawing->sheets.front().texts,
                                  [](const DrawnText& text) { return text.words.ends_with("..."); }),
            1);
}

TEST(SectionImages, LimitsOfALowerImageAreThoseOfItsGlass) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    LensValues values = starting_values("4", work, 8);
    values.section.refracting.aim_deg = 1.5;
    const Section section = solved(values);
    for (const SectionImage& image : images_of(section)) {
      if (image.zone->kind != ZoneKind::ring) continue;
      // A focal ray of the limiting elevations meets the inner face at its ends.
      const Face* inner = image.profile.find(FaceRole::inner);
      ASSERT_NE(inner, nullptr);
      const double a = degrees(std::atan2(inner->start().z, inner->start().r));
      const double b = degrees(std::atan2(inner->end().z, inner->end().r));
      EXPECT_NEAR(std::min(a, b), image.from_deg, 1e-6) << image.mark;
      EXPECT_NEAR(std::max(a, b), image.to_deg, 1e-6) << image.mark;
    }
  }
}

TEST(SectionSheet, NamesEveryFewZonesWhereThereIsNoRoomForAll) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.section.reflecting_chord_mm = 6;
  values.section.ring_growth_mm = 1.5;
  values.section.land_mm = 0.1;
  values.section.gap_mm = 0.1;
  const Section section = solved(values);
  ASSERT_GT(section.zones.size(), 90u);
  const auto drawing = section_sheet(section, said(Paper::a4));
  ASSERT_TRUE(drawing.ok());
  expect_texts_apart(*drawing);
  EXPECT_EQ(times(drawing->sheets[0], "zone, limits in degrees"), 0u);
}

TEST(SectionSheet, DrawsAtTheScaleItStates) {
  const Section section = solved(starting_values("4", Work::bullseye, 8));
  const auto drawing = section_sheet(section, said(Paper::a4));
  ASSERT_TRUE(drawing.ok());
  ASSERT_EQ(times(drawing->sheets[0], "1:5"), 1u);
  // 76.5 deg to -49.5 deg of a fourth-order lens, by the profiles themselves.
  double low = 0, high = 0;
  for (const Zone& zone : section.zones) {
    for (const SectionPoint p : polygon_of(zone.profile, 0.01)) {
      low = std::min(low, p.z);
      high = std::max(high, p.z);
    }
  }
  double least = 1e9, most = -1e9;
  for (const Stroke& stroke : drawing->sheets[0].strokes) {
    if (stroke.line != LineClass::outline) continue;
    for (const PaperStep& step : stroke.steps) {
      least = std::min(least, step.to.y);
      most = std::max(most, step.to.y);
    }
  }
  EXPECT_NEAR(most - least, (high - low) / 5, 1e-3);
}

TEST(SectionSheet, TakesTheSmallestPaperThatShowsTheSectionWell) {
  const auto paper_of = [](const char* order) {
    const auto drawing = section_sheet(solved(starting_values(order, Work::bullseye, 8)), said({}));
    return drawing.ok() ? drawing->sheets[0].size.paper : Paper::letter;
  };
  EXPECT_EQ(paper_of("4"), Paper::a4);
  EXPECT_EQ(paper_of("1"), Paper::a3);
}

TEST(SectionSheet, RefusesAToleranceThatArcsCannotKeep) {
  const Section section = solved(starting_values("4", Work::bullseye, 8));
  for (const double tolerance : {0.0, -1.0, 0.00005, 1.5, std::nan("")}) {
    SectionSheetSettings settings = said({});
    settings.tolerance_mm = tolerance;
    const auto drawing = section_sheet(section, settings);
    ASSERT_FALSE(drawing.ok()) << tolerance;
    EXPECT_EQ(drawing.problem().code, "tolerance");
  }
}

TEST(Words, ThatAreBrokenAreMadeSoundBeforeTheyAreDrawn) {
  EXPECT_EQ(clean_words("a\nb\tc"), "a b c");
  EXPECT_EQ(clean_words("\xC3\xA9"), "\xC3\xA9");
  EXPECT_EQ(clean_words("x\xC3"), "x?");
  EXPECT_EQ(clean_words("\xED\xA0\x80"), "???");
  EXPECT_EQ(clean_words("\xF5z"), "?z");
}

TEST(Words, ThatAreTooLongAreCutWithThreeDots) {
  const std::string cut = shortened("a very long revision", 3, 20);
  EXPECT_TRUE(cut.ends_with("..."));
  EXPECT_LE(text_width_mm(cut, 3), 20);
  EXPECT_EQ(shortened("short", 3, 20), "short");
}

}  // namespace
}  // namespace prismwright
