#pragma once

#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <TopExp.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <gp_Ax1.hxx>

#include "tests/support/random_frame.h"

namespace prismwright {

/// A door swung by the kernel alone: what the program knows of forms, rooms and reaches plays no part.
class SwungDoor {
 public:
  struct Part {
    std::string mark;
    TopoDS_Shape shape;
    bool is_prism = false;
    std::vector<gp_Pnt> points;  ///< along its edges, ends and middles among them
  };
  struct Hit {
    double angle_deg = 0;
    std::string first;
    std::string second;
  };

  explicit SwungDoor(const RandomFrame& frame) : hinge_(*frame.frame.hinge) {
    const int door = frame.plan.values.frame.door_panel;
    std::map<std::string, int> panels;
    for (const PlannedPrism& prism : frame.plan.prisms) panels[prism.mark] = prism.panel;
    for (const PrismBody& body : frame.bodies.prisms) {
      (panels.at(body.mark) == door ? moving_ : fixed_).push_back({body.mark, body.shape, true, {}});
    }
    for (const FrameBody& body : frame.metal) {
      if (body.kind == PartKind::latch) continue;
      (body.panel == door ? moving_ : fixed_).push_back({body.mark, body.shape, false, {}});
    }
    for (const FrameJoint& joint : frame.frame.joints) {
      joints_.emplace(joint.first, joint.second);
      joints_.emplace(joint.second, joint.first);
    }
    add_surroundings(frame.plan.values.frame);
    for (Part& part : moving_) part.points = along_edges(part.shape);
  }

  [[nodiscard]] const std::vector<Part>& moving() const { return moving_; }
  [[nodiscard]] const std::vector<Part>& fixed() const { return fixed_; }
  [[nodiscard]] bool may_touch(const std::string& first, const std::string& second) const {
    return joints_.contains({first, second});
  }

  [[nodiscard]] gp_Trsf turn(double angle_deg) const {
    gp_Trsf turn;
    const double radians_turned = angle_deg * std::numbers::pi / 180;
    turn.SetRotation(gp_Ax1(gp_Pnt(hinge_.place.x, hinge_.place.y, 0), gp_Dir(0, 0, 1)),
                     hinge_.opens_clockwise ? -radians_turned : radians_turned);
    return turn;
  }
  [[nodiscard]] TopoDS_Shape at(const Part& part, double angle_deg) const {
    return part.shape.Moved(TopLoc_Location(turn(angle_deg)));
  }
  [[nodiscard]] static const Part* find(const std::vector<Part>& parts, const std::string& mark) {
    for (const Part& part : parts) {
      if (part.mark == mark) return &part;
    }
    return nullptr;
  }
  /// How far a place is from a solid, by the kernel; 0 within it.
  [[nodiscard]] static double away_mm(const gp_Pnt& place, const TopoDS_Shape& shape) {
    if (BRepClass3d_SolidClassifier(shape, place, 1e-7).State() == TopAbs_IN) return 0;
    const TopoDS_Shape vertex = BRepBuilderAPI_MakeVertex(place);
    return BRepExtrema_DistShapeShape(vertex, shape, Extrema_ExtFlag_MIN).Value();
  }

  /// A place of one part and how far the other is from it, by the kernel.
  struct Sample {
    double away_mm = 0;
    std::string first;
    std::string second;
  };
  /// At an angle: places drawn by lot along the edges of moving parts, each to a fixed part drawn by lot whose
  /// box comes within `within_mm` of it.
  [[nodiscard]] std::vector<Sample> samples_at(double angle_deg, int count, double within_mm, Lot& lot) const {
    std::vector<Sample> samples;
    const auto drawn = [&](const auto& from) -> const auto& {
      return from[static_cast<std::size_t>(lot.whole(0, static_cast<int>(from.size()) - 1))];
    };
    for (int tries = 0; tries < 40 * count && static_cast<int>(samples.size()) < count; ++tries) {
      const Part& part = drawn(moving_);
      const Part& other = drawn(fixed_);
      const gp_Pnt place = drawn(part.points).Transformed(turn(angle_deg));
      Bnd_Box box = box_of(other.shape);
      box.Enlarge(within_mm);
      if (may_touch(part.mark, other.mark) || box.IsOut(place)) continue;
      samples.push_back({away_mm(place, other.shape), part.mark, other.mark});
    }
    return samples;
  }

