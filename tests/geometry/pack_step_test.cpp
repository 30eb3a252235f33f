#include <cmath>
#include <map>

#include <gmock/gmock.h>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <Interface_Static.hxx>
#include <Quantity_ColorRGBA.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include "tests/support/empty_folder.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

/// What a reader of other settings finds of one product.
struct ReadPart {
  double volume = 0;  ///< in the cube of the reader's own unit
  Quantity_ColorRGBA colour;
};

/// Reads as a program would whose own unit is not the millimetre; the setting goes back afterwards.
class ReaderInUnit {
 public:
  explicit ReaderInUnit(const char* unit) {
    STEPCAFControl_Reader names_the_settings;
    Interface_Static::SetCVal("xstep.cascade.unit", unit);
    XCAFApp_Application::GetApplication()->NewDocument("MDTV-XCAF", document_);
  }
  ~ReaderInUnit() {
    XCAFApp_Application::GetApplication()->Close(document_);
    Interface_Static::SetCVal("xstep.cascade.unit", "MM");
  }
  ReaderInUnit(const ReaderInUnit&) = delete;
  ReaderInUnit& operator=(const ReaderInUnit&) = delete;

  std::map<std::string, ReadPart> read(const std::string& path) {
    STEPCAFControl_Reader reader;
    reader.SetNameMode(true);
    reader.SetColorMode(true);
    std::map<std::string, ReadPart> parts;
    if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || !reader.Transfer(document_)) return parts;
    TDF_LabelSequence wholes;
    XCAFDoc_DocumentTool::ShapeTool(document_->Main())->GetFreeShapes(wholes);
    const TDF_Label& whole = wholes.First();
    if (!XCAFDoc_ShapeTool::IsAssembly(whole)) {
      parts[words_of(whole)] = part_of(XCAFDoc_ShapeTool::GetShape(whole));
      return parts;
    }
    TDF_LabelSequence components;
    XCAFDoc_ShapeTool::GetComponents(whole, components);
    for (const TDF_Label& component : components) {
      TDF_Label product;
      XCAFDoc_ShapeTool::GetReferredShape(component, product);
      parts[words_of(product)] = part_of(XCAFDoc_ShapeTool::GetShape(component));
    }
    return parts;
  }

 private:
  static std::string words_of(const TDF_Label& label) {
    Handle(TDataStd_Name) name;
    if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
    return TCollection_AsciiString(name->Get()).ToCString();
  }
  [[nodiscard]] ReadPart part_of(const TopoDS_Shape& shape) const {
    GProp_GProps sums;
    BRepGProp::VolumeProperties(shape, sums);
    ReadPart part{sums.Mass(), {}};
    const auto colours = XCAFDoc_DocumentTool::ColorTool(document_->Main());
    for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next())
      colours->GetColor(at.Current().Located(TopLoc_Location()), XCAFDoc_ColorSurf, part.colour);
    return part;
  }

  Handle(TDocStd_Document) document_;
};

void expect_part(const ReadPart& part, double volume_mm3, double mm_per_unit, bool glass) {
  EXPECT_NEAR(part.volume * std::pow(mm_per_unit, 3) / volume_mm3, 1, 1e-6);
  EXPECT_NEAR(part.colour.Alpha(), glass ? 0.5 : 1, 0.01);
  EXPECT_EQ(part.colour.GetRGB().Red() > part.colour.GetRGB().Blue(), !glass);
}

class PackedStep : public testing::TestWithParam<std::pair<const char*, double>> {};

TEST_P(PackedStep, ReadsInAnotherUnitWithNamesColoursAndVolumes) {
  const auto [unit, mm_per_unit] = GetParam();
  static const EmptyFolder folder;
  const DespatchSource& source = few_prisms_made();
  DespatchDesk desk(source, papers_on("2026-03-31"));
  // The second unit finds the files in the first one's pack.
  const auto report =
      write_pack(desk, {folder.path(), {DespatchGroup::prisms, DespatchGroup::panels, DespatchGroup::lens}});
  ASSERT_TRUE(report.ok()) << report.problem().text;

  const PrismBody& first = source.bodies->prisms.front();
  const auto alone = ReaderInUnit(unit).read(report->folder + "/prisms/" + first.mark + ".step");
  ASSERT_EQ(alone.size(), 1u);
  ASSERT_TRUE(alone.contains(first.mark));
  expect_part(alone.at(first.mark), first.volume_mm3, mm_per_unit, true);

  const auto lens = ReaderInUnit(unit).read(report->folder + "/lens.step");
  EXPECT_EQ(lens.size(), source.bodies->prisms.size() + source.metal->size());
  for (const PrismBody& body : source.bodies->prisms) {
    SCOPED_TRACE(body.mark);
    ASSERT_TRUE(lens.contains(body.mark));
    expect_part(lens.at(body.mark), body.volume_mm3, mm_per_unit, true);
  }
  for (const FrameBody& body : *source.metal) {
    SCOPED_TRACE(body.mark);
    ASSERT_TRUE(lens.contains(body.mark));
    expect_part(lens.at(body.mark), body.volume_mm3, mm_per_unit, false);
  }

  const auto panel = ReaderInUnit(unit).read(report->folder + "/panels/P01.step");
  const auto of_panel = [](const auto& parts) {
    return std::ranges::count_if(parts, [](const auto& part) { return part.panel == 1; });
  };
  EXPECT_EQ(static_cast<long>(panel.size()), of_panel(source.plan->prisms) + of_panel(*source.metal));
}

INSTANTIATE_TEST_SUITE_P(Units, PackedStep, testing::Values(std::pair{"M", 1000.0}, std::pair{"INCH", 25.4}));

}  // namespace
}  // namespace prismwright
