#pragma once

#include <memory>
#include <string>
#include <vector>

#include <Bnd_Box.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Pln.hxx>

#include "core/frame/plate_polygons.h"
#include "geometry/room_field.h"

namespace prismwright {

/// A flat face behind whose plane the whole solid lies.
struct CapFace {
  gp_Pln plane;          ///< its normal looks out of the solid
  PlateRegion outlines;  ///< in the plane's own axes, within 1e-5 mm, holes among them
  RegionField field;     ///< of the outlines
};

/// A solid in the frame that it was made in, with what measuring asks of it again and again. Never changed once
/// made: several threads may use one.
class SolidForm {
 public:
  explicit SolidForm(const TopoDS_Shape& made);

  /// A ball that holds a face or an edge.
  struct Ball {
    gp_Pnt middle;
    double radius_mm = 0;
  };
  struct EdgeForm {
    TopoDS_Edge edge;
    Ball ball;
  };
  struct FaceForm {
    TopoDS_Face face;
    Ball ball;
    double low_a = 0;
    double high_a = 0;
    double low_b = 0;
    double high_b = 0;
    double mm_per_a = 1;  ///< typical length of a step of one in the parameter
    double mm_per_b = 1;
    RegionField
        bounds;  ///< in (a mm_per_a, b mm_per_b): circles of flat faces as they are, else within 1e-5 mm
    [[nodiscard]] bool holds(double a, double b) const;
  };

  [[nodiscard]] const TopoDS_Shape& shape() const { return made_; }
  [[nodiscard]] const std::vector<EdgeForm>& edges() const { return edges_; }
  [[nodiscard]] const std::vector<FaceForm>& faces() const { return faces_; }
  [[nodiscard]] const std::vector<gp_Pnt>& corners() const { return corners_; }
  [[nodiscard]] const std::vector<CapFace>& caps() const { return caps_; }
  /// Places all over the surface; the solid reaches no more than `samples_slack_mm` past what they span.
  [[nodiscard]] const std::vector<gp_Pnt>& samples() const { return samples_; }
  [[nodiscard]] double samples_slack_mm() const { return slack_mm_; }
  [[nodiscard]] const Bnd_Box& box() const { return box_; }
  /// Equal for solids whose corners, edges and faces agree within 1e-6 mm in the order they were made.
  [[nodiscard]] const std::string& word() const { return word_; }

 private:
  void find_edges();
  void find_faces();
  void find_caps();

  TopoDS_Shape made_;
  std::vector<EdgeForm> edges_;
  std::vector<FaceForm> faces_;
  std::vector<gp_Pnt> corners_;
  std::vector<gp_Pnt> samples_;
  double slack_mm_ = 0;
  std::vector<CapFace> caps_;
  Bnd_Box box_;
  std::string word_;
};

/// A word that is equal for solids whose corners, edges and faces agree within 1e-6 mm, in the order in which
/// they were made.
std::string form_word(const TopoDS_Shape& made);

}  // namespace prismwright
