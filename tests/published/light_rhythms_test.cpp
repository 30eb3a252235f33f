#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/light/character.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// A triangle of light, `base_deg` wide at its foot.
PanelCurve triangle(double axis_deg, double base_deg, double peak_cd = 1000, Screen screen = Screen::none) {
  PanelCurve curve;
  curve.axis_deg = axis_deg;
  curve.screen = screen;
  curve.step_deg = 0.05;
  const int half = static_cast<int>(std::lround(base_deg / 2 / curve.step_deg));
  curve.from_deg = -half * curve.step_deg;
  for (int i = -half; i <= half; ++i)
    curve.cd.push_back(peak_cd * (1 - std::abs(i) / static_cast<double>(half)));
  return curve;
}

std::vector<PanelCurve> panels(const std::vector<double>& axes_deg, double base_deg) {
  std::vector<PanelCurve> all;
  for (const double axis : axes_deg) all.push_back(triangle(axis, base_deg));
  return all;
}

// Published, Encyclopaedia Britannica 1911, Table VII p. 650: focal distance and flame diameter in mm, flash in
// s; the time of one turn is inferred. Printed to .01 s of about .3: within 4 %.
TEST(FlashLength, MeetsThePublishedTable) {
  struct Row {
    double f, d, turn, printed;
  };
  for (const Row& row : {Row{920, 50, 20, .17}, Row{1330, 85, 30, .30}, Row{920, 85, 30, .44},
                         Row{700, 85, 20, .38}, Row{920, 85, 40, .58}, Row{250, 55, 9, .31}})
    EXPECT_NEAR(flash_by_geometry_s(row.d, row.f, row.turn) / row.printed, 1, 0.04) << row.f << ' ' << row.d;
}

// Published, "Lighthouses of the Cape Colony" (c. 1910): four panels of 27 deg and eight of 31.5 deg, one turn
// in 160 s, triple flash: flashes of 2.25 s, short eclipses of 3.75 s, long ones of 25.75 s. So the axes of a
// group stand (2.25 + 3.75) / 160 x 360 = 13.5 deg apart: the spacing of the axes decides, not the width of the
// panels.
TEST(GroupFlash, ComesFromTheSpacingOfTheAxes) {
  std::vector<double> axes;
  for (int group = 0; group < 4; ++group)
    for (int i = -1; i <= 1; ++i) axes.push_back(90.0 * group + 13.5 * i + 13.5);
  // A triangle is half as wide at half of its peak as at its foot: 2.25 s there.
  const double base_deg = 2 * 2.25 * 360 / 160;
  const Rhythm rhythm = rhythm_of(panels(axes, base_deg), 160, TurnWay::clockwise);
  ASSERT_EQ(rhythm.flashes.size(), 3u);
  EXPECT_NEAR(rhythm.period_s, 40, 1e-9);
  for (const Flash& flash : rhythm.flashes) EXPECT_NEAR(flash.length_s(), 2.25, 0.01);
  const auto eclipse = [&](std::size_t i, std::size_t j, double round) {
    return rhythm.flashes[j].half_start_s + round - rhythm.flashes[i].half_end_s;
  };
  EXPECT_NEAR(eclipse(0, 1, 0), 3.75, 0.02);
  EXPECT_NEAR(eclipse(1, 2, 0), 3.75, 0.02);
  EXPECT_NEAR(eclipse(2, 0, 40), 40 - 3 * 2.25 - 2 * 3.75, 0.02);  // 25.75
  EXPECT_EQ(character_text(character_of(rhythm)), "LFl(3) 40s");
}

TEST(Rhythm, OfEqualPanelsRepeatsFromPanelToPanel) {
  const Rhythm rhythm = rhythm_of(panels({0, 45, 90, 135, 180, 225, 270, 315}, 6), 40, TurnWay::clockwise);
  EXPECT_NEAR(rhythm.period_s, 5, 1e-9);
  ASSERT_EQ(rhythm.flashes.size(), 1u);
  EXPECT_NEAR(rhythm.flashes[0].length_s(), 3.0 / 9, 1e-3);  // 3 deg at 9 deg a second
  EXPECT_NEAR(rhythm.flashes[0].foot_length_s(), 0.95 * 6 / 9, 1e-3);
  EXPECT_EQ(character_text(character_of(rhythm)), "Fl 5s");
  EXPECT_NEAR(turn_for_period_s(rhythm, 7.5), 60, 1e-9);
}

