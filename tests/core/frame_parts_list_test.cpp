#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/frame/cut_shapes.h"
#include "core/frame/fasteners.h"
#include "core/frame/frame_plan.h"
#include "core/frame/part_keys.h"
#include "core/frame/parts_list.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

constexpr double kCircle = std::numbers::pi / 4;

const PartsLine* line_with(const std::vector<PartsLine>& lines, const std::string& mark) {
  for (const PartsLine& line : lines) {
    if (std::find(line.marks.begin(), line.marks.end(), mark) != line.marks.end()) return &line;
  }
  return nullptr;
}

LensValues with_bars() {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.section.upper_rib_mm = values.section.lower_rib_mm = 10;
  return values;
}

TEST(PartsList, CountsEveryPartOnceInLinesOfLikeParts) {
  const FramePlan frame = plan_frame(plan_of(with_bars()));
  const auto lines = parts_list(frame);
  std::size_t pieces = 0;
  for (const PartsLine& line : lines) {
    EXPECT_EQ(static_cast<std::size_t>(line.quantity), line.marks.size());
    pieces += line.marks.size();
  }
  EXPECT_EQ(pieces, frame.flats.size() + frame.rounds.size() + frame.bars.size());
  EXPECT_EQ(totals_of(lines).pieces, static_cast<int>(pieces));
  EXPECT_TRUE(std::is_sorted(lines.begin(), lines.end(),
                             [](const PartsLine& a, const PartsLine& b) { return a.kind < b.kind; }));
  EXPECT_EQ(line_with(lines, "P01-rail-top")->quantity, 8);
  EXPECT_EQ(line_with(lines, "P01-rib-upper")->quantity, 8);
  EXPECT_EQ(line_with(lines, "spacer-top-1")->quantity, 16);
}

// 8 panels, so 8 long screws; a ring screw at either end of every rail: holes of a ring 8 mm thick.
TEST(PartsList, WeighsARingByItsClosedForm) {
  const FramePlan frame = plan_frame(plan_of(fourth_order_bullseye(Faces::arc)));
  const RingPlan& ring = frame.rings[0];
  const double annulus = std::numbers::pi * (ring.outer_radius_mm * ring.outer_radius_mm -
                                             ring.inner_radius_mm * ring.inner_radius_mm);
  const double tapped = kCircle * 3 * 3 * 8;
  // Clear hole 3.3 mm; the cone widens it from 3.3 to 6 mm over 1.35 mm of depth.
  const double cone = kCircle / 3 * 1.35 * (6 * 6 + 6 * 3.3 + 3.3 * 3.3) - kCircle * 3.3 * 3.3 * 1.35;
  const double clear = kCircle * 3.3 * 3.3 * 8 + cone;
  const double volume = annulus * 8 - 8 * tapped - 16 * clear;
  const auto lines = parts_list(frame);
  const PartsLine* line = line_with(lines, "ring-top");
  ASSERT_TRUE(line && line->mass_g);
  EXPECT_NEAR(*line->mass_g, volume * 8.49e-3, 1e-9 * volume);
  EXPECT_EQ(line->thickness_mm, 8);
}

TEST(PartsList, WeighsARailByItsClosedForm) {
  const FramePlan frame = plan_frame(plan_of(fourth_order_bullseye(Faces::arc)));
  const auto rail = std::find_if(frame.flats.begin(), frame.flats.end(),
                                 [](const FlatPart& part) { return part.mark == "P01-rail-top"; });
  ASSERT_NE(rail, frame.flats.end());
  const double outer = rail->outline[0].radius_mm;
  const double inner = rail->outline[2].radius_mm;
  // Between two planes 5 mm inside the sides of a panel of 45 deg, an annulus of radius r holds half its wedge
  // less the strip at the plane: integral of r (w - 2 asin(d / r)) dr.
  const auto within = [](double r) {
    const double root = std::sqrt(r * r - 25);
    return std::numbers::pi / 8 * r * r - (r * r * std::asin(5 / r) + 5 * root);
  };
  double volume = (within(outer) - within(inner)) * 8;
  volume -= static_cast<double>(rail->holes.size()) * kCircle * 9 * 8;
  volume -= static_cast<double>(rail->bores.size()) * kCircle * 9 * 6;
  EXPECT_EQ(rail->bores.size(), 4u);
  EXPECT_NEAR(volume_mm3(*rail), volume, 1e-6);
}

