#include "core/drawing/engraved_letters.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/mark_place.h"
#include "core/frame/plate_polygons.h"
#include "tests/support/flat_parts.h"

namespace prismwright {
namespace {

const std::string kSigns = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-./";

PlateExtent reach_of(const std::vector<PlateChain>& strokes) {
  PlateExtent all = extent_of(strokes.front());
  for (const PlateChain& stroke : strokes) {
    const PlateExtent one = extent_of(stroke);
    all.low = {std::min(all.low.u, one.low.u), std::min(all.low.v, one.low.v)};
    all.high = {std::max(all.high.u, one.high.u), std::max(all.high.v, one.high.v)};
  }
  return all;
}

TEST(EngravedLetters, KeepToTheirHeightAndWidthAndAreJoinedUp) {
  for (const char sign : kSigns) {
    SCOPED_TRACE(sign);
    const std::string word(1, sign);
    const auto strokes = engraved_strokes(word, 5);
    ASSERT_FALSE(strokes.empty());
    const PlateExtent reach = reach_of(strokes);
    EXPECT_GE(reach.low.u, -1e-9);
    EXPECT_GE(reach.low.v, -1e-9);
    EXPECT_LE(reach.high.u, engraved_width_mm(word, 5) + 1e-9);
    EXPECT_LE(reach.high.v, 5 + 1e-9);
    const bool tall = std::isalnum(static_cast<unsigned char>(sign)) != 0;
    EXPECT_TRUE(!tall || std::abs(reach.high.v - reach.low.v - 5) < 1e-9);
    for (const PlateChain& stroke : strokes) {
      for (std::size_t i = 0; i < stroke.size(); ++i) {
        const PlateStep& step = stroke[i];
        if (i > 0) {
          EXPECT_EQ(step.from.u, stroke[i - 1].to.u);
          EXPECT_EQ(step.from.v, stroke[i - 1].to.v);
        }
        if (step.straight()) continue;
        // A quarter turn about the centre leads from one end to the other.
        const double c = std::cos(step.turn), s = std::sin(step.turn);
        const double du = step.from.u - step.centre.u, dv = step.from.v - step.centre.v;
        EXPECT_NEAR(step.centre.u + c * du - s * dv, step.to.u, 1e-9);
        EXPECT_NEAR(step.centre.v + s * du + c * dv, step.to.v, 1e-9);
        EXPECT_NEAR(std::hypot(du, dv), step.radius_mm, 1e-9);
      }
    }
  }
}

TEST(EngravedLetters, AreAllToldApart) {
  std::set<std::string> seen;
  for (const char sign : kSigns) {
    std::string path;
    for (const PlateChain& stroke : engraved_strokes(std::string(1, sign), 6)) {
      for (const PlateStep& step : stroke)
        path += std::to_string(step.to.u) + "," + std::to_string(step.to.v) + " ";
    }
    EXPECT_TRUE(seen.insert(path).second) << sign;
  }
}

TEST(EngravedLetters, WriteSmallLettersAsCapitalsAndOtherSignsAsABox) {
  EXPECT_EQ(engraved_width_mm("rib", 5), engraved_width_mm("RIB", 5));
  EXPECT_EQ(engraved_strokes("rib", 5).size(), engraved_strokes("RIB", 5).size());
  EXPECT_EQ(engraved_strokes("\xC3", 6).size(), 1u);
  EXPECT_TRUE(engraved_strokes("  ", 5).empty());
  EXPECT_EQ(engraved_width_mm("", 5), 0);
}

/// The rectangle that a mark takes, as a polygon.
PlateOutline ground_of(const EngravedMark& mark) {
  const double u = engraved_width_mm(mark.words, mark.height_mm) / 2, v = mark.height_mm / 2;
  const double c = std::cos(radians(mark.turn_deg)), s = std::sin(radians(mark.turn_deg));
  PlateOutline ground;
  for (const PlatePoint p : {PlatePoint{-u, -v}, PlatePoint{u, -v}, PlatePoint{u, v}, PlatePoint{-u, v}})
    ground.push_back({mark.middle.u + c * p.u - s * p.v, mark.middle.v + s * p.u + c * p.v});
  return ground;
}

/// The plate's brass on its front face.
PlateRegion brass_of(const FlatPart& part) {
  std::vector<PlateOutline> gaps;
  for (const PlateChain& opening : part.openings) gaps.push_back(flattened(opening, 0.001));
  for (const PlatePocket& pocket : part.pockets) gaps.push_back(flattened(pocket.outline, 0.001));
  for (const PlateHole& hole : part.holes)
    gaps.push_back(flattened(circle_chain(hole.centre, hole.diameter_mm / 2), 0.001));
  return first_less_second({flattened(part.outline, 0.001)}, united(gaps));
}

void expect_clear(const FlatPart& part, const EngravedMark& mark) {
  const PlateRegion wide = grown({ground_of(mark)}, kMarkClear_mm, Corner::round);
  EXPECT_NEAR(area_mm2(first_less_second(wide, brass_of(part))), 0, 1e-3);
  const PlateRegion ground = grown({ground_of(mark)}, 1e-4, Corner::sharp);
  for (const PlateChain& stroke : strokes_of(mark)) {
    for (const PlatePoint p : flattened(stroke, 0.01)) {
      const PlateRegion dot = {plate_rectangle({p.u - 1e-3, p.v - 1e-3}, {p.u + 1e-3, p.v + 1e-3})};
      EXPECT_GT(area_mm2(common_part(dot, grown(ground, 2e-3, Corner::sharp))), 3.9e-6);
    }
  }
}

TEST(PlaceOfAMark, IsLevelAndTallWhereThereIsRoom) {
  const FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(200, 20), "r");
  const auto mark = place_of_mark(rail, rail.mark);
  ASSERT_TRUE(mark);
  EXPECT_EQ(mark->height_mm, kEngraved_mm);
  EXPECT_EQ(mark->turn_deg, 0);
  EXPECT_NEAR(mark->middle.u, 100, 1);
  EXPECT_NEAR(mark->middle.v, 10, 0.5);
  expect_clear(rail, *mark);
}

TEST(PlaceOfAMark, KeepsOffHolesAndPockets) {
  FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(120, 20), "r");
  for (const double u : {20.0, 80.0, 110.0}) rail.holes.push_back({{u, 10}, 6, 0, true, "clears M6"});
  rail.pockets.push_back({moved(rectangle_chain(12, 20), 0, {84, 0}), 3, {}});
  const auto mark = place_of_mark(rail, rail.mark);
  ASSERT_TRUE(mark);
  EXPECT_GT(mark->middle.u, 20);
  EXPECT_LT(mark->middle.u, 80);
  expect_clear(rail, *mark);
}