TEST(Rhythm, RunsBackwardWhenTheLensTurnsTheOtherWay) {
  const auto lens = panels({0, 20, 60}, 6);
  const Rhythm one = rhythm_of(lens, 36, TurnWay::clockwise);
  const Rhythm other = rhythm_of(lens, 36, TurnWay::anticlockwise);
  ASSERT_EQ(one.flashes.size(), 3u);
  ASSERT_EQ(other.flashes.size(), 3u);
  EXPECT_NEAR(one.flashes[1].peak_s, 2, 0.01);
  EXPECT_NEAR(one.flashes[2].peak_s, 6, 0.01);
  EXPECT_NEAR(other.flashes[1].peak_s, 30, 0.01);
  EXPECT_NEAR(other.flashes[2].peak_s, 34, 0.01);
}

TEST(Rhythm, OfALensThatStandsStillIsFixed) {
  const Rhythm rhythm = rhythm_of(panels({0, 180}, 200), 0, TurnWay::clockwise);
  EXPECT_TRUE(rhythm.steady);
  EXPECT_EQ(character_text(character_of(rhythm)), "F");
}

TEST(Character, IsWrittenAsInListsOfLights) {
  const auto text = [](const std::vector<PanelCurve>& lens, double turn) {
    return character_text(character_of(rhythm_of(lens, turn, TurnWay::clockwise)));
  };
  EXPECT_EQ(text(panels({0, 36, 72, 108}, 5), 15), "Fl(4) 15s");
  EXPECT_EQ(text(panels({0, 24, 48, 72}, 5), 15), "Q(4) 15s");  // a second apart: 60 a minute
  EXPECT_EQ(text(panels({0, 24, 90}, 5), 20), "Fl(2+1) 20s");
  EXPECT_EQ(text(panels({0, 180}, 180), 12), "Iso 6s");
  EXPECT_EQ(text(panels({0, 120, 240}, 10), 3), "Q");  // 60 flashes a minute
  EXPECT_EQ(text(panels({0, 90, 180, 270}, 5), 2), "VQ");
  EXPECT_EQ(text({triangle(0, 6), triangle(180, 6, 400, Screen::red)}, 20), "Al.WR 20s");
  EXPECT_EQ(text({triangle(0, 6, 400, Screen::green), triangle(180, 6, 400, Screen::green)}, 20), "Fl.G 10s");
  EXPECT_EQ(text(panels({0, 90, 180, 270}, 6), 15), "Fl 3.8s");
}

TEST(Character, IsReadAsItIsWritten) {
  for (const char* text : {"F", "Oc 6s", "Iso 4s", "Fl 5s", "LFl 10s", "Q", "VQ", "UQ", "Fl(2) 10s",
                           "Fl(2+1) 15s", "Al.WR 10s", "Fl.R 5s", "Fl(3)G 12s", "Fl 3.8s"})
    EXPECT_EQ(character_text(*read_character(text)), text);
  EXPECT_EQ(character_text(*read_character("fl (2) r. 10 s")), "Fl(2)R 10s");
  EXPECT_EQ(character_text(*read_character("Fl. 2.5s")), "Fl 2.5s");
}

TEST(Character, ThatCannotBeReadIsRefusedWithWhatCan) {
  for (const char* text : {"", "blink", "Fl(", "Fl(0)", "Fl 5", "Fl 5 minutes"}) {
    const auto read = read_character(text);
    ASSERT_FALSE(read.ok()) << text;
    EXPECT_THAT(read.problem().text, HasSubstr("for instance Fl(2)R 10s"));
  }
}

TEST(Character, SaysWhatDiffersFromTheWish) {
  const Character given = *read_character("Fl 5s");
  EXPECT_THAT(difference(*read_character("Fl 5s"), given), IsEmpty());
  EXPECT_THAT(difference(*read_character("Fl 6s"), given), HasSubstr("the period is another one"));
  EXPECT_THAT(difference(*read_character("Fl(2) 10s"), given), HasSubstr("spacing of the panels' axes"));
  EXPECT_THAT(difference(*read_character("Fl.R 5s"), given), HasSubstr("colours are others"));
}

TEST(RhythmWarnings, NameFlashesTooShortAndEclipsesTooShort) {
  const auto warn = [](const std::vector<PanelCurve>& lens, double turn) {
    return rhythm_warnings(rhythm_of(lens, turn, TurnWay::clockwise));
  };
  EXPECT_THAT(warn(panels({0, 90, 180, 270}, 8), 40), IsEmpty());
  EXPECT_THAT(warn(panels({0, 90, 180, 270}, 4), 20), testing::ElementsAre(HasSubstr("0.11 s")));
  EXPECT_THAT(warn({triangle(0, 8), triangle(90, 8), triangle(180, 8), triangle(270, 8, 300)}, 40),
              testing::ElementsAre(HasSubstr("300 cd, under half")));
}

}  // namespace
}  // namespace prismwright
