#include "core/drawing/prism_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <sstream>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/lengths.h"
#include "core/drawing/offset_table.h"
#include "core/works/inspection.h"
#include "core/works/section_corners.h"
#include "core/works/whole_face.h"
#include "tests/support/off_chord.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/rough_views.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

using testing::Contains;

HouseWords words_of(const LensPlan& plan, std::optional<Paper> paper, bool inches) {
  HouseWords words = house_words(plan.values, "2026-11-26", "A");
  words.title = "Gull Rock, a title that is long enough to be cut where it meets the cells beside it";
  words.paper = paper;
  words.inches = inches;
  return words;
}

Drawing sheets_of(const LensPlan& plan, const Master& kind, std::optional<Paper> paper, bool inches) {
  const PrismSolidFacts facts = rough_facts(plan.prisms[kind.prism], plan.values.material.density_g_cm3);
  const auto drawing = prism_sheet(plan, kind, facts, words_of(plan, paper, inches));
  EXPECT_TRUE(drawing.ok()) << (drawing.ok() ? "" : drawing.problem().text);
  return drawing.ok() ? *drawing : Drawing{};
}

Master named(const std::vector<Master>& kinds, const std::string& name) {
  const Master* found = find_master(kinds, name);
  if (!found) throw std::out_of_range(name);
  return *found;
}

std::vector<std::string> texts_of(const Drawing& drawing) {
  std::vector<std::string> texts;
  for (const Sheet& sheet : drawing.sheets) {
    for (const DrawnText& text : sheet.texts) texts.push_back(text.words);
  }
  return texts;
}

/// How often every word stands on all sheets, without the commas after it.
std::map<std::string, int> word_counts(const Drawing& drawing) {
  std::map<std::string, int> counts;
  for (const std::string& text : texts_of(drawing)) {
    std::istringstream rest(text);
    for (std::string word; rest >> word;) {
      if (word.back() == ',') word.pop_back();
      ++counts[word];
    }
  }
  return counts;
}

/// How often words stand in the pictures of a sheet, where they are set about their middle; tables are not.
int times_drawn(const Sheet& sheet, const std::string& words) {
  return static_cast<int>(std::ranges::count_if(sheet.texts, [&](const DrawnText& text) {
    return text.words == words && text.anchor == Anchor::middle;
  }));
}

/// Corners with their letters and faces with their names, in the picture of the first sheet.
void expect_named_section(const Sheet& sheet, const Profile& profile) {
  for (const SectionCorner& corner : lettered_corners(profile)) EXPECT_EQ(times_drawn(sheet, corner.letter), 1);
  std::map<std::string, int> names;
  for (const Face& face : profile.faces) {
    if (face.role != FaceRole::axis) ++names[prismwright::words_of(face.role)];
  }
  for (const auto& [name, count] : names) EXPECT_EQ(times_drawn(sheet, name), count) << name;
}

void expect_sound(const LensPlan& plan, const Master& kind, const Drawing& drawing) {
  ASSERT_FALSE(drawing.sheets.empty());
  for (const Sheet& sheet : drawing.sheets) {
    expect_texts_apart(sheet);
    expect_strokes_on_paper(sheet);
    expect_texts_off_scale_bars(sheet);
  }
  expect_named_section(drawing.sheets[0], plan.prisms[kind.prism].profile);
  auto counts = word_counts(drawing);
  for (const MasterUse& use : kind.uses) EXPECT_EQ(counts[use.mark], 1) << use.mark;
}

class SheetOfAPrism : public testing::TestWithParam<std::tuple<Paper, bool>> {};

