#include <gtest/gtest.h>

#include "core/lens/quantities.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

/// Least contrast of text, WCAG 2.1 level AA (1.4.3): 4.5 to 1.
constexpr double kReadable = 4.5;

class EveryTheme : public testing::TestWithParam<palette::Theme> {
 protected:
  void SetUp() override { palette::use(GetParam()); }
  void TearDown() override { palette::use(palette::Theme::light); }
};

TEST_P(EveryTheme, TextReadsOnEveryGroundItStandsOn) {
  for (const QColor& ground : {palette::paper(), palette::surface()})
    for (const QColor& text :
         {palette::ink(), palette::muted_ink(), palette::amiss(), palette::well(), palette::sea()})
      EXPECT_GE(palette::contrast(text, ground), kReadable)
          << qPrintable(text.name()) << " on " << qPrintable(ground.name());
  EXPECT_GE(palette::contrast(palette::on_sea(), palette::sea()), kReadable);
  EXPECT_GE(palette::contrast(palette::on_brass(), palette::brass()), kReadable);
}

TEST_P(EveryTheme, SignsReadOnTheirStages) {
  for (const Stage stage : kStages) {
    if (palette::stage_hatched(stage)) continue;
    EXPECT_GE(palette::contrast(palette::ink_on(palette::stage(stage)), palette::stage(stage)), kReadable)
        << qPrintable(palette::stage_words(stage));
  }
}

INSTANTIATE_TEST_SUITE_P(Themes, EveryTheme, testing::Values(palette::Theme::light, palette::Theme::dark));

TEST(Signs, NoTwoStagesOrVerdictsShareOne) {
  QStringList signs;
  for (const Stage stage : kStages) signs << palette::stage_sign(stage);
  EXPECT_EQ(signs.removeDuplicates(), 0);
  QStringList verdicts;
  for (const Verdict verdict : {Verdict::clear, Verdict::tight, Verdict::clash})
    verdicts << palette::verdict_sign(verdict);
  EXPECT_EQ(verdicts.removeDuplicates(), 0);
}

TEST(Icons, EveryIconOfTheRailIsThere) {
  for (const char* name : {"brief", "section", "lens", "light", "works", "new", "open", "export", "undo",
                           "redo", "record", "caution"})
    EXPECT_FALSE(drawn_icon(name).isNull()) << name;
  EXPECT_TRUE(drawn_icon("no such drawing").isNull());
}

TEST(ShownNumbers, LengthsTurnIntoInchesAndBack) {
  const Quantity& edge = *find_quantity("section.edge_mm");
  EXPECT_EQ(shown_value(edge, "9.525", true), "0.375");
  EXPECT_EQ(typed_value(edge, "0.375", true), "0.375 in");
  EXPECT_EQ(typed_value(edge, "3/8", true), "3/8 in");
  EXPECT_EQ(typed_value(edge, "9.5 mm", true), "9.5 mm");
  EXPECT_EQ(typed_value(edge, " 4 ", false), "4");
  const Quantity& limit = *find_quantity("section.upper_to_deg");
  EXPECT_EQ(shown_value(limit, "76.5", true), "76.5") << "angles stay";
  const Quantity& margins = *find_quantity("section.refracting_margins_mm");
  EXPECT_EQ(shown_value(margins, "25.4,50.8", true), "1, 2");
  EXPECT_EQ(typed_value(margins, "1, 2", true), "1 in,2 in");
}

TEST(ShownNumbers, ChangeIsSaidWithBothValuesAndTheUnit) {
  LensValues before = starting_values("4", Work::bullseye, 8);
  LensValues after = before;
  after.section.edge_mm = before.section.edge_mm + 1;
  EXPECT_EQ(change_words(before, after),
            QString("edge thickness %1 -> %2 mm").arg(before.section.edge_mm).arg(after.section.edge_mm));
  EXPECT_TRUE(change_words(before, before).isEmpty());
}

TEST(ShownNumbers, RefusalNamesTheFieldNotTheKeyAndEndsInAStop) {
  const Problem problem =
      request_problem("value.range", "section.edge_mm", "section.edge_mm is 99. Choose less");
  EXPECT_EQ(sentence_of(problem), "Edge thickness is 99. Choose less.");
  const Problem file = file_problem("file", "", "/a/section.edge_mm is missing.");
  EXPECT_EQ(sentence_of(file), "/a/section.edge_mm is missing.") << "a path is left as it is";
}

}  // namespace
}  // namespace prismwright
