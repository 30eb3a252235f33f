#include <gtest/gtest.h>

#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "tests/support/pocket_gaps.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

constexpr double kWithin_mm = 0.02;

// The first rib of panel 1 and some of its prisms, as STEP files hold them.
class PocketsAsExported {
 public:
  PocketsAsExported(const LensValues& values, const std::vector<std::string>& zones) {
    LensPlan plan = *plan_lens(values);
    std::erase_if(plan.prisms, [&](const PlannedPrism& prism) { return !wanted(prism.mark, zones); });
    const FramePlan frame = rib_of(plan_frame(*plan_lens(values)), zones);
    rib_ = frame.ribs[0];
    const auto metal = make_frame(frame).value();
    walls_ = pocket_walls(reread(rib_.mark, metal[0].shape, PartStuff::metal), inward_of(rib_));
    const LensBodies bodies = *BodyShop().make(plan);
    for (const PrismBody& body : bodies.prisms) {
      prisms_.push_back({body.mark, reread(body.mark, body.shape, PartStuff::glass)});
    }
  }

  [[nodiscard]] std::vector<SideGap> sides_of(const std::string& zone) const {
    for (const ReadPrism& prism : prisms_) {
      if (prism.mark == "P01-" + zone) return side_gaps(prism, prisms_, walls_, rib_);
    }
    return {};
  }

 private:
  static bool wanted(const std::string& mark, const std::vector<std::string>& zones) {
    return mark.starts_with("P01-") && std::find(zones.begin(), zones.end(), mark.substr(4)) != zones.end();
  }

  // A reader takes long over the hundreds of edges of a whole rib: it keeps the pockets of these zones alone.
  static FramePlan rib_of(FramePlan frame, const std::vector<std::string>& zones) {
    const auto others = [&](const auto& pocket) {
      return std::none_of(pocket.marks.begin(), pocket.marks.end(),
                          [&](const std::string& mark) { return wanted(mark, zones); });
    };
    FramePlan one;
    one.ribs = {frame.ribs[0]};
    std::erase_if(one.ribs[0].pockets, others);
    for (FlatPart& flat : frame.flats) {
      if (flat.mark != frame.ribs[0].mark) continue;
      std::erase_if(flat.pockets, others);
      flat.holes.clear();
      one.flats.push_back(std::move(flat));
    }
    return one;
  }

  RibPlan rib_;
  std::vector<TopoDS_Face> walls_;
  std::vector<ReadPrism> prisms_;
};

// Sides that a wall faces; where two pockets run together the neighbour stands nearer than any wall.
void expect_setting_gap(const PocketsAsExported& pockets, const std::string& zone, double gap_mm,
                        int least_sides) {
  int walled = 0;
  for (const SideGap& side : pockets.sides_of(zone)) {
    if (side.faces_neighbour(gap_mm + kWithin_mm)) continue;
    EXPECT_NEAR(side.wall_mm, gap_mm, kWithin_mm) << side.mark << " face " << side.side;
    ++walled;
  }
  EXPECT_GE(walled, least_sides) << zone;
}

TEST(PocketAgainstPrismEnd, LeavesTheSettingGapOnEverySideOfBeltPrisms) {
  const PocketsAsExported pockets(sixth_order_belt(Faces::true_curve), {"U05", "R9a"});
  expect_setting_gap(pockets, "U05", 0.5, 6);
  expect_setting_gap(pockets, "R9a", 0.5, 4);
}

TEST(PocketAgainstPrismEnd, LeavesTheSettingGapOnEverySideOfBullsEyePrisms) {
  const PocketsAsExported pockets(fourth_order_bullseye(Faces::true_curve), {"U11", "R9a"});
  expect_setting_gap(pockets, "U11", 0.5, 6);
  expect_setting_gap(pockets, "R9a", 0.5, 4);
}

// A seat right through the rib, wider than usual.
TEST(PocketAgainstPrismEnd, LeavesAnotherGapWhereItIsAskedFor) {
  LensValues values = sixth_order_belt(Faces::true_curve);
  values.frame.setting_gap_mm = 0.8;
  values.frame.pocket_mm = values.frame.rib_mm;
  const PocketsAsExported pockets(values, {"U03"});
  expect_setting_gap(pockets, "U03", 0.8, 6);
}

}  // namespace
}  // namespace prismwright