TEST(PlaceOfAMark, TurnsUprightOrAslantAlongANarrowPlate) {
  const FlatPart upright = flat_part("P01-rib-left", PartKind::side_rib, 5, rectangle_chain(8, 300), "r");
  const auto mark = place_of_mark(upright, upright.mark);
  ASSERT_TRUE(mark);
  EXPECT_EQ(mark->turn_deg, 90);
  EXPECT_EQ(mark->height_mm, kEngraved_mm);
  expect_clear(upright, *mark);

  FlatPart aslant = upright;
  aslant.outline = moved(rectangle_chain(300, 8), radians(30), {0, 0});
  const auto turned = place_of_mark(aslant, aslant.mark);
  ASSERT_TRUE(turned);
  EXPECT_EQ(turned->turn_deg, 30);
  expect_clear(aslant, *turned);
}

TEST(PlaceOfAMark, ShrinksTheLettersAndGivesUpWhereTheyCannotBeRead) {
  const FlatPart small = flat_part("P01-X", PartKind::latch, 5, rectangle_chain(18, 5.2), "s");
  const auto mark = place_of_mark(small, small.mark);
  ASSERT_TRUE(mark);
  EXPECT_LT(mark->height_mm, kEngraved_mm);
  EXPECT_GE(mark->height_mm, kLeastEngraved_mm);
  expect_clear(small, *mark);
  const FlatPart least = flat_part("P01-X", PartKind::latch, 5, rectangle_chain(10, 4), "s");
  EXPECT_FALSE(place_of_mark(least, least.mark));
  EXPECT_FALSE(place_of_mark(small, ""));
}

}  // namespace
}  // namespace prismwright
