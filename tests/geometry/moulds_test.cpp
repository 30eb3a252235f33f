#include "geometry/mould.h"

#include <array>
#include <cmath>
#include <map>
#include <set>

#include <gmock/gmock.h>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeWedge.hxx>
#include <Bnd_Box.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <gp_Lin.hxx>

#include "core/base/angle.h"
#include "core/works/mould_notes.h"
#include "geometry/mould_draw.h"
#include "geometry/mould_exports.h"
#include "geometry/mould_high_points.h"
#include "geometry/mould_views.h"
#include "geometry/prism_shape.h"
#include "geometry/works_moulds.h"
#include "tests/support/empty_folder.h"
#include "tests/support/mould_lines.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::SizeIs;

MouldOrder order_of(const LensPlan& plan, const std::string& mark) {
  const PlannedPrism* prism = plan.find(mark);
  EXPECT_NE(prism, nullptr) << mark;
  const auto shape = prism_shape(*prism);
  EXPECT_TRUE(shape.ok()) << mark;
  return {*prism, *shape};
}

const LensPlan& bullseye_plan() {
  static const LensPlan plan = plan_lens(fourth_order_bullseye(Faces::true_curve)).value();
  return plan;
}

const LensPlan& belt_plan() {
  static const LensPlan plan = plan_lens(sixth_order_belt(Faces::true_curve)).value();
  return plan;
}

/// Kept between tests, for a mould takes a second.
const MouldAnswer& mould_of(const LensPlan& plan, const std::string& mark) {
  static std::map<std::string, MouldAnswer> made;
  const MouldOrder order = order_of(plan, mark);
  const auto at = made.find(order.prism.shape_key);
  if (at != made.end()) return at->second;
  return made.emplace(order.prism.shape_key, make_mould(order, WorksSettings{})).first->second;
}

class MouldOf : public ::testing::TestWithParam<const char*> {
 protected:
  [[nodiscard]] const MouldAnswer& answer() const {
    const std::string mark = GetParam();
    return mark.substr(0, 5) == "belt " ? mould_of(belt_plan(), mark.substr(5))
                                        : mould_of(bullseye_plan(), mark);
  }
};

TEST_P(MouldOf, HasTwoSoundHalvesThatFillTheBlockWithTheMaster) {
  ASSERT_TRUE(answer().mould.has_value()) << answer().problem->text;
  const Mould& mould = *answer().mould;
  EXPECT_THAT(mould.lower, IsValidSolid());
  EXPECT_THAT(mould.upper, IsValidSolid());
  const MouldFacts& f = mould.facts;
  const double block = f.block_length_mm * f.block_width_mm * f.block_height_mm;
  const double all = kernel_volume_mm3(mould.lower) + kernel_volume_mm3(mould.upper) +
                     kernel_volume_mm3(mould.master) + f.openings_mm3 + f.pin_gap_mm3;
  EXPECT_NEAR(all / block, 1, 1e-5);  // 1e-4 is asked
  EXPECT_GT(f.openings_mm3, 0);
  EXPECT_GT(f.pin_gap_mm3, 0);
}

TEST_P(MouldOf, LeavesNeitherHalfInTheMasterNorInTheOther) {
  const Mould& mould = *answer().mould;
  const double block = mould.facts.block_mm3;
  EXPECT_LT(kernel_volume_mm3(BRepAlgoAPI_Common(mould.lower, mould.upper).Shape()) / block, 1e-6);
}

TEST_P(MouldOf, CalledFreeOfUndercutsIsMetOnceByEveryLineAlongItsDraw) {
  const Mould& mould = *answer().mould;
  ASSERT_TRUE(mould.facts.draw.free());
  const LinesMet lower = lines_along_draw(mould.lower, mould.master, mould.facts, 40);
  EXPECT_GT(lower.met, 20);
  EXPECT_EQ(lower.most_stretches, 1);
  const LinesMet upper = lines_along_draw(mould.upper, mould.master, mould.facts, 40);
  EXPECT_GT(upper.met, 20);
  EXPECT_EQ(upper.most_stretches, 1);
}

TEST_P(MouldOf, KeepsItsWallRoundTheMaster) {
  const Mould& mould = *answer().mould;
  gp_Trsf into;
  const SpaceFrame& f = mould.facts.block;
  into.SetTransformation(gp_Ax3(point_of(f.origin), dir_of(f.third), dir_of(f.first)));
  Bnd_Box box;
  BRepBndLib::AddOptimal(mould.master.Moved(into), box, Standard_False, Standard_False);
  double x0 = 0, y0 = 0, z0 = 0, x1 = 0, y1 = 0, z1 = 0;
  box.Get(x0, y0, z0, x1, y1, z1);
  const double least = std::min({x0, y0, z0, mould.facts.block_length_mm - x1, mould.facts.block_width_mm - y1,
                                 mould.facts.block_height_mm - z1});
  EXPECT_GT(least, 12 - 0.02);
}

