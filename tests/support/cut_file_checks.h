#pragma once

#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepGProp.hxx>
#include <GCPnts_AbscissaPoint.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>

#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "geometry/frame_exports.h"
#include "tests/support/dxf_reader.h"
#include "tests/support/flat_parts.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {

inline std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// A level face of a plate's solid, as the kernel measures it.
struct MeasuredFace {
  double area = 0;
  double length = 0;  ///< of all its edges
};

inline MeasuredFace face_at(const TopoDS_Shape& solid, const FlatPart& flat, double depth_mm) {
  constexpr double kOn_mm = 1e-6;
  MeasuredFace measured;
  for (TopExp_Explorer faces(solid, TopAbs_FACE); faces.More(); faces.Next()) {
    const TopoDS_Face face = TopoDS::Face(faces.Current());
    const BRepAdaptor_Surface surface(face);
    if (surface.GetType() != GeomAbs_Plane) continue;
    const gp_Pln plane = surface.Plane();
    const gp_Pnt p = plane.Location();
    const gp_Dir n = plane.Axis().Direction();
    const SpaceVector normal = flat.place.into(SpaceVector{n.X(), n.Y(), n.Z()});
    const double depth = flat.place.into(SpacePoint{p.X(), p.Y(), p.Z()}).z;
    if (std::abs(std::abs(normal.z) - 1) > 1e-9 || std::abs(depth - depth_mm) > kOn_mm) continue;
    GProp_GProps props;
    BRepGProp::SurfaceProperties(face, props);
    measured.area += props.Mass();
    for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
      const TopoDS_Edge edge = TopoDS::Edge(edges.Current());
      const BRepAdaptor_Curve curve(edge);
      measured.length += GCPnts_AbscissaPoint::Length(curve);
    }
  }
  return measured;
}

/// What a DXF file says of the same face, found by an independent reader.
struct ReadFace {
  double area = 0;
  double length = 0;
};

/// A level ray from the circle's middle crosses the polygon's sides an odd number of times.
inline bool within(const ReadCircle& circle, const std::vector<ReadPolyline>& pockets) {
  return std::ranges::any_of(pockets, [&](const ReadPolyline& pocket) {
    const PlateOutline outline = pocket.places(8);
    bool inside = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlatePoint p = outline[i], q = outline[(i + 1) % outline.size()];
      if ((p.v > circle.y) == (q.v > circle.y)) continue;
      if (p.u + (circle.y - p.v) / (q.v - p.v) * (q.u - p.u) > circle.x) inside = !inside;
    }
    return inside;
  });
}

/// `flat` says which holes are sunk, as the file tells in words only.
inline ReadFace face_of(DxfReader& file, const FlatPart& flat, bool front) {
  ReadFace face;
  for (const ReadPolyline& line : file.polylines["CUT"]) {
    face.area += line.area();
    face.length += line.length();
  }
  const auto& pockets = file.polylines["POCKET"];
  for (const ReadPolyline& line : pockets) {
    if (!front) continue;
    face.area += line.area();
    face.length += line.length();
  }
  const auto& circles = file.circles["HOLE"];
  EXPECT_EQ(circles.size(), flat.holes.size());
  for (std::size_t i = 0; i < circles.size() && i < flat.holes.size(); ++i) {
    if (front && within(circles[i], pockets)) continue;
    const bool sunk_here = flat.holes[i].sunk_in_back != front;
    const double radius = std::max(circles[i].radius, sunk_here ? flat.holes[i].sink_diameter_mm / 2 : 0);
    face.area -= kPi * radius * radius;
    face.length += 2 * kPi * radius;
  }
  return face;
}

/// Brass of the plate seen through: what is left of its outline by cuts and drilled holes.
inline double level_area(DxfReader& file) {
  double area = 0;
  for (const ReadPolyline& line : file.polylines["CUT"]) area += line.area();
  for (const ReadCircle& circle : file.circles["HOLE"]) area -= kPi * circle.radius * circle.radius;
  return area;
}

