#pragma once

#include <string>

#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

namespace prismwright {

/// Numbers of a placing, as a word that is equal for places within 1e-7 (mm, or parts of a turn).
std::string place_word(const gp_Trsf& place);

/// A shape's own solid, wherever it stands: shapes that share one are congruent.
std::string solid_word(const TopoDS_Shape& shape);

/// The shape in the frame that it was made in, before it was placed.
TopoDS_Shape as_made(const TopoDS_Shape& shape);

/// True where the solid, as made, is its own mirror image in the plane y = 0: its centre of gravity lies there
/// and its moments do not lean out of it (within 1e-6 of its size). Rigid moves of a mirror-symmetric solid are
/// told apart by this; the solid must have been symmetric before it was moved.
bool mirrors_itself(const TopoDS_Shape& made);

/// The angle of a placing that turns about the upright axis and does nothing else, radians; `is_turn` tells
/// whether it is one.
struct UprightTurn {
  bool is_turn = false;
  double angle = 0;
};
UprightTurn upright_turn(const gp_Trsf& place);

}  // namespace prismwright
