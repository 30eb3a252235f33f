#include "geometry/step_writer.h"

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <map>
#include <mutex>
#include <new>
#include <sstream>
#include <string>

#include <fmt/format.h>
#include <APIHeaderSection_MakeHeader.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepLib.hxx>
#include <Interface_Static.hxx>
#include <Quantity_ColorRGBA.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPControl_Controller.hxx>
#include <STEPControl_Writer.hxx>
#include <Standard_Failure.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XSControl_WorkSession.hxx>

#include "geometry/quiet_kernel.h"
#include "geometry/step_colours.h"

namespace prismwright {

namespace {

void set_up_writer() {
  quiet_kernel();
  STEPControl_Controller::Init();
  Interface_Static::SetCVal("write.step.schema", "AP214IS");
  Interface_Static::SetCVal("write.step.unit", "MM");
  // Curves in the surfaces' own parameters are left out: readers work them out, and files halve.
  Interface_Static::SetIVal("write.surfacecurve.mode", 0);
}

std::string time_stamp() {
  std::time_t when = 0;
  if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH")) when = std::strtoll(epoch, nullptr, 10);
  std::tm parts{};
  gmtime_r(&when, &parts);
  char text[32] = {};
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%S", &parts);
  return text;
}

Quantity_ColorRGBA colour_of(PartStuff stuff) {
  const bool glass = stuff == PartStuff::glass;
  const Quantity_Color colour =
      glass ? Quantity_Color(0x8C / 255.0, 0xC0 / 255.0, 0xAE / 255.0, Quantity_TOC_sRGB)
            : Quantity_Color(0xA9 / 255.0, 0x81 / 255.0, 0x2F / 255.0, Quantity_TOC_sRGB);
  return {colour, glass ? 0.5F : 1.0F};
}

/// The shape with its place worked into its geometry, sharing nothing with another part.
TopoDS_Shape baked(const TopoDS_Shape& shape) {
  const gp_Trsf place = shape.Location().Transformation();
  const TopoDS_Shape bare = shape.Located(TopLoc_Location());
  if (place.Form() == gp_Identity) return BRepBuilderAPI_Copy(bare).Shape();
  return BRepBuilderAPI_Transform(bare, place, Standard_True).Shape();
}

/// The writer asks for the bounds of a face anew at each of its edges. A plate's face has a thousand, and
/// without curves in its own plane each of them is projected each time.
void ease_writing(const TopoDS_Shape& shape) {
  for (TopExp_Explorer faces(shape, TopAbs_FACE); faces.More(); faces.Next()) {
    const TopoDS_Face face = TopoDS::Face(faces.Current());
    for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
      BRepLib::BuildPCurveForEdgeOnPlane(TopoDS::Edge(edges.Current()), face);
    }
  }
}

/// A shape as the writer knows it, and what it is made of.
struct Coloured {
  TopoDS_Shape shape;
  PartStuff stuff;
};

bool has_twin(const StepPart& part, const std::vector<StepPart>& parts) {
  const auto alike = [&](const StepPart& other) { return other.shape.IsPartner(part.shape); };
  return std::count_if(parts.begin(), parts.end(), alike) > 1;
}

/// An XDE document that is closed on the way out.
class Document {
 public:
  Document() {
    XCAFApp_Application::GetApplication()->NewDocument("MDTV-XCAF", document_);
    shapes_ = XCAFDoc_DocumentTool::ShapeTool(document_->Main());
  }
  ~Document() { XCAFApp_Application::GetApplication()->Close(document_); }
  Document(const Document&) = delete;
  Document& operator=(const Document&) = delete;

  TDF_Label add(const StepPart& part) {
    const TopoDS_Shape shape = baked(part.shape);
    if (part.stuff == PartStuff::metal) ease_writing(shape);
    const TDF_Label label = shapes_->AddShape(shape, Standard_False);
    TDataStd_Name::Set(label, part.name.c_str());
    coloured_.push_back({shapes_->GetShape(label), part.stuff});
    return label;
  }

  void add_assembly(const std::string& name, const std::vector<StepPart>& parts) {
    const TDF_Label whole = new_assembly(name);
    SharedPlates plates;
    for (const StepPart& part : parts) {
      const TDF_Label product =
          part.stuff == PartStuff::metal && has_twin(part, parts) ? add_placed(part, plates) : add(part);
      place(whole, product, TopLoc_Location(), part.name);
    }
    shapes_->UpdateAssemblies();
  }

