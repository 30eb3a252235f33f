#pragma once

#include "geometry/pictures/picture_scene.h"
#include "geometry/pictures/view_lines.h"
#include "geometry/pictures/view_plane.h"

namespace prismwright {

/// How places of lines are seen from the eye.
class LineSight {
 public:
  enum State { hidden = 0, visible = 1, outline = 2 };

  /// `chord_mm`: that the facets were made with. `beside_mm`: how far beside a line the background is looked
  /// for; a narrower slit makes no outline.
  LineSight(const PictureScene& scene, const ViewPlane& plane, double chord_mm, double beside_mm)
      : scene_(scene), plane_(plane), chord_mm_(chord_mm), beside_mm_(beside_mm) {}

  /// Glass and metal both hide. `outline`: nothing at all stands on one side of the place.
  [[nodiscard]] State state(const DrawnNode& node, const DrawnLine& line) const;
  /// Layers of glass (faces turned to the eye) before the place; -1 behind metal, be it the line's
  /// own (`of_glass`: the line's solid is glass).
  [[nodiscard]] int glass_before(const DrawnNode& node, const DrawnLine& line, bool of_glass,
                                 std::vector<Meeting>& met) const;

 private:
  /// Whether both faces of an edge are turned away from the eye: its own solid hides it.
  [[nodiscard]] bool is_turned_away(const DrawnNode& node, const DrawnLine& line) const;
  [[nodiscard]] SpacePoint clear_of(const DrawnNode& node, const DrawnLine& line) const;
  [[nodiscard]] bool is_free(SpacePoint place) const;
  [[nodiscard]] bool stands_free(const DrawnNode& node) const;

  const PictureScene& scene_;
  const ViewPlane& plane_;
  double chord_mm_;
  double beside_mm_;
};

}  // namespace prismwright