  /// The first of many angles up to one at which a place of a moving part's edges lies within a fixed part.
  [[nodiscard]] std::optional<Hit> first_hit(double to_deg) const {
    std::vector<Target> targets;
    for (const Part& part : fixed_) targets.emplace_back(part);
    for (double angle = 0; angle <= to_deg; angle += step_after(angle)) {
      const gp_Trsf swing = turn(angle);
      for (const Part& part : moving_) {
        for (const gp_Pnt& point : part.points) {
          const gp_Pnt there = point.Transformed(swing);
          for (Target& target : targets) {
            if (!target.holds(there) || may_touch(part.mark, target.mark)) continue;
            return Hit{angle, part.mark, target.mark};
          }
        }
      }
    }
    return std::nullopt;
  }

 private:
  static constexpr int kAlongEdge = 4;
  static constexpr std::size_t kMostPoints = 24;

  // As solids that reach beyond the lens above and below.
  void add_surroundings(const FrameSettings& settings) {
    constexpr double kHigh_mm = 5000;
    if (settings.lantern_radius_mm > 0) {
      const gp_Ax2 foot(gp_Pnt(0, 0, -kHigh_mm), gp_Dir(0, 0, 1));
      const TopoDS_Shape inside = BRepPrimAPI_MakeCylinder(foot, settings.lantern_radius_mm, 2 * kHigh_mm);
      const TopoDS_Shape outside =
          BRepPrimAPI_MakeCylinder(foot, settings.lantern_radius_mm + 50, 2 * kHigh_mm);
      fixed_.push_back({"lantern-glazing", BRepAlgoAPI_Cut(outside, inside), false, {}});
    }
    const double high_mm = settings.changer_to_mm - settings.changer_from_mm;
    if (settings.changer_radius_mm > 0 && high_mm > 0) {
      const gp_Ax2 foot(gp_Pnt(0, 0, settings.changer_from_mm), gp_Dir(0, 0, 1));
      fixed_.push_back(
          {"lamp-changer", BRepPrimAPI_MakeCylinder(foot, settings.changer_radius_mm, high_mm), false, {}});
    }
  }

  // A door comes near its neighbours soon or not at all.
  static double step_after(double angle_deg) { return angle_deg < 4 ? 0.25 : angle_deg < 30 ? 1 : 3; }

  static Bnd_Box box_of(const TopoDS_Shape& shape) {
    Bnd_Box box;
    BRepBndLib::Add(shape, box, false);
    return box;
  }

  static std::vector<gp_Pnt> along_edges(const TopoDS_Shape& shape) {
    TopTools_IndexedMapOfShape edges;
    TopExp::MapShapes(shape, TopAbs_EDGE, edges);
    std::vector<gp_Pnt> points;
    for (int i = 1; i <= edges.Extent(); ++i) {
      if (BRep_Tool::Degenerated(TopoDS::Edge(edges(i)))) continue;
      const BRepAdaptor_Curve curve(TopoDS::Edge(edges(i)));
      const double from = curve.FirstParameter();
      for (int k = 0; k < kAlongEdge; ++k) {
        points.push_back(curve.Value(from + (curve.LastParameter() - from) * k / kAlongEdge));
      }
    }
    const std::size_t stride = points.size() / kMostPoints + 1;
    std::vector<gp_Pnt> some;
    for (std::size_t i = 0; i < points.size(); i += stride) some.push_back(points[i]);
    return some;
  }

  // A fixed part that is asked for many places.
  struct Target {
    explicit Target(const Part& part)
        : mark(part.mark),
          box(box_of(part.shape)),
          classifier(std::make_unique<BRepClass3d_SolidClassifier>(part.shape)) {}
    bool holds(const gp_Pnt& place) {
      if (box.IsOut(place)) return false;
      classifier->Perform(place, 1e-6);
      return classifier->State() == TopAbs_IN;
    }
    std::string mark;
    Bnd_Box box;
    std::unique_ptr<BRepClass3d_SolidClassifier> classifier;
  };

  FramePlan::Hinge hinge_;
  std::vector<Part> moving_;
  std::vector<Part> fixed_;
  std::set<std::pair<std::string, std::string>> joints_;
};

}  // namespace prismwright