  [[nodiscard]] const Handle(TDocStd_Document) & handle() const { return document_; }
  [[nodiscard]] const std::vector<Coloured>& coloured() const { return coloured_; }

 private:
  Handle(TDocStd_Document) document_;
  Handle(XCAFDoc_ShapeTool) shapes_;
  /// Written plates by the shape that their twins share.
  using SharedPlates = std::map<const TopoDS_TShape*, TDF_Label>;

  TDF_Label new_assembly(const std::string& name) {
    const TDF_Label label = shapes_->NewShape();
    TDataStd_Name::Set(label, name.c_str());
    return label;
  }

  void place(const TDF_Label& whole, const TDF_Label& product, const TopLoc_Location& at,
             const std::string& name) {
    TDataStd_Name::Set(shapes_->AddComponent(whole, product, at), name.c_str());
  }

  /// A product of the part's own name that holds nothing but the plate of all its twins, turned to its place.
  TDF_Label add_placed(const StepPart& part, SharedPlates& plates) {
    const auto [plate, is_new] = plates.try_emplace(part.shape.TShape().get());
    if (is_new) {
      const TopoDS_Shape bare = part.shape.Located(TopLoc_Location());
      plate->second = add({fmt::format("plate-{}", plates.size()), bare, part.stuff});
    }
    const TDF_Label product = new_assembly(part.name);
    place(product, plate->second, part.shape.Location(), part.name);
    return product;
  }

  std::vector<Coloured> coloured_;
};

Handle(TCollection_HAsciiString) text_of(const std::string& text) {
  return new TCollection_HAsciiString(text.c_str());
}

void write_header(const Handle(StepData_StepModel) & model, const std::string& name) {
  APIHeaderSection_MakeHeader header(model);
  header.SetName(text_of(name));
  header.SetTimeStamp(text_of(time_stamp()));
  header.SetAuthorValue(1, text_of(""));
  header.SetOrganizationValue(1, text_of(""));
  header.SetOriginatingSystem(text_of("Prismwright"));
  header.SetPreprocessorVersion(text_of("Prismwright"));
  header.SetDescriptionValue(1, text_of("Prisms of a lens, mm, origin in the focus, Z up"));
}

/// The kernel numbers the places of parts on and on from file to file; here each file counts from 1.
void renumber_places(const Handle(StepData_StepModel) & model) {
  int number = 0;
  for (int i = 1; i <= model->NbEntities(); ++i) {
    const auto place = Handle(StepRepr_NextAssemblyUsageOccurrence)::DownCast(model->Value(i));
    if (!place.IsNull()) place->SetId(text_of(std::to_string(++number)));
  }
}

Problem unwritable(const std::string& name, std::string_view why) {
  return request_problem(
      "step", name,
      fmt::format("{}: its STEP text could not be made ({}). Leave it out with the choice of "
                  "marks, or change the prism a little.",
                  name, why));
}

Outcome<std::string> text_of(const Document& document, const std::string& name) {
  STEPCAFControl_Writer writer;
  writer.SetColorMode(Standard_False);
  writer.SetNameMode(Standard_True);
  if (!writer.Transfer(document.handle(), STEPControl_AsIs)) return unwritable(name, "the solid was not taken");
  for (const Coloured& part : document.coloured()) {
    const bool taken = add_colour(writer.ChangeWriter().WS(), part.shape, colour_of(part.stuff));
    if (!taken) return unwritable(name, "its colour was not taken");
  }
  const Handle(StepData_StepModel) model = writer.ChangeWriter().Model();
  write_header(model, name);
  renumber_places(model);
  StepData_StepWriter lines(model);
  lines.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream text;
  if (!lines.Print(text)) return unwritable(name, "the text broke off");
  return text.str();
}

template <class Fill>
Outcome<std::string> made_text(const std::string& name, Fill fill) {
  // The kernel's writer keeps its settings and its application in common for the whole program.
  static std::mutex one_at_a_time;
  const std::lock_guard<std::mutex> alone(one_at_a_time);
  try {
    set_up_writer();
    Document document;
    fill(document);
    return text_of(document, name);
  } catch (const Standard_Failure& failure) {
    return unwritable(name, failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return unwritable(name, "memory ran out");
  }
}

}  // namespace

Outcome<std::string> step_text(const StepPart& part) {
  return made_text(part.name, [&](Document& document) { document.add(part); });
}

Outcome<std::string> step_text(const std::string& name, const std::vector<StepPart>& parts) {
  return made_text(name, [&](Document& document) { document.add_assembly(name, parts); });
}

}  // namespace prismwright
