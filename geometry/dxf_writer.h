#pragma once

#include <string>
#include <vector>

#include "core/drawing/arc_chain.h"

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

  std::vector<Layer> layers_;
  std::string entities_;
  SectionPoint low_;
  SectionPoint high_;
};

}  // namespace prismwright
