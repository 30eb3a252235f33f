#pragma once

#include <array>
#include <vector>

#include <gp_XY.hxx>

namespace prismwright {

/// Whether two stretches cross or touch; such as share an end do not count.
bool stretches_meet(const gp_XY& a, const gp_XY& b, const gp_XY& c, const gp_XY& d);
/// Whether a closed polygon meets itself.
bool meets_itself(const std::vector<gp_XY>& polygon);
/// Whether the sides of one closed polygon meet those of another.
bool polygons_meet(const std::vector<gp_XY>& one, const std::vector<gp_XY>& other);
double area_of(const std::vector<gp_XY>& polygon);  ///< positive anticlockwise
bool is_within(const std::vector<gp_XY>& polygon, const gp_XY& place);
/// Distance from the nearest side.
double distance_from(const std::vector<gp_XY>& polygon, const gp_XY& place);

/// Divides what lies within `outline` (anticlockwise) and outside `hole` (empty: none) into triangles with the
/// polygons' own corners: indices into the outline, then the hole, anticlockwise. Throws Standard_Failure
/// where the kernel adds corners or leaves some out.
std::vector<std::array<int, 3>> triangles_between(const std::vector<gp_XY>& outline,
                                                  const std::vector<gp_XY>& hole);

}  // namespace prismwright
