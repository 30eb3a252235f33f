#include "ui/views/lens_cut.h"

#include <array>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

/// Appends the segment in which the plane `n . p = d` meets the facet, if it does.
void add_meeting(const std::array<gp_XYZ, 3>& corner, const gp_XYZ& n, double d, const gp_Trsf& place,
                 std::vector<gp_Pnt>& ends) {
  const std::array<double, 3> height = {n * corner[0] - d, n * corner[1] - d, n * corner[2] - d};
  std::array<gp_Pnt, 2> found;
  std::size_t count = 0;
  for (std::size_t i = 0; i < 3 && count < 2; ++i) {
    const std::size_t j = (i + 1) % 3;
    if ((height[i] < 0) == (height[j] < 0)) continue;
    const double share = height[i] / (height[i] - height[j]);
    found[count++] = gp_Pnt(corner[i] * (1 - share) + corner[j] * share);
  }
  if (count != 2) return;
  ends.push_back(found[0].Transformed(place));
  ends.push_back(found[1].Transformed(place));
}

bool box_meets(const Bnd_Box& box, const gp_XYZ& n, double d) {
  const gp_XYZ low = box.CornerMin().XYZ();
  const gp_XYZ high = box.CornerMax().XYZ();
  const gp_XYZ half = (high - low) * 0.5;
  const double reach = std::abs(n.X()) * half.X() + std::abs(n.Y()) * half.Y() + std::abs(n.Z()) * half.Z();
  return std::abs(n * ((low + high) * 0.5) - d) <= reach;
}

void add_part(const PlacedPart& part, const gp_Vec& away, double offset_mm, std::vector<gp_Pnt>& ends) {
  // The plane is brought into the part's own frame: one plane instead of thousands of nodes.
  const gp_Trsf back = part.place.Inverted();
  const gp_XYZ n = away.Transformed(back).XYZ();
  const double d = n * gp_Pnt(away.XYZ() * offset_mm).Transformed(back).XYZ();
  if (!box_meets(part.mesh->box, n, d)) return;
  const Poly_Triangulation& facets = *part.mesh->outside;
  for (int t = 1; t <= facets.NbTriangles(); ++t) {
    int a = 0;
    int b = 0;
    int c = 0;
    facets.Triangle(t).Get(a, b, c);
    add_meeting({facets.Node(a).XYZ(), facets.Node(b).XYZ(), facets.Node(c).XYZ()}, n, d, part.place, ends);
  }
}

}  // namespace

gp_Vec LensCut::away() const {
  if (kind == Kind::level) return {0, 0, 1};
  const double a = radians(azimuth_deg);
  return {std::sin(a), -std::cos(a), 0};
}

Handle(Graphic3d_ArrayOfSegments) cut_lines(const LensCut& cut, const std::vector<PlacedPart>& parts) {
  if (cut.kind == LensCut::Kind::none) return nullptr;
  std::vector<gp_Pnt> ends;
  for (const PlacedPart& part : parts) add_part(part, cut.away(), cut.offset_mm(), ends);
  if (ends.empty()) return nullptr;
  Handle(Graphic3d_ArrayOfSegments) lines = new Graphic3d_ArrayOfSegments(static_cast<int>(ends.size()));
  for (const gp_Pnt& end : ends) lines->AddVertex(end);
  return lines;
}

}  // namespace prismwright