inline void expect_closed_and_apart(DxfReader& file) {
  std::vector<PlateOutline> cuts;
  PlateOutline outer;
  for (const char* layer : {"CUT", "POCKET"}) {
    for (const ReadPolyline& line : file.polylines[layer]) {
      EXPECT_TRUE(line.closed);
      PlateOutline places = line.places(32);
      if (line.area() > 0) {
        EXPECT_TRUE(outer.empty()) << "one outline";
        outer = places;
        continue;
      }
      std::ranges::reverse(places);
      cuts.push_back(places);
    }
  }
  double sum = 0;
  for (const PlateOutline& cut : cuts) sum += signed_area_mm2(cut);
  const double area = signed_area_mm2(outer);
  EXPECT_NEAR(area_mm2(united(cuts)), sum, 1e-6 * area) << "pockets and openings overlap";
  EXPECT_NEAR(area_mm2(common_part({outer}, united(cuts))), sum, 1e-6 * area) << "a cut leaves the outline";
  EXPECT_NEAR(area_mm2(united({outer})), area, 1e-6 * area) << "the outline crosses itself";
}

/// Depth of the sunk heads and of bores is not in the DXF: their volume by the closed form of the plan.
inline double sunk_and_bored_mm3(const FlatPart& flat) {
  FlatPart plain = flat;
  for (PlateHole& hole : plain.holes) hole.sink_diameter_mm = 0;
  plain.bores.clear();
  return volume_mm3(plain) - volume_mm3(flat);
}

inline double pocket_volume_mm3(DxfReader& file, const FlatPart& flat) {
  double volume = 0;
  const auto& read = file.polylines["POCKET"];
  const auto pockets = blind_pockets(flat);
  EXPECT_EQ(read.size(), pockets.size());
  for (std::size_t i = 0; i < read.size() && i < pockets.size(); ++i)
    volume -= read[i].area() * pockets[i].depth_mm;
  for (const ReadCircle& circle : file.circles["HOLE"]) {
    // A hole in a pocket takes only what is left of the plate.
    for (std::size_t i = 0; i < read.size(); ++i) {
      if (within(circle, {read[i]})) volume -= kPi * circle.radius * circle.radius * pockets[i].depth_mm;
    }
  }
  return volume;
}

/// A hundredth of a hundredth of what is asked for: the file carries twelve decimals.
constexpr double kWithin = 1e-6;

/// Areas, lengths and volumes of everything cut flat, from the files, against the solids.
inline void expect_files_match_solids(const FramePlan& plan, const std::vector<FrameBody>& bodies,
                                      const std::string& folder) {
  std::map<std::string, const FrameBody*> body_of;
  for (const FrameBody& body : bodies) body_of[body.mark] = &body;
  int compared = 0;
  for (const AlikePlates& alike : alike_plates(plan.flats)) {
    const FlatPart& first = plan.flats[alike.front()];
    if (first.making != PartMaking::cut_flat) continue;
    SCOPED_TRACE(first.mark);
    DxfReader file(text_of(folder + "/" + cut_file_stem(first, alike.size()) + ".dxf"));
    ASSERT_TRUE(file.read);
    ASSERT_FALSE(file.polylines["CUT"].empty());
    expect_closed_and_apart(file);
    const ReadFace front = face_of(file, first, true);
    const ReadFace back = face_of(file, first, false);
    const double level = level_area(file);
    // Alike parts share one solid in many places: the last stands for all others.
    for (const std::size_t i : {alike.front(), alike.back()}) {
      const FlatPart& flat = plan.flats[i];
      ASSERT_TRUE(body_of.contains(flat.mark));
      const TopoDS_Shape& solid = body_of[flat.mark]->shape;
      const MeasuredFace in_front = face_at(solid, flat, flat.thickness_mm);
      EXPECT_NEAR(front.area, in_front.area, kWithin * in_front.area) << flat.mark;
      EXPECT_NEAR(front.length, in_front.length, kWithin * in_front.length) << flat.mark;
      const MeasuredFace at_back = face_at(solid, flat, 0);
      EXPECT_NEAR(back.area, at_back.area, kWithin * at_back.area) << flat.mark;
      EXPECT_NEAR(back.length, at_back.length, kWithin * at_back.length) << flat.mark;
      const double volume = kernel_volume_mm3(solid);
      EXPECT_NEAR(level * flat.thickness_mm - pocket_volume_mm3(file, flat) - sunk_and_bored_mm3(flat), volume,
                  kWithin * volume)
          << flat.mark;
      ++compared;
    }
  }
  EXPECT_GT(compared, 0);
}

}  // namespace prismwright
