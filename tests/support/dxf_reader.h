#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <dl_creationadapter.h>
#include <dl_dxf.h>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// A polyline as dxflib, a reader of other hands, gives it back. What a bulge means is worked out here anew: it
/// is the tangent of a quarter of the turn, to the left where it is positive.
struct ReadPolyline {
  struct Corner {
    double x = 0;
    double y = 0;
    double bulge = 0;
  };
  std::vector<Corner> corners;
  bool closed = false;

  [[nodiscard]] std::size_t sides() const { return closed ? corners.size() : corners.size() - 1; }
  [[nodiscard]] double chord(std::size_t i) const {
    const Corner& a = corners[i];
    const Corner& b = corners[(i + 1) % corners.size()];
    return std::hypot(b.x - a.x, b.y - a.y);
  }
  /// Signed; of a closed one.
  [[nodiscard]] double area() const {
    double sum = 0;
    for (std::size_t i = 0; i < sides(); ++i) {
      const Corner& a = corners[i];
      const Corner& b = corners[(i + 1) % corners.size()];
      sum += (a.x * b.y - b.x * a.y) / 2;
      if (a.bulge == 0) continue;
      const double turn = 4 * std::atan(a.bulge);
      const double radius = chord(i) / (2 * std::sin(turn / 2));
      sum += radius * radius * (turn - std::sin(turn)) / 2;
    }
    return sum;
  }
  [[nodiscard]] double length() const {
    double sum = 0;
    for (std::size_t i = 0; i < sides(); ++i) {
      const double turn = 4 * std::atan(corners[i].bulge);
      sum += turn == 0 ? chord(i) : std::abs(turn * chord(i) / (2 * std::sin(turn / 2)));
    }
    return sum;
  }
  /// So many places on every arc.
  [[nodiscard]] PlateOutline places(int per_arc) const {
    PlateOutline all;
    for (std::size_t i = 0; i < sides(); ++i) {
      const Corner& a = corners[i];
      const Corner& b = corners[(i + 1) % corners.size()];
      all.push_back({a.x, a.y});
      for (int k = 1; a.bulge != 0 && k < per_arc; ++k) {
        // Along the arc at a share of its turn: the chord from the start turns by half of that share.
        const double turn = 4 * std::atan(a.bulge);
        const double part = turn * k / per_arc;
        const double reach = chord(i) * std::sin(part / 2) / std::sin(turn / 2);
        const double way = std::atan2(b.y - a.y, b.x - a.x) - turn / 2 + part / 2;
        all.push_back({a.x + reach * std::cos(way), a.y + reach * std::sin(way)});
      }
    }
    return all;
  }
};

struct ReadCircle {
  double x = 0;
  double y = 0;
  double radius = 0;
};

class DxfReader : public DL_CreationAdapter {
 public:
  explicit DxfReader(const std::string& bytes) {
    std::stringstream stream(bytes);
    DL_Dxf file;
    read = file.in(stream, this);
  }

  void addLayer(const DL_LayerData& layer) override { layers.insert(layer.name); }
  void addPolyline(const DL_PolylineData& polyline) override {
    open_layer_ = attributes.getLayer();
    polylines[open_layer_].push_back({{}, (polyline.flags & 1) != 0});
  }
  void addVertex(const DL_VertexData& vertex) override {
    polylines[open_layer_].back().corners.push_back({vertex.x, vertex.y, vertex.bulge});
  }
  void addCircle(const DL_CircleData& circle) override {
    circles[attributes.getLayer()].push_back({circle.cx, circle.cy, circle.radius});
  }
  void addText(const DL_TextData& text) override { texts[attributes.getLayer()].push_back(text.text); }
  void addLine(const DL_LineData& /*line*/) override { ++others; }
  void addArc(const DL_ArcData& /*arc*/) override { ++others; }
  void setVariableString(const std::string& key, const std::string& value, int) override {
    if (key == "$ACADVER") version = value;
  }

  [[nodiscard]] bool says(const std::string& words) const {
    for (const auto& [layer, lines] : texts) {
      if (std::ranges::any_of(lines, [&](const std::string& t) { return t.find(words) != std::string::npos; }))
        return true;
    }
    return false;
  }

  bool read = false;
  std::string version;
  std::set<std::string> layers;
  std::map<std::string, std::vector<ReadPolyline>> polylines;
  std::map<std::string, std::vector<ReadCircle>> circles;
  std::map<std::string, std::vector<std::string>> texts;
  int others = 0;  ///< lines and arcs outside polylines

 private:
  std::string open_layer_;
};

}  // namespace prismwright
