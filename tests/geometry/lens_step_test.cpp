#include <fstream>
#include <map>
#include <numbers>
#include <set>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <BRepPrimAPI_MakeBox.hxx>
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
#include <gp_Ax1.hxx>
#include <gp_Trsf.hxx>

#include "geometry/step_writer.h"
#include "tests/support/empty_folder.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;

std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
  return TCollection_AsciiString(name->Get()).ToCString();
}

/// What a reader finds who follows every product's places down to its solids.
struct PlacedPart {
  gp_Pnt centre;
  double volume_mm3 = 0;
  int solids = 0;
  Quantity_ColorRGBA colour;
};

/// The lens's parts by their product names; `solids` counts the solids that the file holds in all.
std::map<std::string, PlacedPart> read_lens(const std::string& text, int& solids) {
  const EmptyFolder folder;
  const std::string path = folder.file("lens.step");
  std::ofstream(path, std::ios::binary) << text;
  Handle(TDocStd_Document) document;
  XCAFApp_Application::GetApplication()->NewDocument("MDTV-XCAF", document);
  STEPCAFControl_Reader reader;
  std::map<std::string, PlacedPart> parts;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || !reader.Transfer(document)) return parts;
  const auto colours = XCAFDoc_DocumentTool::ColorTool(document->Main());
  TDF_LabelSequence wholes;
  XCAFDoc_DocumentTool::ShapeTool(document->Main())->GetFreeShapes(wholes);
  TDF_LabelSequence components;
  XCAFDoc_ShapeTool::GetComponents(wholes.First(), components);
  std::set<const TopoDS_TShape*> different;
  for (const TDF_Label& component : components) {
    TDF_Label product;
    XCAFDoc_ShapeTool::GetReferredShape(component, product);
    const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(component);
    GProp_GProps sums;
    BRepGProp::VolumeProperties(shape, sums);
    PlacedPart part{sums.CentreOfMass(), sums.Mass(), count_in(shape, TopAbs_SOLID), {}};
    for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next()) {
      different.insert(at.Current().TShape().get());
      colours->GetColor(at.Current().Located(TopLoc_Location()), XCAFDoc_ColorSurf, part.colour);
    }
    parts[name_of(product)] = part;
  }
  solids = static_cast<int>(different.size());
  XCAFApp_Application::GetApplication()->Close(document);
  return parts;
}

TopoDS_Shape turned(const TopoDS_Shape& shape, double angle_deg) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), angle_deg * std::numbers::pi / 180);
  return shape.Located(TopLoc_Location(turn));
}

TEST(LensText, HoldsCongruentRibsOnceUnderEachMarkInItsOwnPlace) {
  const TopoDS_Shape rib = BRepPrimAPI_MakeBox(gp_Pnt(100, 0, -50), 20, 4, 90).Shape();
  const TopoDS_Shape other = BRepPrimAPI_MakeBox(gp_Pnt(100, -4, -50), 20, 4, 90).Shape();
  std::vector<StepPart> parts = {{"P01-C", BRepPrimAPI_MakeBox(1, 2, 3).Shape(), PartStuff::glass},
                                 {"ring-top", BRepPrimAPI_MakeBox(4, 5, 6).Shape(), PartStuff::metal}};
  for (int panel = 1; panel <= 4; ++panel) {
    parts.push_back({fmt::format("P0{}-rib-left", panel), turned(rib, 45.0 + 90 * panel), PartStuff::metal});
    parts.push_back({fmt::format("P0{}-rib-right", panel), turned(other, 90.0 * panel), PartStuff::metal});
  }
  const auto text = step_text("lens", parts);
  ASSERT_TRUE(text.ok()) << text.problem().text;
  int solids = 0;
  auto read = read_lens(*text, solids);
  EXPECT_EQ(solids, 4) << "a prism, a ring, and one rib of each side";
  EXPECT_EQ(read.size(), parts.size());
  for (const StepPart& part : parts) {
    SCOPED_TRACE(part.name);
    EXPECT_THAT(*text, HasSubstr("PRODUCT('" + part.name + "'"));
    ASSERT_EQ(read.count(part.name), 1u);
    GProp_GProps sums;
    BRepGProp::VolumeProperties(part.shape, sums);
    EXPECT_EQ(read[part.name].solids, 1);
    EXPECT_NEAR(read[part.name].volume_mm3 / sums.Mass(), 1, 1e-9);
    EXPECT_LT(read[part.name].centre.Distance(sums.CentreOfMass()), 1e-9);
    const bool glass = part.stuff == PartStuff::glass;
    EXPECT_NEAR(read[part.name].colour.Alpha(), glass ? 0.5 : 1, 0.01);
    const Quantity_Color colour = read[part.name].colour.GetRGB();
    EXPECT_EQ(colour.Red() > colour.Blue(), !glass);
  }
}

TEST(LensText, KeepsAnOwnSolidForEveryPrismThoughItsTwinsAreCongruent) {
  const TopoDS_Shape prism = BRepPrimAPI_MakeBox(gp_Pnt(100, 0, 0), 20, 4, 9).Shape();
  const auto text = step_text("lens", {{"P01-U01", turned(prism, 0), PartStuff::glass},
                                       {"P02-U01", turned(prism, 120), PartStuff::glass}});
  ASSERT_TRUE(text.ok());
  int solids = 0;
  EXPECT_EQ(read_lens(*text, solids).size(), 2u);
  EXPECT_EQ(solids, 2);
}

}  // namespace
}  // namespace prismwright
