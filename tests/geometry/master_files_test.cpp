#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include <assimp/postprocess.h>
#include <assimp/scene.h>
#include <gtest/gtest.h>
#include <STEPControl_Reader.hxx>
#include <assimp/Importer.hpp>

#include "geometry/master_exports.h"
#include "tests/support/empty_folder.h"
#include "tests/support/planned_lens.h"
#include "tests/support/read_skin.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

struct FileCase {
  const char* name;
  LensValues values;
  const char* mark;
  double depth_percent;  ///< of shrinkage; the others are 0.4 %
  double room_mm;        ///< of the printer, each way
};

class MasterFiles : public ::testing::TestWithParam<FileCase> {};

TEST_P(MasterFiles, AreWatertightAndOfTheSolidsVolumeToAnotherReader) {
  const LensPlan plan = plan_of(GetParam().values);
  WorksSettings settings;
  settings.shrink_depth_percent = GetParam().depth_percent;
  settings.print_width_mm = settings.print_depth_mm = settings.print_height_mm = GetParam().room_mm;
  const auto master = make_master(*plan.find(GetParam().mark), "M", settings);
  ASSERT_TRUE(master.ok()) << master.problem().text;
  const auto print = plan_print(*master, settings);
  ASSERT_TRUE(print.ok()) << print.problem().text;
  const EmptyFolder folder;
  const auto written = export_master(*master, *print, folder.path(), {});
  ASSERT_TRUE(written.ok()) << written.problem().text;
  ASSERT_EQ(written->size(), 1 + 2 * print->parts.size());
  for (const PrintPart& part : print->parts) {
    for (const char* kind : {".stl", ".3mf"}) {
      SCOPED_TRACE(part.name + kind);
      const ReadSkin skin = read_skin(folder.path() + "/" + part.name + kind);
      ASSERT_EQ(skin.trouble, "");
      EXPECT_EQ(skin.open_edges, 0);
      EXPECT_GT(skin.facets, 50);
      EXPECT_NEAR(skin.volume_mm3 / part.volume_mm3, 1, 2e-4);
      EXPECT_NEAR(part.volume_mm3 / kernel_volume_mm3(part.shape), 1, 1e-4);
    }
  }
  STEPControl_Reader reader;
  ASSERT_EQ(reader.ReadFile((folder.path() + "/M.step").c_str()), IFSelect_RetDone);
  reader.TransferRoots();
  EXPECT_NEAR(kernel_volume_mm3(reader.OneShape()) / master->master_mm3, 1, 1e-5);
}

INSTANTIATE_TEST_SUITE_P(
    Of, MasterFiles,
    ::testing::Values(FileCase{"ring", fourth_order_bullseye(Faces::true_curve), "P01-R2", 0.4, 250},
                      FileCase{"half", fourth_order_bullseye(Faces::true_curve), "P01-U05", 0.9, 250},
                      FileCase{"belt_prism", sixth_order_belt(Faces::arc), "P01-U03", 0.4, 250},
                      FileCase{"ring_in_parts", fourth_order_bullseye(Faces::true_curve), "P01-R4", 0.4, 150},
                      FileCase{"belt_prism_in_parts", sixth_order_belt(Faces::true_curve), "P01-U03", 0.7, 90}),
    [](const auto& named) { return std::string(named.param.name); });

TEST(MasterFilesWrittenTwice, AreTheSameToTheByte) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::true_curve));
  const auto master = make_master(*plan.find("P01-R1a"), "R1a", {});
  ASSERT_TRUE(master.ok());
  const auto print = plan_print(*master, {});
  ASSERT_TRUE(print.ok());
  const EmptyFolder one;
  const EmptyFolder two;
  const auto first = export_master(*master, *print, one.path(), {});
  const auto second = export_master(*master, *print, two.path(), {});
  ASSERT_TRUE(first.ok() && second.ok());
  for (std::size_t i = 0; i < first->size(); ++i) EXPECT_EQ(bytes_of((*first)[i]), bytes_of((*second)[i]));
}

TEST(MasterFilesInAFolderThatCannotBe, AreRefused) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::true_curve));
  const auto master = make_master(*plan.find("P01-R1a"), "R1a", {});
  const auto print = plan_print(*master, {});
  ASSERT_TRUE(print.ok());
  const auto refused = export_master(*master, *print, "/dev/null/masters", {});
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().trouble, Trouble::file);
}

}  // namespace
}  // namespace prismwright