TEST_P(MouldOf, HasItsGateOnNoOpticalFaceAndAtTheTop) {
  const Mould& mould = *answer().mould;
  const MouldFacts& f = mould.facts;
  ASSERT_FALSE(f.openings.empty());
  EXPECT_TRUE(f.openings.front().gate);
  for (const char* face : {"inner", "outer", "entry", "exit", "reflecting"})
    EXPECT_NE(f.openings.front().face, face);
  // The highest place of the master lies within an opening, or the gate begins less than 0.3 mm below it.
  double highest = -1e9;
  const MouldSkin skin = mould_skin(mould.master, *bullseye_plan().find("P01-C"), 0.02);
  for (const gp_Pnt& p : skin.points)
    highest = std::max(highest, p.X() * f.up.x + p.Y() * f.up.y + p.Z() * f.up.z);
  // The master's skin under the rim of each opening's throat, by lines from above.
  IntCurvesFace_ShapeIntersector in_master;
  in_master.Load(mould.master, 1e-7);
  const SpaceVector across =
      unit(cross(f.up, std::abs(f.up.y) < 0.9 ? SpaceVector{0, 1, 0} : SpaceVector{0, 0, 1}));
  double reached = -1e9;
  for (const MouldOpening& opening : f.openings) {
    for (int i = 0; i < 24; ++i) {
      const double angle = 2 * kPi * i / 24;
      const SpaceVector round = std::cos(angle) * across + std::sin(angle) * cross(f.up, across);
      const SpacePoint from = opening.foot + 0.49 * opening.throat_mm * round + 500 * f.up;
      in_master.Perform(gp_Lin(point_of(from), dir_of(-f.up)), 0, 1e4);
      in_master.SortResult();
      if (in_master.NbPnt() == 0) continue;
      const gp_Pnt p = in_master.Pnt(1);
      reached = std::max(reached, p.X() * f.up.x + p.Y() * f.up.y + p.Z() * f.up.z);
    }
  }
  EXPECT_LT(highest - reached, 0.35);
}

INSTANTIATE_TEST_SUITE_P(Samples, MouldOf,
                         ::testing::Values("P01-C", "P01-R3", "P01-R6a", "P01-U08", "belt P01-R2a"));

TEST(Moulds, PartADiscInOnePlaneAndARingInTwoSteps) {
  EXPECT_EQ(mould_of(bullseye_plan(), "P01-C").mould->facts.parting, PartingKind::plane);
  const MouldFacts& ring = mould_of(bullseye_plan(), "P01-R3").mould->facts;
  EXPECT_EQ(ring.parting, PartingKind::surface);
  EXPECT_THAT(parting_note(ring), HasSubstr("rises 4.0 mm"));
}

TEST(Moulds, TellWhatResinTheyTakeWithItsHead) {
  const MouldFacts& f = mould_of(bullseye_plan(), "P01-C").mould->facts;
  EXPECT_NEAR(f.resin_mm3, 1.25 * f.master_mm3, 1e-6 * f.master_mm3);
  EXPECT_NEAR(f.resin_g, f.resin_mm3 * 0.98e-3, 1e-6);
}

TEST(MouldDraws, OfAPlainBoxTiltUntilEverySideHasDraft) {
  const TopoDS_Shape box = BRepPrimAPI_MakeBox(30, 40, 50).Shape();
  const MouldSkin skin = mould_skin(box, *bullseye_plan().find("P01-C"), 0.1);
  const DrawFacts straight = judged_draw(skin, {1, 0, 0}, 0.5);
  EXPECT_FALSE(straight.free());
  EXPECT_TRUE(straight.drawable());
  double steep = 0;
  for (const Undercut& undercut : straight.undercuts) steep += undercut.area_mm2;
  EXPECT_NEAR(steep, 2 * (30 * 40 + 30 * 50), 1e-6);  // the four sides along the draw
  EXPECT_NEAR(straight.height_mm, 30, 1e-9);
  const ChosenDraw best = chosen_draw(skin, 0.5);
  EXPECT_TRUE(best.facts.free());
}