TEST_P(SheetOfAPrism, KeepsEveryTextOffEveryOtherForEveryKindOfPrism) {
  const auto [paper, inches] = GetParam();
  for (const LensValues& values :
       {fourth_order_bullseye(Faces::true_curve), sixth_order_belt(Faces::true_curve),
        first_order_unequal(Faces::arc), every_band_its_own_way()}) {
    const LensPlan plan = plan_of(values);
    for (const Master& kind : masters_of(plan)) {
      SCOPED_TRACE(kind.name);
      expect_sound(plan, kind, sheets_of(plan, kind, paper, inches));
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Papers, SheetOfAPrism,
                         testing::Combine(testing::Values(Paper::a4, Paper::a3, Paper::letter),
                                          testing::Bool()),
                         [](const auto& tested) {
                           return std::string(name_of(std::get<0>(tested.param))) +
                                  (std::get<1>(tested.param) ? "Inches" : "Millimetres");
                         });

TEST(SheetsOfPrisms, OfLensesDrawnByLotKeepTheirTextsApart) {
  Lot lot(20261126);
  int lenses = 0;
  while (lenses < 12) {
    const auto plan = plan_lens(random_lens(lot));
    if (!plan) continue;
    ++lenses;
    const std::vector<Master> kinds = masters_of(*plan);
    for (int i = 0; i < 4; ++i) {
      const Master& kind = kinds[static_cast<std::size_t>(lot.whole(0, static_cast<int>(kinds.size()) - 1))];
      SCOPED_TRACE(fmt::format("lens {}, {}", lenses, kind.name));
      expect_sound(*plan, kind, sheets_of(*plan, kind, std::nullopt, lot.once_in(2)));
    }
  }
}

/// The cells of the line that begins with these words, as they stand from left to right on their sheet.
std::vector<std::string> line_of(const Drawing& drawing, const std::string& first, double left_mm = 40) {
  std::vector<std::string> cells;
  for (const Sheet& sheet : drawing.sheets) {
    const auto head = std::ranges::find_if(
        sheet.texts, [&](const DrawnText& t) { return t.words == first && t.place.x < left_mm && !t.bold; });
    if (head == sheet.texts.end()) continue;
    for (auto text = head; text != sheet.texts.end() && std::abs(text->place.y - head->place.y) < 1e-6; ++text)
      cells.push_back(text->words);
    break;
  }
  return cells;
}

TEST(SheetOfAReflectingPrism, SaysCornersFacesAndTolerancesToThePrintedDigit) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::arc));
  const Drawing drawing = sheets_of(plan, named(masters_of(plan), "U05"), Paper::a4, false);
  const PlannedPrism& prism = *plan.find("P01-U05");
  const std::vector<SectionCorner> corners = lettered_corners(prism.profile);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const auto cells = line_of(drawing, corners[i].letter);
    ASSERT_EQ(cells.size(), 7u) << corners[i].letter;
    EXPECT_EQ(cells[2], fmt::format("{:.3f}", corners[i].place.r));
    EXPECT_EQ(cells[3], fmt::format("{:.3f}", corners[i].place.z));
    EXPECT_EQ(cells[4], fmt::format("{:.3f}\u00B0", corner_angle_deg(prism.profile, i)));
  }
  const Face& reflecting = *prism.profile.find(FaceRole::reflecting);
  const auto face = line_of(drawing, "C2 to B1");
  ASSERT_EQ(face.size(), 7u);
  EXPECT_EQ(face[2], "arc, full");
  EXPECT_EQ(face[3], fmt::format("{:.3f}", distance(reflecting.start(), reflecting.end())));
  EXPECT_EQ(face[4], fmt::format("{:.3f}", reflecting.radius_mm));
  EXPECT_EQ(face[5], fmt::format("{:.3f}", reflecting.centre.r));
  EXPECT_EQ(face[6], fmt::format("{:.3f}", reflecting.centre.z));
  for (const Feature& feature : features_of(prism, plan.values.works)) {
    const auto cells = line_of(drawing, feature.key);
    ASSERT_EQ(cells.size(), 5u) << feature.key;
    EXPECT_EQ(cells[2], decimals(feature.drawn, 3)) << feature.key;
    EXPECT_NEAR(std::stod(cells[3]), feature.within, 0.0005 + 1e-9) << feature.key;
    EXPECT_EQ(cells[4], feature.unit);
  }
}

