#include "geometry/likeness.h"

#include <cmath>

#include <fmt/format.h>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopLoc_Location.hxx>
#include <gp_Ax1.hxx>
#include <gp_Mat.hxx>

namespace prismwright {
namespace {

constexpr double kPerUnit = 1e7;
constexpr double kLean = 1e-6;

}  // namespace

std::string place_word(const gp_Trsf& place) {
  std::string word;
  for (int row = 1; row <= 3; ++row) {
    for (int column = 1; column <= 4; ++column) {
      word += fmt::format("{} ", std::llround(place.Value(row, column) * kPerUnit));
    }
  }
  return word;
}

std::string solid_word(const TopoDS_Shape& shape) {
  return fmt::format("{} {}", fmt::ptr(shape.TShape().get()), static_cast<int>(shape.Orientation()));
}

TopoDS_Shape as_made(const TopoDS_Shape& shape) { return shape.Located(TopLoc_Location()); }

bool mirrors_itself(const TopoDS_Shape& made) {
  GProp_GProps props;
  BRepGProp::VolumeProperties(made, props);
  const gp_Mat moments = props.MatrixOfInertia();
  const double size = std::sqrt(moments.Value(1, 1) / std::abs(props.Mass()));
  const double moment = std::abs(moments.Value(1, 1));
  return std::abs(props.CentreOfMass().Y()) < kLean * size && std::abs(moments.Value(1, 2)) < kLean * moment &&
         std::abs(moments.Value(2, 3)) < kLean * moment;
}

UprightTurn upright_turn(const gp_Trsf& place) {
  const double cosine = place.Value(1, 1);
  const double sine = place.Value(2, 1);
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), std::atan2(sine, cosine));
  return {place_word(turn) == place_word(place), std::atan2(sine, cosine)};
}

}  // namespace prismwright
