#include "geometry/profile_wire.h"

#include <algorithm>
#include <cmath>

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <GeomAPI_Interpolate.hxx>
#include <Geom_BSplineCurve.hxx>
#include <Geom_Circle.hxx>
#include <Standard_Failure.hxx>
#include <TColStd_HArray1OfBoolean.hxx>
#include <TColStd_HArray1OfReal.hxx>
#include <TColgp_Array1OfVec.hxx>
#include <TColgp_HArray1OfPnt.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Circ.hxx>
#include <gp_Pln.hxx>

namespace prismwright {

namespace {

constexpr double kShortest_mm = 1e-6;
constexpr double kClosed_mm = 1e-6;
constexpr std::size_t kPointsForFreeSlopes = 13;

/// The centre moved along the bisector so that both ends lie on the circle exactly.
SectionPoint exact_centre(const Face& face) {
  const SectionOffset chord = face.end() - face.start();
  const SectionDirection across = SectionDirection::along(chord).quarter_turn();
  const SectionPoint middle = between(face.start(), face.end(), 0.5);
  const double half = chord.length() / 2;
  const double height = std::sqrt(std::max(0.0, face.radius_mm * face.radius_mm - half * half));
  const double side = dot(face.centre - middle, across) >= 0 ? 1 : -1;
  return middle + side * height * across;
}

TopoDS_Edge arc_edge(const Face& face, const ProfilePlane& plane, const TopoDS_Vertex& from,
                     const TopoDS_Vertex& to) {
  const SectionPoint centre = exact_centre(face);
  const bool anticlockwise = cross(face.start() - centre, face.end() - centre) > 0;
  const gp_Dir normal = anticlockwise ? plane.facing() : plane.facing().Reversed();
  const double radius = distance(centre, face.start());
  const gp_Circ circle(gp_Ax2(plane.place(centre), normal, plane.outward()), radius);
  return BRepBuilderAPI_MakeEdge(circle, from, to).Edge();
}

/// Lengths along a true curve at its points. A circle's length between two of them is chord / cos^2(turn / 4)
/// but for the sixth order of the turn: a curve that runs with all but unit speed is what the kernel's
/// quadrature needs to measure it well, and unit tangents then need no scaling.
Handle(TColStd_HArray1OfReal) lengths_along(const Face& face) {
  const int count = static_cast<int>(face.points.size());
  Handle(TColStd_HArray1OfReal) lengths = new TColStd_HArray1OfReal(1, count, 0.0);
  for (int i = 1; i < count; ++i) {
    const double turn = std::asin(cross(face.tangents[i - 1], face.tangents[i]));
    const double quarter = std::cos(turn / 4);
    const double length = distance(face.points[i - 1], face.points[i]) / (quarter * quarter);
    lengths->SetValue(i + 1, lengths->Value(i) + length);
  }
  return lengths;
}

void load_slopes(GeomAPI_Interpolate& through, const Face& face, const ProfilePlane& plane) {
  if (face.points.size() >= kPointsForFreeSlopes) {
    // The kernel's own scaling of tangents bends the end pieces.
    through.Load(plane.direction(face.tangents.front()), plane.direction(face.tangents.back()), Standard_False);
    return;
  }
  const int count = static_cast<int>(face.points.size());
  TColgp_Array1OfVec slopes(1, count);
  Handle(TColStd_HArray1OfBoolean) given = new TColStd_HArray1OfBoolean(1, count, Standard_True);
  for (int i = 0; i < count; ++i) slopes.SetValue(i + 1, plane.direction(face.tangents[i]));
  through.Load(slopes, given, Standard_False);
}

Handle(Geom_BSplineCurve) true_spline(const Face& face, const ProfilePlane& plane) {
  const int count = static_cast<int>(face.points.size());
  Handle(TColgp_HArray1OfPnt) points = new TColgp_HArray1OfPnt(1, count);
  for (int i = 0; i < count; ++i) points->SetValue(i + 1, plane.place(face.points[i]));
  GeomAPI_Interpolate through(points, lengths_along(face), Standard_False, 1e-9);
  load_slopes(through, face, plane);
  through.Perform();
  if (!through.IsDone()) throw Standard_Failure("a true curve could not be drawn through its points");
  return through.Curve();
}

TopoDS_Edge edge_of(const Face& face, const ProfilePlane& plane, const TopoDS_Vertex& from,
                    const TopoDS_Vertex& to) {
  switch (face.kind) {
    case FaceKind::straight:
      break;
    case FaceKind::arc:
      return arc_edge(face, plane, from, to);
    case FaceKind::true_curve:
      return BRepBuilderAPI_MakeEdge(true_spline(face, plane), from, to).Edge();
  }
  return BRepBuilderAPI_MakeEdge(from, to).Edge();
}

std::vector<Face> faces_with_length(const Profile& profile) {
  std::vector<Face> faces;
  std::copy_if(profile.faces.begin(), profile.faces.end(), std::back_inserter(faces),
               [](const Face& f) { return distance(f.start(), f.end()) > kShortest_mm; });
  return faces;
}

}  // namespace

TopoDS_Wire profile_wire(const Profile& profile, const ProfilePlane& plane) {
  const std::vector<Face> faces = faces_with_length(profile);
  std::vector<TopoDS_Vertex> corners;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const Face& before = faces[(i + faces.size() - 1) % faces.size()];
    if (distance(before.end(), faces[i].start()) > 2 * kClosed_mm) {
      throw Standard_Failure("the outline of the section is not closed");
    }
    corners.push_back(BRepBuilderAPI_MakeVertex(plane.place(faces[i].start())).Vertex());
  }
  BRepBuilderAPI_MakeWire wire;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    wire.Add(edge_of(faces[i], plane, corners[i], corners[(i + 1) % corners.size()]));
  }
  return wire.Wire();
}

TopoDS_Face profile_face(const Profile& profile, const ProfilePlane& plane) {
  const gp_Pln flat(gp_Pnt(0, 0, 0), plane.facing());
  return BRepBuilderAPI_MakeFace(flat, profile_wire(profile, plane)).Face();
}

}  // namespace prismwright