/// Every pair of numbers of the table of offsets with this heading, along the chord.
std::vector<FaceOffset> printed_offsets(const Drawing& drawing, const std::string& heading) {
  std::vector<FaceOffset> places;
  const std::regex number(R"(-?\d+\.\d{3})");
  for (const Sheet& sheet : drawing.sheets) {
    auto text = std::ranges::find(sheet.texts, heading, &DrawnText::words);
    if (text == sheet.texts.end()) continue;
    for (++text; text != sheet.texts.end() && !text->bold; ++text) {
      if (!std::regex_match(text->words, number)) continue;
      const double along = std::stod(text->words);
      places.push_back({along, std::stod((++text)->words)});
    }
  }
  std::ranges::sort(places, {}, &FaceOffset::along_mm);
  return places;
}

TEST(SheetsWithTrueCurves, PrintOffsetsThatLieOnTheCurveToTheLastDigit) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const std::vector<Master> kinds = masters_of(plan);
  struct Row {
    const char* kind;
    FaceRole role;
    const char* heading;
  };
  for (const Row& tested : {Row{"U05", FaceRole::reflecting, "Offsets of the reflecting face, C2 to B1"},
                            Row{"R2", FaceRole::outer, "Offsets of the outer face, C to D"},
                            Row{"R8b", FaceRole::outer, "Offsets of the outer face, C to D"}}) {
    const Master kind = named(kinds, tested.kind);
    const Face& face = *plan.prisms[kind.prism].profile.find(tested.role);
    ASSERT_EQ(face.kind, FaceKind::true_curve);
    const auto places = printed_offsets(sheets_of(plan, kind, Paper::a4, false), tested.heading);
    ASSERT_GE(places.size(), 20u) << tested.kind;
    for (std::size_t i = 0; i + 1 < places.size(); ++i)
      EXPECT_NEAR(places[i].offset_mm, off_chord(face, places[i].along_mm), 0.0005 + 2e-6) << tested.kind;
    EXPECT_NEAR(places.back().along_mm, distance(face.start(), face.end()), 0.0005 + 1e-9);
    EXPECT_EQ(places.back().offset_mm, 0);
  }
}

TEST(SheetOfACentre, TellsItsOuterFaceFromTheAxisToTheRim) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const Master kind = named(masters_of(plan), "C");
  const Profile& profile = plan.prisms[kind.prism].profile;
  const auto outer = std::ranges::find(profile.faces, FaceRole::outer, &Face::role);
  const Face whole = whole_face(profile, static_cast<std::size_t>(outer - profile.faces.begin()));
  const auto places = printed_offsets(sheets_of(plan, kind, Paper::a4, false),
                                      "Offsets of the outer face from the chord across its rim");
  ASSERT_GE(places.size(), 20u);
  const double half = distance(whole.start(), whole.end()) / 2;
  for (std::size_t i = 0; i + 1 < places.size(); ++i)
    EXPECT_NEAR(places[i].offset_mm, off_chord(whole, half + places[i].along_mm), 0.0005 + 2e-6);
  EXPECT_NEAR(places.back().along_mm, half, 0.0005 + 1e-9);
}

TEST(SheetOfAPrism, SaysVolumeAndMassAsGivenAndItsOwnLength) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  const Master kind = masters_of(plan).front();
  const PlannedPrism& prism = plan.prisms[kind.prism];
  // Derived: the end planes pass the lens axis at the set-back, so a circle of radius r keeps the angle w - 2
  // asin(s / r) and the straight length 2 r sin of its half; the outermost corner is the longest edge.
  const double half = radians(prism.trim.anticlockwise_side_deg - prism.trim.clockwise_side_deg) / 2;
  double longest = 0;
  for (const SectionCorner& corner : lettered_corners(prism.profile)) {
    const double r = corner.place.r;
    longest = std::max(longest, 2 * r * std::sin(half - std::asin(prism.trim.set_back_mm / r)));
  }
  PrismSolidFacts facts;
  facts.volume_mm3 = 12345.6;
  facts.mass_g = 14.68;
  const auto metric = prism_sheet(plan, kind, facts, words_of(plan, Paper::a4, false));
  ASSERT_TRUE(metric.ok());
  for (const std::string& said :
       {LengthWords{false}.plain(longest) + " mm", std::string("12.346 cm\u00B3"), std::string("14.7 g")})
    EXPECT_THAT(texts_of(*metric), Contains(said));
  const auto inches = prism_sheet(plan, kind, facts, words_of(plan, Paper::a4, true));
  ASSERT_TRUE(inches.ok());
  for (const std::string& said :
       {LengthWords{true}.plain(longest) + " in", std::string("0.7534 cubic in"), std::string("14.7 g")})
    EXPECT_THAT(texts_of(*inches), Contains(said));
}