TEST(MouldDraws, OfARingSeeAcrossItsBoreAsHidden) {
  const MouldOrder ring = order_of(bullseye_plan(), "P01-R3");
  const MouldSkin skin = mould_skin(ring.master, ring.prism, 0.1);
  const DrawFacts sideways = judged_draw(skin, {0, 1, 0}, 0.5);
  EXPECT_FALSE(sideways.drawable());
  double depth = 0;
  for (const Undercut& undercut : sideways.undercuts) {
    if (undercut.kind == UndercutKind::hidden) depth = std::max(depth, undercut.depth_mm);
  }
  EXPECT_GT(depth, 1);
}

DrawFacts facts_along(const MouldOrder& order, SpaceVector along, double draft_deg) {
  return judged_draw(mould_skin(order.master, order.prism, mould_chord_mm(order.prism)), along, draft_deg);
}

Outcome<MouldPicture> picture_along(const MouldOrder& order, SpaceVector along) {
  return mould_picture(order, facts_along(order, along, 0.5), 0.5);
}

TEST(MouldPictures, ShowWhereTheSidesOfABoxAreSteepWithTheirWholeArea) {
  // A box drawn straight: four of its six sides stand along the draw; from one corner two of them are seen.
  MouldOrder order{*bullseye_plan().find("P01-C"), BRepPrimAPI_MakeBox(30, 40, 50).Shape()};
  const auto picture = picture_along(order, {1, 0, 0});
  ASSERT_TRUE(picture.ok()) << picture.problem().text;
  ASSERT_THAT(picture->views, SizeIs(2));
  std::set<std::size_t> shown;
  for (const MouldView& view : picture->views) {
    EXPECT_FALSE(view.lines.lines.empty());
    EXPECT_THAT(view.patches, SizeIs(2));
    for (const UndercutPatch& patch : view.patches) {
      shown.insert(patch.undercut);
      double ground = 0;
      for (const auto& loop : patch.loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
          const PaperPoint& a = loop[i];
          const PaperPoint& b = loop[(i + 1) % loop.size()];
          ground += (a.x * b.y - b.x * a.y) / 2;
        }
      }
      EXPECT_NEAR(ground, patch.area_mm2, 1e-6 * patch.area_mm2) << "its outline holds what is seen of it";
    }
  }
  EXPECT_THAT(shown, SizeIs(4)) << "the two views together show all four";
}

TEST(MouldPictures, OfOneSteepSideShowItAndWhatLiesOpposite) {
  // Blocks 30 x 30 x 50 that narrow along the draw on all sides but one.
  const std::array<std::array<double, 4>, 4> tops = {
      {{5, 5, 30, 45}, {0, 5, 25, 45}, {5, 5, 25, 50}, {5, 0, 25, 45}}};
  for (const auto& top : tops) {
    const MouldOrder order{*bullseye_plan().find("P01-C"),
                           BRepPrimAPI_MakeWedge(30, 30, 50, top[0], top[1], top[2], top[3]).Shape()};
    ASSERT_THAT(facts_along(order, {0, 1, 0}, 0.5).undercuts, SizeIs(1));
    const auto picture = picture_along(order, {0, 1, 0});
    ASSERT_TRUE(picture.ok()) << picture.problem().text;
    ASSERT_THAT(picture->views, SizeIs(2));
    EXPECT_THAT(picture->views[0].patches, SizeIs(1));
    EXPECT_NEAR(dot(picture->views[0].eye, picture->views[1].eye), -1, 1e-9);
    EXPECT_TRUE(picture->views[1].patches.empty());
  }
}

TEST(MouldPictures, AreRefusedWhereOtherFacesAreUndercutThanTheMouldTellsOf) {
  const MouldOrder ring = order_of(bullseye_plan(), "P01-R3");
  const DrawFacts strict = facts_along(ring, {1, 0, 0}, 20), mild = facts_along(ring, {1, 0, 0}, 0.5);
  ASSERT_NE(strict.undercuts.size(), mild.undercuts.size());
  EXPECT_TRUE(mould_picture(ring, strict, 20).ok());
  const auto refused = mould_picture(ring, mild, 20);
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("Work out its mould anew"));
  DrawFacts turned = strict;
  turned.undercuts.front().face = "another";
  EXPECT_FALSE(mould_picture(ring, turned, 20).ok()) << "as many, but not the same";
}

TEST(MouldPictures, OfAMouldThatTheSettingsRefusedSayWhy) {
  WorksSettings settings;
  settings.mould_wall_mm = 0;
  WorkedMould mould;
  mould.order = order_of(bullseye_plan(), "P01-C");
  mould.answer = make_mould(mould.order, settings);
  const auto refused = drawn_mould(mould, {});
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("works.mould_wall_mm is 0"));
}

