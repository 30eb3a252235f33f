#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/lens/trimmed_volume.h"
#include "core/works/congruence.h"
#include "core/works/optical_area.h"
#include "core/works/turned_solid.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

LensPlan lens_of(LensValues values, std::vector<Panel> panels) {
  values.panels = std::move(panels);
  return plan_of(values);
}

std::set<std::string> pieces_of(const LensPlan& plan) {
  std::set<std::string> pieces;
  for (const PlannedPrism& prism : plan.prisms) pieces.insert(piece_of_mark(prism.mark));
  return pieces;
}

std::vector<std::string> names_of(const std::vector<Master>& masters) {
  std::vector<std::string> names;
  for (const Master& master : masters) names.push_back(master.name);
  return names;
}

/// Every prism is cast from one master and no name stands twice.
void expect_whole(const LensPlan& plan, const std::vector<Master>& masters) {
  std::map<std::string, int> uses;
  for (const Master& master : masters) {
    ASSERT_FALSE(master.uses.empty());
    EXPECT_EQ(master.uses.front().mark, plan.prisms[master.prism].mark);
    EXPECT_FALSE(master.uses.front().turned);
    for (const MasterUse& use : master.uses) ++uses[use.mark];
  }
  ASSERT_EQ(uses.size(), plan.prisms.size());
  for (const PlannedPrism& prism : plan.prisms) EXPECT_EQ(uses[prism.mark], 1) << prism.mark;
  const auto names = names_of(masters);
  EXPECT_EQ(std::set<std::string>(names.begin(), names.end()).size(), names.size());
}

TEST(WorksCongruence, EightEqualPanelsNeedOneMasterForEachZonePiece) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const auto masters = masters_of(plan);
  expect_whole(plan, masters);
  const auto names = names_of(masters);
  EXPECT_EQ(std::set<std::string>(names.begin(), names.end()), pieces_of(plan));
  for (const Master& master : masters) {
    EXPECT_EQ(master.uses.size(), 8U) << master.name;
    EXPECT_TRUE(master.mirror_of.empty()) << master.name;  // its panels are symmetric: a turn does it too
  }
}

TEST(WorksCongruence, HalvesOfARingInASymmetricPanelAreTurnedTwins) {
  const auto masters = masters_of(plan_of(fourth_order_bullseye(Faces::true_curve)));
  int halves = 0;
  for (const Master& master : masters) {
    if (master.name.back() != 'b') continue;
    ++halves;
    EXPECT_EQ(master.turned_twin_of, master.name.substr(0, master.name.size() - 1) + "a");
  }
  EXPECT_GT(halves, 0);
}

TEST(WorksCongruence, HalfATurnSavesAsManyMastersAsTheListSays) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    LensValues values = starting_values("4", work, 8);
    const LensPlan own = plan_of(values);
    const auto kept_apart = masters_of(own);
    EXPECT_GT(half_turn_saves(kept_apart), 0);
    values.works.half_turn = HalfTurn::shared;
    const LensPlan plan = plan_of(values);
    const auto shared = masters_of(plan);
    expect_whole(plan, shared);
    EXPECT_EQ(static_cast<int>(kept_apart.size() - shared.size()), half_turn_saves(kept_apart));
    EXPECT_EQ(half_turn_saves(shared), 0);
    const auto turned = std::count_if(shared.begin(), shared.end(), [](const Master& m) {
      return std::any_of(m.uses.begin(), m.uses.end(), [](const MasterUse& u) { return u.turned; });
    });
    EXPECT_GT(turned, 0);
  }
}

TEST(WorksCongruence, HalvesOfARingInALopsidedPanelAreMirrorImagesAndNeverShare) {
  LensValues values = fourth_order_bullseye(Faces::true_curve);
  values.works.half_turn = HalfTurn::shared;
  const LensPlan plan = lens_of(values, std::vector<Panel>(8, Panel{45, 5, false}));
  const auto masters = masters_of(plan);
  expect_whole(plan, masters);
  bool cut = false;
  for (const Master& master : masters) {
    if (master.name.back() != 'b') continue;
    const std::string upper = master.name.substr(0, master.name.size() - 1) + "a";
    if (find_master(masters, upper) == nullptr) continue;  // clear of both sides: a turn does it
    cut = true;
    EXPECT_EQ(master.mirror_of, upper);
  }
  EXPECT_TRUE(cut);
}

