#include "geometry/stl_writer.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <map>

#include <gtest/gtest.h>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TopExp_Explorer.hxx>

#include "geometry/bodies.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

using Corner = std::array<float, 3>;
using Facet = std::array<Corner, 3>;

/// Reads a binary STL file as its format says: 80 bytes, a count, then 50 bytes a facet.
std::vector<Facet> facets_of(const std::string& bytes) {
  std::uint32_t count = 0;
  std::memcpy(&count, bytes.data() + 80, sizeof count);
  EXPECT_EQ(bytes.size(), 84 + 50u * count);
  std::vector<Facet> facets(count);
  for (std::uint32_t i = 0; i < count; ++i)
    std::memcpy(&facets[i], bytes.data() + 84 + 50u * i + 12, sizeof(Facet));
  return facets;
}

double volume_mm3(const std::vector<Facet>& facets) {
  double sum = 0;
  for (const auto& [a, b, c] : facets) {
    sum += double(a[0]) * (double(b[1]) * c[2] - double(b[2]) * c[1]) +
           double(a[1]) * (double(b[2]) * c[0] - double(b[0]) * c[2]) +
           double(a[2]) * (double(b[0]) * c[1] - double(b[1]) * c[0]);
  }
  return sum / 6;
}

/// Directed edges that have no partner running the other way; 0 for a closed skin turned one way.
int open_edges(const std::vector<Facet>& facets) {
  std::map<std::pair<Corner, Corner>, int> runs;
  for (const Facet& facet : facets) {
    for (int i = 0; i < 3; ++i) {
      const Corner& a = facet[i];
      const Corner& b = facet[(i + 1) % 3];
      ++runs[{a, b}];
      --runs[{b, a}];
    }
  }
  int open = 0;
  for (const auto& [edge, balance] : runs) open += balance != 0 ? 1 : 0;
  return open;
}

gp_Pnt middle(const Facet& facet, double u, double v) {
  const double w = 1 - u - v;
  return {u * facet[0][0] + v * facet[1][0] + w * facet[2][0],
          u * facet[0][1] + v * facet[1][1] + w * facet[2][1],
          u * facet[0][2] + v * facet[1][2] + w * facet[2][2]};
}

double distance_mm(const TopoDS_Shape& skin, const gp_Pnt& place) {
  return BRepExtrema_DistShapeShape(BRepBuilderAPI_MakeVertex(place).Shape(), skin).Value();
}

/// Greatest distance from the skin of places on every `step`-th facet: middle and middles of the edges.
double worst_departure_mm(const TopoDS_Shape& shape, const std::vector<Facet>& facets, std::size_t step) {
  const TopoDS_Shape skin = TopExp_Explorer(shape, TopAbs_SHELL).Current();
  double worst = 0;
  for (std::size_t i = 0; i < facets.size(); i += step) {
    for (const auto& [u, v] : {std::pair{1 / 3.0, 1 / 3.0}, {0.5, 0.5}, {0.5, 0.0}, {0.0, 0.5}}) {
      worst = std::max(worst, distance_mm(skin, middle(facets[i], u, v)));
    }
  }
  return worst;
}

class StlOfALens : public ::testing::TestWithParam<double> {};

TEST_P(StlOfALens, IsClosedTurnedOutwardAndWithinItsChord) {
  const double chord = GetParam();
  const auto plan = plan_lens(fourth_order_bullseye(Faces::true_curve));
  ASSERT_TRUE(plan.ok());
  for (const char* mark : {"P01-C", "P01-R2", "P01-U01", "P01-L02"}) {
    SCOPED_TRACE(mark);
    const auto shape = prism_shape(*plan->find(mark));
    ASSERT_TRUE(shape.ok());
    const auto bytes = stl_bytes(mark, *shape, chord);
    ASSERT_TRUE(bytes.ok()) << bytes.problem().text;
    const auto facets = facets_of(*bytes);
    EXPECT_GT(facets.size(), 50u);
    EXPECT_EQ(open_edges(facets), 0);
    // The skin lies within the chord of the solid's: the volumes differ by less than skin x chord.
    GProp_GProps skin;
    BRepGProp::SurfaceProperties(*shape, skin);
    EXPECT_NEAR(volume_mm3(facets), kernel_volume_mm3(*shape), skin.Mass() * chord);
    EXPECT_LT(worst_departure_mm(*shape, facets, facets.size() / 40 + 1), chord);
  }
}

INSTANTIATE_TEST_SUITE_P(Within, StlOfALens, ::testing::Values(0.02, 0.05, 0.5));

}  // namespace
}  // namespace prismwright
