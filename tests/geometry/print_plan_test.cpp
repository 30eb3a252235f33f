#include "geometry/print_plan.h"

#include <cmath>

#include <gtest/gtest.h>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <Bnd_Box.hxx>

#include "core/base/angle.h"
#include "geometry/mesh_of_solid.h"
#include "geometry/print_search.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

WorksSettings printer(double mm) {
  WorksSettings settings;
  settings.print_width_mm = settings.print_depth_mm = settings.print_height_mm = mm;
  return settings;
}

MasterBody master_of(const LensPlan& plan, const char* mark, const WorksSettings& settings) {
  const auto master = make_master(*plan.find(mark), mark, settings);
  EXPECT_TRUE(master.ok()) << (master.ok() ? "" : master.problem().text);
  return *master;
}

void expect_in_room(const PrintPart& part, const WorksSettings& settings) {
  Bnd_Box box;
  BRepBndLib::AddOptimal(part.shape.Moved(TopLoc_Location(part.lay.place)), box, Standard_False,
                         Standard_False);
  double x0 = 0, y0 = 0, z0 = 0, x1 = 0, y1 = 0, z1 = 0;
  box.Get(x0, y0, z0, x1, y1, z1);
  EXPECT_GE(std::min({x0, y0, z0}), -1e-3) << part.name;
  EXPECT_LE(x1, settings.print_width_mm + 1e-3) << part.name;
  EXPECT_LE(y1, settings.print_depth_mm + 1e-3) << part.name;
  EXPECT_LE(z1, settings.print_height_mm + 1e-3) << part.name;
  EXPECT_LT(z0, 0.3) << part.name;
}

/// Mean over the optical skin of the cosine of its steepness to the layers.
double level_of(const std::vector<SkinSample>& samples, const std::vector<MasterFace>& faces,
                const gp_Vec& up) {
  double sum = 0;
  double area = 0;
  for (const SkinSample& sample : samples) {
    if (!faces[sample.face].optical) continue;
    area += sample.area_mm2;
    sum += sample.area_mm2 *
           std::abs(sample.normal.x * up.X() + sample.normal.y * up.Y() + sample.normal.z * up.Z());
  }
  return sum / area;
}

TEST(LayOfAMaster, IsNoWorseThanAnyDirectionDrawnByLot) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const WorksSettings settings = printer(400);
  for (const char* mark : {"P01-U03", "P01-R2", "P01-R8a"}) {
    const MasterBody master = master_of(plan, mark, settings);
    const auto print = plan_print(master, settings);
    ASSERT_TRUE(print.ok());
    const PrintSearch search(master.shape, master.faces);
    Lot lot(7);
    double least = 1;
    for (int i = 0; i < 3000; ++i) {
      const double z = lot.between(-1, 1);
      const double a = lot.between(0, 2 * kPi);
      const double r = std::sqrt(1 - z * z);
      least = std::min(least, level_of(search.samples(), master.faces, {r * std::cos(a), r * std::sin(a), z}));
    }
    const double made = print->parts[0].lay.mean_optical_step_mm / settings.layer_mm;
    EXPECT_LE(made, std::max(1.02 * least, least + 0.01) + 1e-9) << mark;
  }
}

TEST(StepOfAFlatFace, IsTheLayerTimesTheCosineOfItsSteepness) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  WorksSettings settings = printer(400);
  settings.layer_mm = 0.2;
  // The inner face of a ring about the panel's axis is flat, square to +X.
  const auto print = plan_print(master_of(plan, "P01-R8a", settings), settings);
  ASSERT_TRUE(print.ok());
  const gp_Vec normal = gp_Vec(-1, 0, 0).Transformed(print->parts[0].lay.place);
  int seen = 0;
  for (const PrintedFace& face : print->parts[0].lay.faces) {
    if (face.face.name != "inner") continue;
    ++seen;
    EXPECT_NEAR(face.most_step_mm, 0.2 * std::abs(normal.Z()), 1e-6);
    EXPECT_NEAR(std::cos(radians(face.least_steep_deg)), std::abs(normal.Z()), 1e-6);
    EXPECT_NEAR(face.mean_step_mm, face.most_step_mm, 1e-6);
  }
  EXPECT_EQ(seen, 1);
}

TEST(MasterThatFits, IsPrintedWhole) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  const WorksSettings settings;
  const MasterBody master = master_of(plan, "P01-U01", settings);
  const auto print = plan_print(master, settings);
  ASSERT_TRUE(print.ok());
  ASSERT_EQ(print->parts.size(), 1u);
  EXPECT_TRUE(print->notes.empty());
  expect_in_room(print->parts[0], settings);
}

struct SplitCase {
  const char* name;
  LensValues values;
  const char* mark;
  double room_mm;
};

class MasterThatIsTooLong : public ::testing::TestWithParam<SplitCase> {};

TEST_P(MasterThatIsTooLong, IsPrintedInPartsThatFitAddUpAndDoNotOverlap) {
  const LensPlan plan = plan_of(GetParam().values);
  const WorksSettings settings = printer(GetParam().room_mm);
  const MasterBody master = master_of(plan, GetParam().mark, settings);
  const auto print = plan_print(master, settings);
  ASSERT_TRUE(print.ok()) << print.problem().text;
  ASSERT_GT(print->parts.size(), 1u);
  EXPECT_FALSE(print->notes.empty());
  double sum = 0;
  int keys = 0;
  for (std::size_t i = 0; i < print->parts.size(); ++i) {
    const PrintPart& part = print->parts[i];
    EXPECT_THAT(part.shape, IsValidSolid());
    expect_in_room(part, settings);
    sum += kernel_volume_mm3(part.shape) - part.key_mm3 + part.socket_mm3;
    if (part.key_mm == 0) continue;
    ++keys;
    EXPECT_NEAR(part.key_mm3 / (std::pow(part.key_mm, 3) * master.stretch.volume_factor()), 1, 2e-3);
    // The key stands in the next part's socket with room all round.
    BRepAlgoAPI_Common common(part.shape, print->parts[(i + 1) % print->parts.size()].shape);
    EXPECT_LT(std::abs(kernel_volume_mm3(common.Shape())), 1e-3) << part.name;
  }
  EXPECT_GT(keys, 0);
  EXPECT_NEAR(sum / master.master_mm3, 1, 5e-5);
}

INSTANTIATE_TEST_SUITE_P(
    Of, MasterThatIsTooLong,
    ::testing::Values(SplitCase{"ring", fourth_order_bullseye(Faces::true_curve), "P01-R3", 120},
                      SplitCase{"upper_half", fourth_order_bullseye(Faces::true_curve), "P01-U04", 110},
                      SplitCase{"lower_half", fourth_order_bullseye(Faces::arc), "P01-L02", 110},
                      SplitCase{"belt_prism", sixth_order_belt(Faces::true_curve), "P01-U02", 80},
                      SplitCase{"first_order", first_order_unequal(Faces::true_curve), "P03-U09", 450}),
    [](const auto& named) { return std::string(named.param.name); });

TEST(PrinterThatIsFarTooSmall, IsRefusedWithItsRoom) {
  const LensPlan plan = plan_of(first_order_unequal(Faces::true_curve));
  const WorksSettings settings = printer(20);
  const auto print = plan_print(master_of(plan, "P01-U01", settings), settings);
  ASSERT_FALSE(print.ok());
  EXPECT_EQ(print.problem().code, "print.room");
  EXPECT_NE(print.problem().text.find("works.print_width_mm"), std::string::npos);
}

}  // namespace
}  // namespace prismwright