TEST(WorksCongruence, PanelsThatAreMirrorImagesShareByHalfATurnOnly) {
  // Lopsided to the left and to the right: R1a of one, turned half about the panel's axis, is R1b of the other.
  LensValues values = fourth_order_bullseye(Faces::true_curve);
  const std::vector<Panel> panels = {{45, 5, false}, {45, -5, false}, {135, 0, true}, {135, 0, true}};
  const LensPlan own = lens_of(values, panels);
  const auto apart = masters_of(own);
  values.works.half_turn = HalfTurn::shared;
  const LensPlan plan = lens_of(values, panels);
  const auto shared = masters_of(plan);
  expect_whole(plan, shared);
  int crossed = 0;
  for (const PlannedPrism& prism : plan.prisms) {
    const std::string piece = piece_of_mark(prism.mark);
    if (prism.panel != 1 || piece.back() != 'a') continue;
    const Master* upper = master_of_mark(shared, prism.mark);
    const std::string other = "P02-" + piece.substr(0, piece.size() - 1) + "b";
    EXPECT_EQ(upper, master_of_mark(shared, other)) << other;
    const Master* lower = master_of_mark(apart, other);
    ASSERT_NE(lower, nullptr);
    if (lower == master_of_mark(apart, prism.mark)) continue;
    ++crossed;
    EXPECT_EQ(lower->turned_twin_of, master_of_mark(apart, prism.mark)->name);
  }
  EXPECT_GT(crossed, 0);
}

TEST(WorksCongruence, BeltPrismsOfPanelsOfEqualWidthAreOneWhereverTheAxisLies) {
  LensValues values = sixth_order_belt(Faces::true_curve);
  const LensPlan plan = lens_of(values, {{120, 5, false}, {120, 0, false}, {120, -11, false}});
  const auto masters = masters_of(plan);
  EXPECT_EQ(masters.size(), pieces_of(plan).size());
  for (const Master& master : masters) EXPECT_EQ(master.uses.size(), 3U) << master.name;
}

TEST(WorksCongruence, FlatFacetsOfLopsidedBeltPanelsAreMirrorsOrTurnedNeverOne) {
  LensValues values = sixth_order_belt(Faces::true_curve);
  values.section.inner_face = InnerFace::flat;
  values.section.edge_mm = 45;  // glass enough beside a facet of 60 deg
  const std::vector<Panel> panels = {{60, 3, false}, {60, -3, false}, {60, 0, false},
                                     {60, 0, false}, {60, 0, false},  {60, 0, true}};
  const LensPlan plan = lens_of(values, panels);
  const auto masters = masters_of(plan);
  expect_whole(plan, masters);
  const Master* left = master_of_mark(masters, "P01-R1a");
  const Master* right = master_of_mark(masters, "P02-R1a");
  ASSERT_NE(left, nullptr);
  ASSERT_NE(right, nullptr);
  EXPECT_NE(left, right);
  EXPECT_EQ(left->name, "R1a-P01");
  EXPECT_EQ(right->name, "R1a-P02");
  EXPECT_EQ(right->mirror_of, "R1a-P01");
  // The centre is its own image in the focal plane: half a turn makes the other of it.
  EXPECT_EQ(master_of_mark(masters, "P02-C")->turned_twin_of, "C-P01");
  EXPECT_EQ(master_of_mark(masters, "P03-R1a"), master_of_mark(masters, "P05-R1a"));
}

TEST(WorksCongruence, ARingThatStandsClearOfTheRibsIsOneInPanelsOfAnyWidth) {
  const LensPlan plan = plan_of(first_order_unequal(Faces::true_curve));
  const auto masters = masters_of(plan);
  expect_whole(plan, masters);
  const Master* centre = find_master(masters, "C");
  ASSERT_NE(centre, nullptr);
  EXPECT_EQ(centre->uses.size(), 3U);
  // The outermost reflecting prisms reach the ribs of every panel.
  EXPECT_NE(master_of_mark(masters, "P01-U05"), master_of_mark(masters, "P03-U05"));
  EXPECT_EQ(master_of_mark(masters, "P01-U05"), master_of_mark(masters, "P02-U05"));
}

TEST(WorksCongruence, APanelWiderByAThousandthOfADegreeHasItsOwnMasters) {
  const LensPlan plan = lens_of(sixth_order_belt(Faces::true_curve),
                                {{60.0005, 0, false}, {59.9995, 0, false}, {120, 0, false}, {120, 0, false}});
  const auto masters = masters_of(plan);
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel != 1) continue;
    const std::string second = "P02-" + piece_of_mark(prism.mark);
    EXPECT_NE(master_of_mark(masters, prism.mark), master_of_mark(masters, second));
  }
}

