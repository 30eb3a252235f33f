#include "geometry/dxf_writer.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>

#include <dl_creationadapter.h>
#include <dl_dxf.h>
#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "core/drawing/section_images.h"
#include "geometry/section_drawing_files.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

/// A line or an arc as dxflib, a reader of other hands, gives it back: as many places along it.
struct Track {
  std::vector<SectionPoint> places;
  bool arc = false;
};

class Reader : public DL_CreationAdapter {
 public:
  explicit Reader(const std::string& bytes) {
    std::stringstream stream(bytes);
    DL_Dxf file;
    read = file.in(stream, this);
  }

  void addLayer(const DL_LayerData& layer) override { layers.insert(layer.name); }
  void addLine(const DL_LineData& line) override {
    tracks[attributes.getLayer()].push_back({{{line.x1, line.y1}, {line.x2, line.y2}}, false});
  }
  void addArc(const DL_ArcData& arc) override {
    Track track;
    track.arc = true;
    const double sweep = std::fmod(arc.angle2 - arc.angle1 + 360, 360);
    constexpr int kSteps = 400;
    for (int i = 0; i <= kSteps; ++i) {
      const double angle = radians(arc.angle1 + sweep * i / kSteps);
      track.places.push_back(SectionPoint{arc.cx, arc.cy} + arc.radius * SectionDirection::at(angle));
    }
    tracks[attributes.getLayer()].push_back(std::move(track));
  }
  void addCircle(const DL_CircleData& circle) override { circles.push_back({circle.cx, circle.cy}); }
  void addText(const DL_TextData& text) override { texts[attributes.getLayer()].push_back(text.text); }
  void addPolyline(const DL_PolylineData& polyline) override { closed.push_back((polyline.flags & 1) != 0); }
  void addVertex(const DL_VertexData& vertex) override { corners.push_back({vertex.x, vertex.y}); }
  void setVariableString(const std::string& key, const std::string& value, int) override {
    if (key == "$ACADVER") version = value;
  }

  bool read = false;
  std::string version;
  std::set<std::string> layers;
  std::map<std::string, std::vector<Track>> tracks;
  std::map<std::string, std::vector<std::string>> texts;
  std::vector<SectionPoint> circles;
  std::vector<SectionPoint> corners;
  std::vector<bool> closed;
};

using Ring = std::vector<SectionPoint>;

constexpr double kJoined_mm = 1e-8;

/// Closed rings of places from pieces that follow each other; the test fails where one does not join.
std::vector<Ring> rings_of(const std::vector<Track>& tracks) {
  std::vector<Ring> rings;
  Ring ring;
  for (std::size_t i = 0; i < tracks.size(); ++i) {
    Ring places = tracks[i].places;
    if (ring.empty()) {
      // The first piece may be an arc that runs the other way: the next one tells.
      const Ring& next = tracks.at(i + 1).places;
      const auto near = [&](SectionPoint end) {
        return std::min(distance(end, next.front()), distance(end, next.back())) < kJoined_mm;
      };
      if (!near(places.back())) std::ranges::reverse(places);
      EXPECT_TRUE(near(places.back())) << "piece " << i;
    } else {
      if (distance(ring.back(), places.front()) > kJoined_mm) std::ranges::reverse(places);
      EXPECT_LT(distance(ring.back(), places.front()), kJoined_mm) << "piece " << i;
    }
    ring.insert(ring.end(), places.begin() + (ring.empty() ? 0 : 1), places.end());
    if (distance(ring.front(), ring.back()) < kJoined_mm) {
      ring.pop_back();
      rings.push_back(std::move(ring));
      ring.clear();
    }
  }
  EXPECT_TRUE(ring.empty()) << "the last chain is open";
  return rings;
}

double area_of(const Ring& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const SectionPoint p = ring[i], q = ring[(i + 1) % ring.size()];
    sum += (p.r * q.z - q.r * p.z) / 2;
  }
  return sum;
}

double distance_to(const Ring& ring, SectionPoint place) {
  double least = 1e9;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const SectionPoint a = ring[i];
    const SectionOffset side = ring[(i + 1) % ring.size()] - a;
    const double square = dot(side, side);
    const double share = square > 0 ? std::clamp(dot(place - a, side) / square, 0.0, 1.0) : 0;
    least = std::min(least, distance(place, a + share * side));
  }
  return least;
}

double worst_between(const Ring& from, const Ring& to, std::size_t step) {
  double worst = 0;
  for (std::size_t i = 0; i < from.size(); i += step) worst = std::max(worst, distance_to(to, from[i]));
  return worst;
}

class DxfOfALens : public ::testing::TestWithParam<LensValues> {};

