#pragma once

#include <string>

#include <gp_Trsf.hxx>

namespace prismwright {

/// Numbers of a placing, as a word that is equal for places within 1e-7 (mm, or parts of a turn).
std::string place_word(const gp_Trsf& place);

/// The angle of a placing that turns about the upright axis and does nothing else, radians; `is_turn` tells
/// whether it is one.
struct UprightTurn {
  bool is_turn = false;
  double angle = 0;
};
UprightTurn upright_turn(const gp_Trsf& place);

/// Whether the placing leaves everything where it is, within 1e-7.
bool is_at_rest(const gp_Trsf& place);

}  // namespace prismwright