TEST(PartsList, KnowsTheVolumeOfScrewsPinsAndTubes) {
  RoundPart screw;
  screw.length_mm = 12;
  screw.diameter_mm = 4;
  screw.head_mm = 8;
  // Cone from 8 to 4 mm over 2 mm, then 10 mm of shank.
  EXPECT_NEAR(volume_mm3(screw), kCircle / 3 * 2 * (64 + 32 + 16) + kCircle * 16 * 10, 1e-9);
  RoundPart tube;
  tube.length_mm = 20;
  tube.diameter_mm = 9;
  tube.bore_mm = 3.3;
  EXPECT_NEAR(volume_mm3(tube), kCircle * (81 - 3.3 * 3.3) * 20, 1e-9);
}

TEST(PartsList, LeavesBarsUnweighedUntilTheirVolumesAreKnown) {
  const FramePlan frame = plan_frame(plan_of(with_bars()));
  ASSERT_EQ(frame.bars.size(), 16u);
  const auto lines = parts_list(frame);
  EXPECT_FALSE(line_with(lines, "P01-rib-upper")->mass_g);
  EXPECT_EQ(totals_of(lines).unweighed, 16);
  KnownVolumes known;
  for (const TurnedBar& bar : frame.bars) known[bar.mark] = 2000;
  const auto weighed = parts_list(frame, known);
  EXPECT_NEAR(*line_with(weighed, "P01-rib-upper")->mass_g, 16.98, 1e-9);
  EXPECT_EQ(totals_of(weighed).unweighed, 0);
  EXPECT_NEAR(totals_of(weighed).brass_g - totals_of(lines).brass_g, 16 * 16.98, 1e-6);
}

TEST(PartsList, WritesSizesAsAShopReadsThem) {
  const auto lines = parts_list(plan_frame(plan_of(fourth_order_bullseye(Faces::arc))));
  const auto of_kind = [&](PartKind kind) {
    return *std::find_if(lines.begin(), lines.end(), [&](const PartsLine& line) { return line.kind == kind; });
  };
  EXPECT_EQ(of_kind(PartKind::screw).size, "M3 x 11") << "5 mm of rib and twice 3 mm of rail";
  EXPECT_EQ(of_kind(PartKind::dowel).size, "3 x 10 mm");
  EXPECT_EQ(of_kind(PartKind::spacer).size, "9 x 20 mm, bore 3.3 mm");
  EXPECT_EQ(of_kind(PartKind::screw).size_inches, "M3 x 11 mm") << "screws keep their name";
  EXPECT_EQ(of_kind(PartKind::dowel).size_inches, "0.118 x 0.394 in");
  EXPECT_EQ(of_kind(PartKind::spacer).size_inches, "0.354 x 0.787 in, bore 0.13 in");
}

TEST(Fasteners, RoundTheClearHoleUpToATenth) {
  EXPECT_DOUBLE_EQ(clear_hole_mm(3), 3.3);
  EXPECT_DOUBLE_EQ(clear_hole_mm(2.5), 2.8);
  EXPECT_DOUBLE_EQ(clear_hole_mm(10), 11);
  EXPECT_DOUBLE_EQ(head_depth_mm(3), 1.5);
  EXPECT_TRUE(can_sink(2, 3));
  EXPECT_FALSE(can_sink(1.9, 3));
}

TEST(PartKeys, FollowEveryMeasureAndNoMark) {
  FlatPart plate;
  plate.thickness_mm = 5;
  plate.outline = straight_chain({{0, 0}, {10, 0}, {10, 100}, {0, 100}});
  plate.holes = {{{5, 5}, 3, 0, true, "taps M3"}};
  const std::string key = part_key(plate);
  FlatPart other = plate;
  other.mark = "P02";
  other.place.origin = {1, 2, 3};
  EXPECT_EQ(part_key(other), key);
  other.holes[0].centre.u += 1e-12;
  EXPECT_EQ(part_key(other), key) << "the noise of last bits";
  other.holes[0].centre.u += 0.001;
  EXPECT_NE(part_key(other), key);
  other = plate;
  other.holes[0].sink_diameter_mm = 6;
  EXPECT_NE(part_key(other), key);
  other = plate;
  other.making = PartMaking::machined;
  EXPECT_NE(part_key(other), key);
}

TEST(FrameParts, SayTheirKindsMakingsAndMetals) {
  EXPECT_STREQ(name_of(PartKind::finial_plate), "finial plate");
  EXPECT_STREQ(name_of(PartMaking::cut_flat), "cut flat");
  EXPECT_STREQ(name_of(PartMetal::steel), "stainless steel");
  EXPECT_EQ(density_g_cm3(PartMetal::brass), 8.49);
}

}  // namespace
}  // namespace prismwright
