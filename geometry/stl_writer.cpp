#include "geometry/stl_writer.h"

#include <new>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "geometry/mesh_of_solid.h"
#include "geometry/mesh_stl.h"

namespace prismwright {

namespace {

constexpr double kFinestChord_mm = 0.001;
constexpr double kCoarsestChord_mm = 5;
/// The mesher holds its deflection at places it looks at; half of what is asked leaves room between them.
constexpr double kShareOfChord = 0.5;

Problem unmeshed(const std::string& mark, std::string_view why) {
  return request_problem(
      "stl", mark,
      fmt::format("{}: its skin could not be divided into facets ({}). Choose another chord tolerance.", mark,
                  why));
}

}  // namespace

Outcome<std::string> stl_bytes(const std::string& mark, const TopoDS_Shape& shape, double chord_mm) {
  try {
    const auto skin = skin_of(shape, kShareOfChord * chord_mm);
    if (!skin) return unmeshed(mark, "a face has none");
    if (skin->facets.empty()) return unmeshed(mark, "there are none");
    return mesh_stl_bytes(mark, *skin);
  } catch (const Standard_Failure& failure) {
    return unmeshed(mark, failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return unmeshed(mark, "memory ran out");
  }
}

Done check_stl_chord(double chord_mm) {
  if (chord_mm >= kFinestChord_mm && chord_mm <= kCoarsestChord_mm) return {};
  return request_problem(
      "chord", "stl_chord_mm",
      fmt::format("The chord tolerance {:g} mm lies outside {:g} to {:g} mm. Give one within.", chord_mm,
                  kFinestChord_mm, kCoarsestChord_mm));
}

}  // namespace prismwright
