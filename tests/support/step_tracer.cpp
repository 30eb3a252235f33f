#include "tests/support/step_tracer.h"

#include <cmath>
#include <optional>

#include <BRepAdaptor_Surface.hxx>
#include <BRepLProp_SLProps.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_PrinterOStream.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Lin.hxx>

namespace step_tracer {

namespace {

constexpr double kAway_mm = 1e-5;  ///< a face is met again only farther off than this
constexpr double kFar_mm = 1e5;
constexpr int kMostFaces = 20;

struct Meeting {
  gp_Pnt place;
  gp_Dir normal;
};

Vector plain(const gp_XYZ& v) { return {v.X(), v.Y(), v.Z()}; }

/// Snell's law in vectors; blank where the light is wholly reflected. `n1` is the index on the ray's side.
std::optional<gp_Dir> refracted(const gp_Dir& ray, const gp_Dir& normal, double n1, double n2) {
  const gp_Vec d(ray);
  const gp_Vec n = ray.Dot(normal) < 0 ? gp_Vec(normal) : -gp_Vec(normal);
  const double ratio = n1 / n2;
  const double cosine = -d.Dot(n);
  const double rest = 1 - ratio * ratio * (1 - cosine * cosine);
  if (rest < 0) return std::nullopt;
  return gp_Dir(ratio * d + (ratio * cosine - std::sqrt(rest)) * n);
}

gp_Dir reflected(const gp_Dir& ray, const gp_Dir& normal) {
  return gp_Dir(gp_Vec(ray) - 2 * ray.Dot(normal) * gp_Vec(normal));
}

}  // namespace

struct StepTracer::Inside {
  TopoDS_Shape solid;
  mutable IntCurvesFace_ShapeIntersector faces;

  [[nodiscard]] std::optional<Meeting> next(const gp_Lin& ray) const {
    faces.Perform(ray, kAway_mm, kFar_mm);
    int nearest = 0;
    for (int i = 1; i <= faces.NbPnt(); ++i) {
      if (nearest == 0 || faces.WParameter(i) < faces.WParameter(nearest)) nearest = i;
    }
    if (nearest == 0) return std::nullopt;
    const BRepAdaptor_Surface surface(faces.Face(nearest));
    BRepLProp_SLProps local(surface, faces.UParameter(nearest), faces.VParameter(nearest), 1, 1e-12);
    if (!local.IsNormalDefined()) return std::nullopt;
    return Meeting{faces.Pnt(nearest), local.Normal()};
  }
};

StepTracer::StepTracer(const std::string& step_path) : inside_(std::make_unique<Inside>()) {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_PrinterOStream));
  STEPControl_Reader reader;
  if (reader.ReadFile(step_path.c_str()) != IFSelect_RetDone) return;
  reader.TransferRoots();
  int solids = 0;
  for (TopExp_Explorer it(reader.OneShape(), TopAbs_SOLID); it.More(); it.Next()) {
    inside_->solid = it.Current();
    ++solids;
  }
  if (solids != 1) inside_->solid.Nullify();
  if (solids == 1) inside_->faces.Load(inside_->solid, 1e-9);
}

StepTracer::~StepTracer() = default;

bool StepTracer::ready() const { return !inside_->solid.IsNull(); }

TracedRay StepTracer::trace(const Vector& direction, double index, const Vector& from) const {
  TracedRay traced;
  gp_Lin ray(gp_Pnt(from[0], from[1], from[2]), gp_Dir(direction[0], direction[1], direction[2]));
  bool within = false;
  while (traced.faces < kMostFaces) {
    const auto meeting = inside_->next(ray);
    if (!meeting) break;
    traced.met = true;
    ++traced.faces;
    const auto through = refracted(ray.Direction(), meeting->normal, within ? index : 1, within ? 1 : index);
    if (through) {
      within = !within;
    } else {
      ++traced.total;
    }
    ray = gp_Lin(meeting->place, through ? *through : reflected(ray.Direction(), meeting->normal));
  }
  traced.left = traced.met && !within && traced.faces < kMostFaces;
  traced.direction = plain(ray.Direction().XYZ());
  traced.place = plain(ray.Location().XYZ());
  return traced;
}

}  // namespace step_tracer