TEST(WorksCongruence, EqualPanelsShareForEveryNumberOfThem) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    for (const int count : {2, 3, 5, 7, 8, 11, 13, 16, 31, 32}) {
      const LensValues values = starting_values("hyper-radial", work, count);
      const LensPlan plan = plan_of(values);
      EXPECT_EQ(masters_of(plan).size(), pieces_of(plan).size()) << count;
    }
  }
}

TEST(WorksCongruence, EverySolidIsAlikeItselfAndRelationsGoBothWays) {
  const LensPlan plan = plan_of(first_order_unequal(Faces::true_curve));
  std::vector<TurnedSolid> solids;
  for (const PlannedPrism* prism : distinct_prisms(plan)) solids.push_back(turned_solid(*prism));
  for (std::size_t i = 0; i < solids.size(); ++i) {
    EXPECT_EQ(how_alike(solids[i], solids[i]), Alike::same);
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_EQ(how_alike(solids[i], solids[k]), how_alike(solids[k], solids[i]));
  }
}

/// Sums over a prism that know nothing of motions: equal for solids that are alike or mirror images.
struct PrismSums {
  double volume_mm3 = 0;
  double optical_mm2 = 0;
};

bool same(const PrismSums& a, const PrismSums& b, double share) {
  return std::abs(a.volume_mm3 - b.volume_mm3) <= share * a.volume_mm3 &&
         std::abs(a.optical_mm2 - b.optical_mm2) <= share * a.optical_mm2;
}

/// A lens of few zones drawn by lot, its panels of two widths and both leanings.
LensValues uneven_lens(Lot& lot) {
  LensValues values = random_lens(lot);
  SectionSettings& section = values.section;
  section.refracting_to_deg = 20;
  section.upper_to_deg = section.lower_to_deg = 28;
  for (BandSettings* band : {&section.refracting, &section.upper, &section.lower}) {
    band->division = Division::count;
    band->count = 2;
  }
  const double wide = lot.between(30, 65);
  const double narrow = lot.between(25, 0.9 * wide);
  const double shift = lot.between(-8, 8);
  values.panels = {{wide, shift, false}, {wide, -shift, false},  {wide, 0, false},
                   {narrow, 0, false},   {narrow, shift, false}, {360 - 3 * wide - 2 * narrow, 0, true}};
  values.works.half_turn = lot.any<HalfTurn>();
  return values;
}

TEST(WorksCongruence, LensesDrawnByLotShareWhatHasOneVolumeAndOneAreaAndNothingElse) {
  Lot lot(1234);
  int crossed = 0;
  for (int lenses = 0; lenses < 2;) {
    const LensValues values = uneven_lens(lot);
    if (!check_values(values).ok() || !plan_lens(values).ok()) continue;
    ++lenses;
    const LensPlan plan = plan_of(values);
    const auto masters = masters_of(plan);
    expect_whole(plan, masters);
    std::map<std::string, PrismSums> sums;
    for (const PlannedPrism* prism : distinct_prisms(plan))
      sums[prism->shape_key] = {trimmed_volume_mm3(*prism), optical_area_mm2(*prism)};
    for (std::size_t i = 0; i < masters.size(); ++i) {
      const PrismSums& own = sums.at(plan.prisms[masters[i].prism].shape_key);
      for (const MasterUse& use : masters[i].uses) {
        EXPECT_TRUE(same(own, sums.at(plan.find(use.mark)->shape_key), 1e-5)) << use.mark;
        crossed += plan.find(use.mark)->shape_key != plan.prisms[masters[i].prism].shape_key ? 1 : 0;
      }
      for (std::size_t k = 0; k < i; ++k) {
        const PrismSums& other = sums.at(plan.prisms[masters[k].prism].shape_key);
        const bool named =
            masters[i].mirror_of == masters[k].name || masters[i].turned_twin_of == masters[k].name;
        EXPECT_TRUE(!named || same(own, other, 1e-5)) << masters[i].name << ", " << masters[k].name;
        const bool told = !masters[i].mirror_of.empty() || !masters[i].turned_twin_of.empty();
        EXPECT_TRUE(told || !same(own, other, 1e-9)) << masters[i].name << ", " << masters[k].name;
      }
    }
  }
  EXPECT_GT(crossed, 0);
}

TEST(WorksCongruence, PieceOfAMark) {
  EXPECT_EQ(piece_of_mark("P03-R2a"), "R2a");
  EXPECT_EQ(piece_of_mark("S01-U07"), "U07");
  EXPECT_EQ(piece_of_mark("U07"), "U07");
}

}  // namespace
}  // namespace prismwright
