#include "geometry/master_faces.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BOPTools_AlgoTools3D.hxx>
#include <IntTools_Context.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Pnt2d.hxx>

#include "core/works/stock_profile.h"
#include "geometry/convert.h"

namespace prismwright {

namespace {

constexpr double kOnFace_mm = 1e-3;
constexpr double kOnPlane_mm = 1e-4;
constexpr double kChord_mm = 1e-4;

double distance_to(const std::vector<SectionPoint>& chain, SectionPoint p) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    const SectionOffset step = chain[i + 1] - chain[i];
    const double share = std::clamp(dot(p - chain[i], step) / std::max(dot(step, step), 1e-30), 0.0, 1.0);
    least = std::min(least, distance(p, chain[i] + share * step));
  }
  return least;
}

/// Names the faces of one prism.
class FaceNamer {
 public:
  FaceNamer(const PlannedPrism& stocked, const WorksSettings& settings)
      : prism_(stocked), settings_(settings), to_axis_(axis_place(stocked).Inverted()) {
    for (const Face& face : stocked.profile.faces) chains_.push_back(points_along(face, kChord_mm));
    double sum = 0;
    for (const auto& chain : chains_) {
      for (const SectionPoint p : chain) sum += p.z;
    }
    below_ = stocked.turning == TurningAxis::panel && sum < 0;
  }

  [[nodiscard]] MasterFace name(const TopoDS_Face& face) const {
    const gp_Pnt place = place_within(face);
    const Trim& trim = prism_.trim;
    if (prism_.turning == TurningAxis::lens && trim.flat_inner_mm &&
        std::abs(place.X() - *trim.flat_inner_mm) < kOnPlane_mm) {
      return {"flat inner", true, stock_on_flat_inner(settings_)};
    }
    const gp_Pnt own = place.Transformed(to_axis_);
    if (const Face* turned = turned_face(own)) {
      return {words_of(turned->role), is_optical(turned->role), stock_on(turned->role, settings_)};
    }
    const bool half = prism_.turning == TurningAxis::panel && trim.half != Half::whole;
    const double level = trim.half == Half::upper ? trim.half_gap_mm : -trim.half_gap_mm;
    const bool on_level = half && std::abs(own.Z() - level) < kOnPlane_mm;
    return {on_level ? "level joint" : "end", false, stock_on_cuts(settings_)};
  }

 private:
  static gp_Pnt place_within(const TopoDS_Face& face) {
    gp_Pnt place;
    gp_Pnt2d parameters;
    const Handle(IntTools_Context) context = new IntTools_Context;
    if (BOPTools_AlgoTools3D::PointInFace(face, place, parameters, context) != 0) {
      throw Standard_Failure("no place was found within a face");
    }
    return place;
  }

  [[nodiscard]] const Face* turned_face(const gp_Pnt& own) const {
    const SectionPoint p = prism_.turning == TurningAxis::lens
                               ? SectionPoint{std::hypot(own.X(), own.Y()), own.Z()}
                               : SectionPoint{own.X(), (below_ ? -1 : 1) * std::hypot(own.Y(), own.Z())};
    const Face* nearest = nullptr;
    double least = kOnFace_mm;
    for (std::size_t i = 0; i < chains_.size(); ++i) {
      if (prism_.profile.faces[i].role == FaceRole::axis) continue;
      const double away = distance_to(chains_[i], p);
      if (away >= least) continue;
      least = away;
      nearest = &prism_.profile.faces[i];
    }
    return nearest;
  }

  const PlannedPrism& prism_;
  const WorksSettings& settings_;
  gp_Trsf to_axis_;
  std::vector<std::vector<SectionPoint>> chains_;
  bool below_ = false;
};

}  // namespace

std::vector<MasterFace> casting_faces(const TopoDS_Shape& casting, const PlannedPrism& stocked,
                                      const WorksSettings& settings) {
  const FaceNamer namer(stocked, settings);
  std::vector<MasterFace> faces;
  for (TopExp_Explorer it(casting, TopAbs_FACE); it.More(); it.Next()) {
    faces.push_back(namer.name(TopoDS::Face(it.Current())));
  }
  return faces;
}

}  // namespace prismwright