TEST_P(DxfOfALens, HoldsEveryOutlineAsAClosedChainWithinTheToleranceOfTheExactCurve) {
  const auto section = solve_section(GetParam().section_input());
  ASSERT_TRUE(section.ok());
  const auto bytes = section_dxf(*section, {});
  ASSERT_TRUE(bytes.ok());
  Reader reader(*bytes);
  ASSERT_TRUE(reader.read);
  const auto rings = rings_of(reader.tracks["GLASS"]);
  const auto images = images_of(*section);
  ASSERT_EQ(rings.size(), images.size());
  for (std::size_t i = 0; i < rings.size(); ++i) {
    SCOPED_TRACE(images[i].mark);
    const double area = area_mm2(images[i].profile);
    EXPECT_NEAR(area_of(rings[i]), area, 1e-4 * area);
    const Ring exact = polygon_of(images[i].profile, 1e-5);
    EXPECT_LE(worst_between(exact, rings[i], 7), kArcTolerance_mm + 2e-5);
    EXPECT_LE(worst_between(rings[i], exact, 53), kArcTolerance_mm + 2e-5);
  }
}

/// Hollow and full sides, rounded corners, bands aimed and with focal points of their own, lower images that
/// are no mirror images, the power in the entry and in the exit face.
LensValues with_every_face(Power upper, Power lower) {
  LensValues values = sixth_order_belt(Faces::true_curve);
  values.section.upper.power = upper;
  values.section.lower.power = lower;
  values.section.land_a = {0.6, LandShape::radius};
  values.section.land_c = {0.4, LandShape::radius};
  values.section.refracting.aim_deg = 0.7;
  values.section.upper.focus_z_mm = 4;
  values.section.upper_rib_mm = 5;
  return values;
}

INSTANTIATE_TEST_SUITE_P(EveryFace, DxfOfALens,
                         ::testing::Values(with_every_face(Power::entry, Power::exit),
                                           with_every_face(Power::hollow_entry, Power::hollow_exit)));

INSTANTIATE_TEST_SUITE_P(Samples, DxfOfALens,
                         ::testing::Values(fourth_order_bullseye(Faces::true_curve),
                                           sixth_order_belt(Faces::true_curve),
                                           first_order_unequal(Faces::arc)));

TEST(DxfOfASection, NamesEveryZoneAndStatesItsUnit) {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.section.upper_rib_mm = 8;
  const auto section = solve_section(values.section_input());
  ASSERT_TRUE(section.ok()) << section.problem().text;
  SectionSheetSettings settings;
  settings.title = "Gull Rock";
  Reader reader(section_dxf(*section, settings).value());
  ASSERT_TRUE(reader.read);
  EXPECT_EQ(reader.version, "AC1009");
  for (const char* layer : {"GLASS", "METAL", "AXES", "FOCUS", "MARKS", "NOTES"})
    EXPECT_TRUE(reader.layers.contains(layer));
  for (const Zone& zone : section->zones) {
    const bool halves = zone.kind == ZoneKind::ring;
    for (const std::string& piece :
         halves ? std::vector{zone.mark + "a", zone.mark + "b"} : std::vector{zone.mark})
      EXPECT_EQ(std::ranges::count(reader.texts["MARKS"], piece), 1) << piece;
  }
  const auto says = [&](const std::string& part) {
    return std::ranges::any_of(reader.texts["NOTES"],
                               [&](const std::string& t) { return t.find(part) != std::string::npos; });
  };
  EXPECT_TRUE(says("1 unit = 1 mm"));
  EXPECT_TRUE(says("Gull Rock"));
  EXPECT_TRUE(says("within 0.002 mm"));
  ASSERT_EQ(reader.circles.size(), 1u);
  EXPECT_EQ(distance(reader.circles[0], {0, 0}), 0);
  ASSERT_EQ(section->ribs.size(), 1u);
  ASSERT_EQ(reader.corners.size(), 4u);
  EXPECT_EQ(reader.closed, std::vector<bool>{true});
  EXPECT_LT(distance(reader.corners[2], section->ribs[0].high), 1e-9);
}

TEST(DxfWriter, WritesAnArcThatRunsClockwiseTheWayTheFormAsksFor) {
  DxfWriter dxf;
  dxf.add_layer("GLASS", 5);
  // A quarter from (0, 5) to (5, 0), clockwise about the origin: anticlockwise it runs from 0 to 90 deg.
  dxf.add_piece("GLASS", {{0, 5}, {5, 0}, -kPi / 2, {0, 0}, 5});
  Reader reader(dxf.bytes());
  const auto& track = reader.tracks["GLASS"].at(0);
  EXPECT_TRUE(track.arc);
  EXPECT_LT(distance(track.places.front(), {5, 0}), 1e-9);
  EXPECT_LT(distance(track.places[track.places.size() / 2], {5 * std::sqrt(0.5), 5 * std::sqrt(0.5)}), 1e-9);
}

TEST(DxfWriter, KeepsToAsciiWhateverTheWords) {
  DxfWriter dxf;
  dxf.add_layer("NOTES", 7);
  dxf.add_text("NOTES", {0, 0}, 3, "\xC3\x8Ele \xE2\x82\xAC\nx");
  const std::string bytes = dxf.bytes();
  EXPECT_NE(bytes.find("\n\\U+00CEle \\U+20AC x\n"), std::string::npos);
  EXPECT_TRUE(std::ranges::all_of(bytes, [](unsigned char c) { return c < 0x80; }));
}

}  // namespace
}  // namespace prismwright
