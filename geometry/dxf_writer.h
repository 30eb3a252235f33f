#pragma once

#include <string>
#include <vector>

#include "core/drawing/arc_chain.h"
#include "core/frame/plate_chain.h"

namespace prismwright {

/// A drawing in the R12 form of DXF (ASCII, AC1009), which every workshop program reads: lines, arcs, circles,
/// polylines and texts on named layers, in model space. x = r, y = z, one unit one millimetre; the form has no
/// place for a unit, so that a text should state it. Numbers carry twelve decimals.
class DxfWriter {
 public:
  /// A layer: its name (A-Z, 0-9, _), its colour (1 red ... 7 black or white) and whether its lines are long
  /// and short dashes. Entities may only be put on layers that were added.
  void add_layer(const std::string& name, int colour, bool centre_line = false);

  void add_line(const std::string& layer, SectionPoint from, SectionPoint to);
  /// Angles are those of the file form: anticlockwise from the first to the second, degrees.
  void add_piece(const std::string& layer, const ChainPiece& piece);
  void add_circle(const std::string& layer, SectionPoint centre, double radius_mm);
  void add_polygon(const std::string& layer, const std::vector<SectionPoint>& corners);
  /// A closed outline as one polyline, its arcs exact: at the corner where one begins stands its bulge, the
  /// tangent of a quarter of its turn (positive: anticlockwise). Arcs of more than half a turn are parted.
  void add_outline(const std::string& layer, const PlateChain& outline);
  /// The same for a stroke that ends where it ends; a stroke without steps is left out.
  void add_stroke(const std::string& layer, const PlateChain& stroke);
  /// Letters outside ASCII are written as \U+XXXX.
  void add_text(const std::string& layer, SectionPoint place, double height_mm, const std::string& words);

  [[nodiscard]] std::string bytes() const;

 private:
  struct Layer {
    std::string name;
    int colour;
    bool centre_line;
  };
  void code(int number, const std::string& value);
  void code(int number, double value);
  void place(int number, SectionPoint p);
  void reach(SectionPoint p);
  void entity(const char* kind, const std::string& layer);
  void start_polyline(const std::string& layer, bool closed);
  void add_corner(const std::string& layer, PlatePoint corner, double bulge);
  void add_corners(const std::string& layer, const PlateChain& chain);

  std::vector<Layer> layers_;
  std::string entities_;
  SectionPoint low_;
  SectionPoint high_;
};

}  // namespace prismwright