TEST(MouldPictures, OfARingAcrossItsBoreShowWhatIsHiddenFromTheDraw) {
  const MouldOrder ring = order_of(bullseye_plan(), "P01-R3");
  const SpaceVector sideways{0, 1, 0};
  const auto picture = picture_along(ring, sideways);
  ASSERT_TRUE(picture.ok()) << picture.problem().text;
  const DrawFacts draw = facts_along(ring, sideways, 0.5);
  std::set<std::size_t> shown;
  for (const MouldView& view : picture->views) {
    for (const UndercutPatch& patch : view.patches) {
      ASSERT_LT(patch.undercut, draw.undercuts.size());
      EXPECT_LE(patch.area_mm2, draw.undercuts[patch.undercut].area_mm2 * (1 + 1e-9));
      if (draw.undercuts[patch.undercut].kind == UndercutKind::hidden) shown.insert(patch.undercut);
    }
  }
  EXPECT_FALSE(shown.empty());
}

TEST(MouldPictures, HaveNoPatchWhereNothingIsUndercut) {
  const MouldOrder disc = order_of(bullseye_plan(), "P01-C");
  const auto picture = mould_picture(disc, mould_of(bullseye_plan(), "P01-C").draw, 0.5);
  ASSERT_TRUE(picture.ok());
  for (const MouldView& view : picture->views) EXPECT_TRUE(view.patches.empty());
}

TEST(MouldDraws, OfAnArcHaveOneHighPointOnItsEndAndTwoAcross) {
  const MouldOrder arc = order_of(belt_plan(), "P01-R2a");
  const MouldSkin skin = mould_skin(arc.master, arc.prism, 0.05);
  EXPECT_THAT(high_points(skin, gp_Vec(0, 1, 0), 0.3), SizeIs(1));
  EXPECT_THAT(high_points(skin, gp_Vec(-1, 0, 0), 0.3), SizeIs(2));  // its two ends
}

TEST(MouldWords, NameTheFacesOfAPrism) {
  const MouldOrder order = order_of(bullseye_plan(), "P01-R6a");
  std::vector<std::string> words;
  for (const SkinFace& face : mould_skin(order.master, order.prism, 0.1).faces) words.push_back(face.word);
  EXPECT_THAT(words,
              ::testing::UnorderedElementsAre("lower joint", "end clockwise", "end anticlockwise", "level cut",
                                              "level cut", "inner", "outer", "upper joint"));
}

TEST(MouldShops, MakeAShapeOnceAndKeepIt) {
  const MouldOrder one = order_of(bullseye_plan(), "P01-C"), other = order_of(bullseye_plan(), "P02-C");
  MouldShop shop;
  WorksSettings settings;
  const auto first = shop.make({one, other}, settings);
  ASSERT_TRUE(first.ok());
  EXPECT_EQ(shop.made_anew(), 1);
  EXPECT_EQ((*first)[1].mould->facts.mark, "P02-C");
  ASSERT_TRUE(shop.make({one}, settings).ok());
  EXPECT_EQ(shop.made_anew(), 0);
  settings.hour_cost = 50;
  ASSERT_TRUE(shop.make({one}, settings).ok());
  EXPECT_EQ(shop.made_anew(), 0);
  settings.mould_wall_mm = 15;
  ASSERT_TRUE(shop.make({one}, settings).ok());
  EXPECT_EQ(shop.made_anew(), 1);
}

TEST(MouldShops, StopWhenTold) {
  MouldShop shop;
  const auto stopped = shop.make({order_of(bullseye_plan(), "P01-C")}, WorksSettings{},
                                 [](double, std::string_view) { return false; });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
}

TEST(Moulds, RefuseAWallThatIsNone) {
  WorksSettings settings;
  settings.mould_wall_mm = 0;
  const MouldAnswer answer = make_mould(order_of(bullseye_plan(), "P01-C"), settings);
  ASSERT_TRUE(answer.problem.has_value());
  EXPECT_THAT(answer.problem->text, HasSubstr("P01-C: works.mould_wall_mm is 0"));
}

TEST(MouldExports, WriteTheHalvesWhole) {
  const EmptyFolder folder;
  const auto paths =
      export_moulds({mould_of(bullseye_plan(), "P01-C")}, folder.file("moulds"), {true, true, 0.05});
  ASSERT_TRUE(paths.ok()) << paths.problem().text;
  EXPECT_THAT(*paths, ::testing::ElementsAre(EndsWith("P01-C-mould.step"), EndsWith("P01-C-mould-lower.stl"),
                                             EndsWith("P01-C-mould-upper.stl")));
  const auto refused = export_moulds({}, folder.file("moulds"), {false, false, 0.05});
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "nothing");
}

}  // namespace
}  // namespace prismwright
