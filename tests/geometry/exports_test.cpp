#include "geometry/exports.h"

#include <csignal>
#include <fstream>
#include <iterator>
#include <map>
#include <set>

#include <gmock/gmock.h>
#include <sys/resource.h>
#include <BRepPrimAPI_MakeBox.hxx>
#include <Quantity_ColorRGBA.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include "geometry/step_writer.h"
#include "tests/support/empty_folder.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

using ::testing::Contains;
using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::UnorderedElementsAre;

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// What a reader of names and colours finds in a STEP file.
struct ReadPart {
  std::string name;
  TopoDS_Shape shape;
  Quantity_ColorRGBA colour;
};

std::string name_of_label(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
  return TCollection_AsciiString(name->Get()).ToCString();
}

std::vector<ReadPart> read_parts(const std::string& path) {
  Handle(TDocStd_Document) document;
  XCAFApp_Application::GetApplication()->NewDocument("MDTV-XCAF", document);
  STEPCAFControl_Reader reader;
  reader.SetColorMode(true);
  reader.SetNameMode(true);
  std::vector<ReadPart> parts;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || !reader.Transfer(document)) return parts;
  const auto shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  const auto colours = XCAFDoc_DocumentTool::ColorTool(document->Main());
  TDF_LabelSequence labels;
  shapes->GetShapes(labels);
  for (const TDF_Label& label : labels) {
    if (!XCAFDoc_ShapeTool::IsSimpleShape(label)) continue;
    ReadPart part;
    part.name = name_of_label(label);
    part.shape = XCAFDoc_ShapeTool::GetShape(label);
    if (!colours->GetColor(label, XCAFDoc_ColorSurf, part.colour)) {
      colours->GetColor(part.shape, XCAFDoc_ColorSurf, part.colour);
    }
    parts.push_back(part);
  }
  XCAFApp_Application::GetApplication()->Close(document);
  return parts;
}

/// A small bull's-eye lens with a stand-in for the frame: one plain block.
class Exports : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    LensValues values = starting_values("6", Work::bullseye, 8);
    values.section.upper_to_deg = 40;
    values.section.lower_to_deg = values.section.refracting_to_deg;
    for (Panel& panel : values.panels) panel.blind = true;
    values.panels[0].blind = values.panels[2].blind = false;
    const auto plan = plan_lens(values);
    ASSERT_TRUE(plan.ok()) << plan.problem().text;
    auto bodies = BodyShop().make(*plan);
    ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
    bodies_ = new LensBodies(std::move(bodies).value());
    FrameBody rib;
    rib.mark = "P01-rib-left";
    rib.shape = BRepPrimAPI_MakeBox(5, 40, 200).Shape();
    metal_ = new std::vector<FrameBody>{rib};
  }
  static void TearDownTestSuite() {
    delete bodies_;
    delete metal_;
  }

  Outcome<std::vector<std::string>> export_to(const std::string& folder, const ExportChoice& choice = {}) {
    return export_bodies(*bodies_, *metal_, folder, choice);
  }

  static LensBodies* bodies_;
  static std::vector<FrameBody>* metal_;
  EmptyFolder folder_;
};
LensBodies* Exports::bodies_ = nullptr;
std::vector<FrameBody>* Exports::metal_ = nullptr;

TEST_F(Exports, WriteOneStepFilePerPrismAndOneForTheLens) {
  const auto paths = export_to(folder_.file("new/and/deep"));
  ASSERT_TRUE(paths.ok()) << paths.problem().text;
  EXPECT_EQ(paths->size(), bodies_->prisms.size() + 1);
  for (const std::string& path : *paths) EXPECT_TRUE(std::filesystem::is_regular_file(path)) << path;
  EXPECT_THAT(*paths, Contains(EndsWith("P01-C.step")));
  EXPECT_THAT(*paths, Contains(EndsWith("/lens.step")));
  EXPECT_THAT(*paths, Not(Contains(HasSubstr(".part"))));
}

