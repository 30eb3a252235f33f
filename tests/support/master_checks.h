#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Section.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <GC_MakePlane.hxx>
#include <Geom_Plane.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "core/base/angle.h"
#include "core/lens/trimmed_ring.h"
#include "geometry/convert.h"
#include "geometry/master.h"
#include "tests/support/stock_checks.h"

namespace prismwright {

/// How far a master, shrunk by its factors and with its stock taken off, is from its prism.
struct MasterErrors {
  double faces_mm = 0;    ///< worst of all places sampled on the master's own faces
  double corners_mm = 0;  ///< worst of the corners of its section
  double curves_mm = 0;   ///< worst of all other places of its section
  int places = 0;
  int sections = 0;
  void take(const MasterErrors& other) {
    faces_mm = std::max(faces_mm, other.faces_mm);
    corners_mm = std::max(corners_mm, other.corners_mm);
    curves_mm = std::max(curves_mm, other.curves_mm);
    places += other.places;
    sections += other.sections;
  }
};

/// Holds the faces of a master against the plan of its prism, by plain geometry: a place of the master is
/// shrunk along depth, length and height, and then measured to the turned profile or the planes of the trim.
class MasterCheck {
 public:
  MasterCheck(const MasterBody& master, const WorksSettings& settings) : master_(master), settings_(settings) {
    for (const Face& face : prism().profile.faces) chains_.push_back(points_along(face, 1e-5));
    double sum = 0;
    for (const auto& chain : chains_) {
      for (const SectionPoint p : chain) sum += p.z;
    }
    below_ = prism().turning == TurningAxis::panel && sum < 0;
  }

  MasterErrors faces() {
    MasterErrors errors;
    const TopoDS_Shape own = BRepBuilderAPI_Copy(master_.shape, Standard_False, Standard_False).Shape();
    BRepMesh_IncrementalMesh mesher(own, 0.3, Standard_False, 0.2, Standard_False);
    std::size_t at = 0;
    for (TopExp_Explorer it(own, TopAbs_FACE); it.More(); it.Next(), ++at) {
      for (const gp_Pnt& place : places_on(TopoDS::Face(it.Current()))) {
        ++errors.places;
        errors.faces_mm = std::max(errors.faces_mm, error_at(master_.faces[at], shrunk(place)));
      }
    }
    return errors;
  }

  /// The master cut through by a half plane from its turning line, where the whole section is kept. Every
  /// corner of the prism must lie off both its faces by their stock, and so must every place of every face.
  MasterErrors section() {
    MasterErrors errors;
    const auto angle = whole_section_angle();
    if (!angle) return errors;
    const auto cut = section_at(*angle);
    const auto& faces = prism().profile.faces;
    for (std::size_t i = 0; i < faces.size(); ++i) {
      if (faces[i].role == FaceRole::axis) continue;
      const auto places = points_along(faces[i], 5e-3);
      for (std::size_t k = 0; k < places.size(); ++k) {
        double away = std::numeric_limits<double>::infinity();
        for (const auto& chain : cut[i]) away = std::min(away, foot_on(chain, places[k]).away_mm);
        double& worst = k == 0 || k + 1 == places.size() ? errors.corners_mm : errors.curves_mm;
        worst = std::max(worst, std::abs(away - stock_of(i)));
      }
    }
    errors.sections = 1;
    return errors;
  }

 private:
  [[nodiscard]] const PlannedPrism& prism() const { return master_.prism; }

  [[nodiscard]] double stock_of(std::size_t i) const {
    const Face& face = prism().profile.faces[i];
    if (face.role == FaceRole::land) return face.kind == FaceKind::arc ? settings_.stock_mm : 0;
    if (settings_.stock_faces == StockFaces::all) return settings_.stock_mm;
    const bool joint = face.role == FaceRole::joint_upper || face.role == FaceRole::joint_lower;
    return joint ? 0 : settings_.stock_mm;
  }