TEST(ViewsOfARing, BearItsTrueDiameterWhateverTheFacetsOfTheView) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const Master kind = named(masters_of(plan), "R2");
  const PlannedPrism& prism = plan.prisms[kind.prism];
  double rim = 0;
  for (const SectionCorner& corner : lettered_corners(prism.profile)) rim = std::max(rim, corner.place.z);
  PrismSolidFacts facts = rough_facts(prism, plan.values.material.density_g_cm3);
  for (LineView* view : {&facts.from_sea, &facts.from_end}) {
    view->low.y += 0.02;
    view->high.y -= 0.02;
  }
  const auto drawing = prism_sheet(plan, kind, facts, words_of(plan, Paper::a4, false));
  ASSERT_TRUE(drawing.ok());
  // From the sea its breadth and its height, from the side its height.
  EXPECT_EQ(times_drawn(drawing->sheets[0], LengthWords{false}.plain(2 * rim)), 3);
}

TEST(SheetOfAPrism, SaysWhichAxisItIsTurnedAboutAndOfWhichKindItIsTheMirrorImage) {
  const LensPlan tilted = plan_of(every_band_its_own_way());
  const std::vector<Master> kinds = masters_of(tilted);
  std::string all;
  for (const std::string& text : texts_of(sheets_of(tilted, named(kinds, "U02"), Paper::a4, false)))
    all += text + " ";
  EXPECT_THAT(
      all, testing::HasSubstr("crosses the lens axis 3 mm above the focal plane and falls seaward by 2.000"));
  all.clear();
  for (const std::string& text : texts_of(sheets_of(tilted, named(kinds, "L02"), Paper::a4, false)))
    all += text + " ";
  EXPECT_THAT(all, testing::HasSubstr("Turned about the upright lens axis."));

  const LensPlan lopsided = plan_of(lopsided_bullseye());
  int mirrored_kinds = 0;
  for (const Master& kind : masters_of(lopsided)) {
    if (kind.mirror_of.empty() || ++mirrored_kinds > 1) continue;
    EXPECT_THAT(texts_of(sheets_of(lopsided, kind, Paper::a4, false)),
                Contains("The mirror image of " + kind.mirror_of + "."));
  }
  EXPECT_GT(mirrored_kinds, 0);
}

TEST(SheetOfAPrism, WithMoreMarksThanALineHoldsSaysEachOnce) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::arc));
  Master kind = named(masters_of(plan), "R2");
  kind.uses.clear();
  for (int i = 1; i <= 700; ++i) kind.uses.push_back({fmt::format("P{:03}-R2", i), i % 3 == 0});
  expect_sound(plan, kind, sheets_of(plan, kind, Paper::letter, false));
}

TEST(SheetOfAPrism, TakesTheLargerPaperOnlyWhereTheSmallerShowsTheSectionTooSmall) {
  const LensPlan small = plan_of(sixth_order_belt(Faces::arc));
  EXPECT_EQ(sheets_of(small, masters_of(small).front(), std::nullopt, false).sheets[0].size.paper, Paper::a4);
  const LensPlan large = plan_of(starting_values("hyper-radial", Work::bullseye, 6));
  bool any = false;
  for (const Master& kind : masters_of(large)) {
    any = any || sheets_of(large, kind, std::nullopt, false).sheets[0].size.paper == Paper::a3;
  }
  EXPECT_TRUE(any);
}

TEST(SheetOfAPrism, RefusesAKindOfAnotherLens) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  Master kind = masters_of(plan).front();
  kind.prism = plan.prisms.size();
  const auto refused = prism_sheet(plan, kind, {}, words_of(plan, Paper::a4, false));
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "unknown_prism");
}

}  // namespace
}  // namespace prismwright