TEST_F(Exports, OfOnePrismReadBackAsTheSameSolidWithItsNameUnitAndColour) {
  for (const std::string mark : {"P01-C", "P03-R1", "P03-U01"}) {
    SCOPED_TRACE(mark);
    const PrismBody* body = bodies_->find(mark);
    ASSERT_NE(body, nullptr);
    ASSERT_TRUE(export_to(folder_.path(), {.only = {mark}}).ok());
    const std::string path = folder_.file(mark + ".step");
    EXPECT_THAT(text_of(path), HasSubstr("PRODUCT('" + mark + "'"));
    EXPECT_THAT(text_of(path), HasSubstr("SI_UNIT(.MILLI.,.METRE.)"));
    EXPECT_THAT(text_of(path), HasSubstr("FILE_SCHEMA(('AUTOMOTIVE_DESIGN"));
    const auto parts = read_parts(path);
    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].name, mark);
    EXPECT_THAT(parts[0].shape, IsValidSolid());
    GProp_GProps sums;
    BRepGProp::VolumeProperties(parts[0].shape, sums);
    EXPECT_NEAR(sums.Mass() / body->volume_mm3, 1, 1e-6);
    EXPECT_LT(sums.CentreOfMass().Distance(body->centre_of_gravity_mm), 1e-3);
    EXPECT_NEAR(parts[0].colour.Alpha(), 0.5, 0.01);
    EXPECT_GT(parts[0].colour.GetRGB().Green(), parts[0].colour.GetRGB().Red());
  }
}

TEST_F(Exports, OfTheLensHoldEveryMarkAsAProductWithItsOwnSolidInPlace) {
  ASSERT_TRUE(export_to(folder_.path()).ok());
  const std::string path = folder_.file("lens.step");
  const std::string text = text_of(path);
  std::map<std::string, ReadPart> by_name;
  for (const ReadPart& part : read_parts(path)) by_name[part.name] = part;
  EXPECT_EQ(by_name.size(), bodies_->prisms.size() + metal_->size());
  for (const PrismBody& body : bodies_->prisms) {
    SCOPED_TRACE(body.mark);
    EXPECT_THAT(text, HasSubstr("PRODUCT('" + body.mark + "'"));
    ASSERT_EQ(by_name.count(body.mark), 1u);
    const ReadPart& part = by_name[body.mark];
    EXPECT_EQ(count_in(part.shape, TopAbs_SOLID), 1);
    GProp_GProps sums;
    BRepGProp::VolumeProperties(part.shape, sums);
    EXPECT_NEAR(sums.Mass() / body.volume_mm3, 1, 1e-6);
    EXPECT_LT(sums.CentreOfMass().Distance(body.centre_of_gravity_mm), 1e-3);
  }
  EXPECT_NEAR(by_name["P03-C"].colour.Alpha(), 0.5, 0.01);
  ASSERT_EQ(by_name.count("P01-rib-left"), 1u);
  const Quantity_ColorRGBA brass = by_name["P01-rib-left"].colour;
  EXPECT_NEAR(brass.Alpha(), 1, 0.01);
  EXPECT_GT(brass.GetRGB().Red(), brass.GetRGB().Blue());
}

TEST_F(Exports, AreTheSameBytesEveryTime) {
  EmptyFolder other;
  ASSERT_TRUE(export_to(folder_.path(), {.stl = true}).ok());
  ASSERT_TRUE(export_to(other.path(), {.stl = true}).ok());
  for (const std::string& name : folder_.names()) {
    EXPECT_TRUE(text_of(folder_.file(name)) == text_of(other.file(name))) << name << " differs";
  }
}

TEST_F(Exports, OfChosenMarksLeaveTheLensOut) {
  const auto paths = export_to(folder_.path(), {.stl = true, .only = {"P03-R1"}});
  ASSERT_TRUE(paths.ok());
  EXPECT_THAT(folder_.names(), UnorderedElementsAre("P03-R1.step", "P03-R1.stl"));
}

TEST_F(Exports, AreRefusedForAMarkThatThereIsNot) {
  const auto paths = export_to(folder_.path(), {.only = {"P01-C", "P77-U01"}});
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::request);
  EXPECT_THAT(paths.problem().text, HasSubstr("P77-U01"));
  EXPECT_THAT(folder_.names(), IsEmpty());
}

TEST_F(Exports, AreRefusedForAChordOutsideItsRange) {
  const auto paths = export_to(folder_.path(), {.stl = true, .stl_chord_mm = 0});
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().where, "stl_chord_mm");
}