  /// 1 - s/100 along each of the three directions, written out.
  [[nodiscard]] gp_Pnt shrunk(const gp_Pnt& p) const {
    const bool lens = prism().turning == TurningAxis::lens;
    const Trim& trim = prism().trim;
    const double turn = lens ? radians((trim.clockwise_side_deg + trim.anticlockwise_side_deg) / 2) : 0;
    const double depth =
        (p.X() * std::cos(turn) + p.Y() * std::sin(turn)) * (1 - settings_.shrink_depth_percent / 100);
    const double length =
        (p.Y() * std::cos(turn) - p.X() * std::sin(turn)) * (1 - settings_.shrink_length_percent / 100);
    return {depth * std::cos(turn) - length * std::sin(turn), depth * std::sin(turn) + length * std::cos(turn),
            p.Z() * (1 - settings_.shrink_height_percent / 100)};
  }
  [[nodiscard]] gp_Pnt enlarged(const gp_Pnt& p) const {
    const SpacePoint q = master_.stretch.of_master({p.X(), p.Y(), p.Z()});
    return {q.x, q.y, q.z};
  }

  [[nodiscard]] SectionPoint in_section(const gp_Pnt& p) const {
    const gp_Pnt own = p.Transformed(axis_place(prism()).Inverted());
    if (prism().turning == TurningAxis::lens) return {std::hypot(own.X(), own.Y()), own.Z()};
    return {own.X(), (below_ ? -1 : 1) * std::hypot(own.Y(), own.Z())};
  }

  [[nodiscard]] double error_at(const MasterFace& face, const gp_Pnt& p) const {
    const double cut_stock = settings_.stock_faces == StockFaces::all ? settings_.stock_mm : 0;
    const Trim& trim = prism().trim;
    if (face.name == "flat inner") return std::abs(p.X() - (*trim.flat_inner_mm - settings_.stock_mm));
    if (face.name == "level joint") {
      const double z = p.Transformed(axis_place(prism()).Inverted()).Z();
      return std::abs((trim.half == Half::upper ? z : -z) - (trim.half_gap_mm - cut_stock));
    }
    if (face.name == "end") {
      const double a = radians(trim.clockwise_side_deg);
      const double b = radians(trim.anticlockwise_side_deg);
      const double set_back = trim.set_back_mm - cut_stock;
      return std::min(std::abs(-p.X() * std::sin(a) + p.Y() * std::cos(a) - set_back),
                      std::abs(p.X() * std::sin(b) - p.Y() * std::cos(b) - set_back));
    }
    return profile_error(in_section(p));
  }

  /// From the nearest face of the prism, moved. Beyond the end of a straight face or an arc, from its line or
  /// circle; beyond that of a true curve nothing is left to be the prism's.
  [[nodiscard]] double profile_error(SectionPoint p) const {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < chains_.size(); ++i) {
      const Face& face = prism().profile.faces[i];
      const FaceFoot foot = foot_on(chains_[i], p);
      if (foot.away_mm > 20 * settings_.stock_mm + 1) continue;
      if (face.kind == FaceKind::straight) {
        const auto along = SectionDirection::along(face.end() - face.start());
        least = std::min(least, std::abs(-cross(along, p - face.start()) - stock_of(i)));
      } else if (face.kind == FaceKind::arc) {
        const bool full = cross(face.start() - face.centre, face.end() - face.centre) > 0;
        const double out = (distance(p, face.centre) - face.radius_mm) * (full ? 1 : -1);
        least = std::min(least, std::abs(out - stock_of(i)));
      } else {
        least = std::min(least, foot.within ? std::abs(foot.away_mm - stock_of(i)) : 0.0);
      }
    }
    return least;
  }

  static std::vector<gp_Pnt> places_on(const TopoDS_Face& face) {
    TopLoc_Location where;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, where);
    std::vector<gp_Pnt> places;
    if (mesh.IsNull()) return places;
    const BRepAdaptor_Surface surface(face, Standard_False);
    for (int i = 1; i <= mesh->NbNodes(); ++i) {
      const gp_Pnt2d at = mesh->UVNode(i);
      places.push_back(surface.Value(at.X(), at.Y()));
    }
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
      int a = 0, b = 0, c = 0;
      mesh->Triangle(i).Get(a, b, c);
      const gp_XY at = (mesh->UVNode(a).XY() + mesh->UVNode(b).XY() + mesh->UVNode(c).XY()) / 3;
      places.push_back(surface.Value(at.X(), at.Y()));
    }
    return places;
  }

  [[nodiscard]] std::optional<double> whole_section_angle() const {
    const TrimmedRing ring(master_.stocked);
    double from = -10;
    double to = 10;
    for (const SectionPoint p : polygon_of(ring.profile(), 0.05)) {
      if (prism().turning == TurningAxis::panel && p.z < 1e-6) continue;
      const auto kept = ring.kept(p);
      if (!kept) {
        if (prism().trim.flat_inner_mm) continue;
        return std::nullopt;
      }
      from = std::max(from, kept->from);
      to = std::min(to, kept->to);
    }
    if (from >= to) return std::nullopt;
    const double middle = (from + to) / 2;
    return prism().turning == TurningAxis::panel && prism().trim.half == Half::lower ? -middle : middle;
  }

  using Chain = std::vector<SectionPoint>;

  /// Chords of the section of the shrunk master, for each face of the profile, carried on a little at both
  /// ends.
  [[nodiscard]] std::vector<std::vector<Chain>> section_at(double angle) const {
    const ProfilePlane plane(prism().turning, angle);
    const gp_Trsf place = axis_place(prism());
    const auto at = [&](SectionPoint p) { return enlarged(plane.place(p).Transformed(place)); };
    const Handle(Geom_Plane) flat = GC_MakePlane(at({0, 0}), at({100, 0}), at({0, 100})).Value();
    BRepAlgoAPI_Section section(master_.shape, flat, Standard_False);
    section.Build();
    std::vector<std::vector<Chain>> by_face(chains_.size());
    for (TopExp_Explorer it(section.Shape(), TopAbs_EDGE); it.More(); it.Next()) {
      Chain chain;
      for (const gp_Pnt& p : places_along(TopoDS::Edge(it.Current()))) {
        // The other half of a whole ring shows in the same plane.
        const gp_Pnt own = shrunk(p).Transformed(place.Inverted());
        if (gp_Vec(own.XYZ()).Dot(gp_Vec(plane.outward())) > -1e-6) chain.push_back(in_section(shrunk(p)));
      }
      if (chain.size() > 10) by_face[nearest_face(chain)].push_back(carried_on(chain));
    }
    return by_face;
  }

  static std::vector<gp_Pnt> places_along(const TopoDS_Edge& edge) {
    const BRepAdaptor_Curve curve(edge);
    constexpr int kPieces = 800;
    std::vector<gp_Pnt> places;
    for (int i = 0; i <= kPieces; ++i) {
      const double share = i / double(kPieces);
      places.push_back(curve.Value(curve.FirstParameter() * (1 - share) + curve.LastParameter() * share));
    }
    return places;
  }

  [[nodiscard]] std::size_t nearest_face(const Chain& chain) const {
    std::size_t nearest = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < chains_.size(); ++i) {
      double sum = 0;
      for (const std::size_t k : {chain.size() / 4, chain.size() / 2, 3 * chain.size() / 4}) {
        sum += std::abs(signed_mm(i, chain[k]) - stock_of(i));
      }
      if (sum >= least) continue;
      least = sum;
      nearest = i;
    }
    return nearest;
  }

  /// Out of the glass, from the face itself.
  [[nodiscard]] double signed_mm(std::size_t i, SectionPoint p) const {
    const Chain& chain = chains_[i];
    double least = std::numeric_limits<double>::infinity();
    double signed_least = 0;
    for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
      const double away = foot_on({chain[k], chain[k + 1]}, p).away_mm;
      if (away >= least) continue;
      least = away;
      signed_least = cross(chain[k + 1] - chain[k], p - chain[k]) > 0 ? -away : away;
    }
    return signed_least;
  }

  /// The chain with a few millimetres more at both ends, along the circle through its last places.
  static Chain carried_on(const Chain& chain) {
    Chain longer = chain;
    for (int end = 0; end < 2; ++end) {
      std::reverse(longer.begin(), longer.end());
      const std::size_t n = longer.size() - 1;
      const SectionPoint last = longer[n];
      const SectionOffset one = longer[n - 40 < n ? n - 40 : 0] - last;
      const SectionOffset two = longer[n - 80 < n ? n - 80 : 0] - last;
      // Curvature of the circle through three places, and its tangent at the last.
      const double bend =
          2 * cross(one, two) / (one.length() * two.length() * distance(last + one, last + two));
      const double turn = std::asin(std::clamp(bend * one.length() / 2, -1.0, 1.0));
      const double heading = SectionDirection::along(SectionOffset{-one.r, -one.z}).elevation() - turn;
      for (int i = 1; i <= 60; ++i) {
        const double way = 0.05 * i;
        longer.push_back(last + way * SectionDirection::at(heading - bend * way / 2));
      }
    }
    return longer;
  }

  const MasterBody& master_;
  const WorksSettings& settings_;
  std::vector<std::vector<SectionPoint>> chains_;
  bool below_ = false;
};

}  // namespace prismwright