TEST_F(Exports, AreRefusedWhereAFileStandsInThePlaceOfTheFolder) {
  const std::string file = folder_.file("out");
  std::ofstream(file) << "a maker's notes";
  const auto paths = export_to(file);
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::file);
  EXPECT_EQ(paths.problem().where, file);
  EXPECT_THAT(paths.problem().text, HasSubstr("is a file, not a folder"));
  EXPECT_EQ(text_of(file), "a maker's notes");
}

TEST_F(Exports, AreRefusedInAFolderThatTakesNoFiles) {
  // The kernel's own folder of processes takes no files, not even from the superuser.
  const auto paths = export_to("/proc/self");
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::file);
  EXPECT_THAT(paths.problem().where, HasSubstr("/proc/self/"));
  const auto deeper = export_to("/proc/prisms");
  ASSERT_FALSE(deeper.ok());
  EXPECT_EQ(deeper.problem().code, "folder");
}

/// Lets this process write no file longer than so many bytes: what a full disk does, from the first file on.
class ShortDisk {
 public:
  explicit ShortDisk(rlim_t bytes) {
    signal_ = std::signal(SIGXFSZ, SIG_IGN);
    getrlimit(RLIMIT_FSIZE, &before_);
    rlimit little = before_;
    little.rlim_cur = bytes;
    setrlimit(RLIMIT_FSIZE, &little);
  }
  ~ShortDisk() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, signal_);
  }
  ShortDisk(const ShortDisk&) = delete;
  ShortDisk& operator=(const ShortDisk&) = delete;

 private:
  rlimit before_{};
  void (*signal_)(int) = nullptr;
};

TEST_F(Exports, OnADiskThatFillsLeaveTheOlderFileWholeAndNoPart) {
  ASSERT_TRUE(export_to(folder_.path(), {.only = {"P01-C"}}).ok());
  const std::string path = folder_.file("P01-C.step");
  std::ofstream(path, std::ios::binary) << "the file from before";
  Outcome<std::vector<std::string>> paths = std::vector<std::string>{};
  {
    const ShortDisk disk(4096);
    paths = export_to(folder_.path(), {.only = {"P01-C"}});
  }
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::file);
  EXPECT_EQ(paths.problem().where, path);
  EXPECT_THAT(paths.problem().text, HasSubstr("another disk"));
  EXPECT_EQ(text_of(path), "the file from before");
  EXPECT_THAT(folder_.names(), UnorderedElementsAre("P01-C.step"));
}

TEST_F(Exports, StopWhenToldWithEveryFileWhole) {
  int told = 0;
  const auto paths = export_bodies(*bodies_, *metal_, folder_.path(), {},
                                   [&](double, std::string_view) { return ++told <= 3; });
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::stopped);
  EXPECT_EQ(folder_.names().size(), 3u);
  for (const std::string& name : folder_.names()) {
    EXPECT_THAT(text_of(folder_.file(name)), HasSubstr("END-ISO-10303-21;"));
  }
}

TEST_F(Exports, TellHowFarTheyHaveCome) {
  double last = -1;
  bool rises = true;
  ASSERT_TRUE(export_bodies(*bodies_, *metal_, folder_.path(), {}, [&](double share, std::string_view what) {
                rises = rises && share > last && !what.empty();
                last = share;
                return true;
              }).ok());
  EXPECT_TRUE(rises);
  EXPECT_DOUBLE_EQ(last, 1);
}

TEST(StepText, CarriesTheTimeOfTheSourceWhereThatIsGiven) {
  const StepPart part = {"P01-C", BRepPrimAPI_MakeBox(1, 2, 3).Shape(), PartStuff::glass};
  ::unsetenv("SOURCE_DATE_EPOCH");
  EXPECT_THAT(*step_text(part), HasSubstr("'1970-01-01T00:00:00'"));
  ::setenv("SOURCE_DATE_EPOCH", "86400", 1);
  EXPECT_THAT(*step_text(part), HasSubstr("'1970-01-02T00:00:00'"));
  ::unsetenv("SOURCE_DATE_EPOCH");
}

}  // namespace
}  // namespace prismwright
