#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace prismwright {

/// A place on the sheet, mm from its lower left corner, y up.
struct PaperPoint {
  double x = 0;
  double y = 0;
};

/// What a line on the sheet stands for; its width and dashes follow from it.
enum class LineClass {
  outline,  ///< edge of glass or metal, 0.35 mm
  frame,    ///< border and title block, 0.35 mm
  thin,     ///< dimensions, tables, 0.18 mm
  hatch,    ///< cut glass and leaders, 0.13 mm
  centre,   ///< axes and the focal plane, 0.18 mm, long and short dashes
  ray,      ///< limiting rays, 0.18 mm, short dashes
};
double width_mm(LineClass line);
/// Lengths of dash and space by turns, mm; empty for a full line.
std::vector<double> dashes_mm(LineClass line);

/// One step of a stroke: a straight line or an arc of a circle from where the step before ended.
struct PaperStep {
  PaperPoint to;
  double turn = 0;  ///< radians swept about `centre`, anticlockwise positive; 0: a straight line
  PaperPoint centre;
  double radius_mm = 0;  ///< on paper
};

/// A colour on paper.
struct PaperColour {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
};

/// A line, an arc, or a chain of them; closed strokes may be filled with black, or with a colour under the
/// line.
struct Stroke {
  PaperPoint start;
  std::vector<PaperStep> steps;
  LineClass line = LineClass::thin;
  bool closed = false;
  bool filled = false;
  std::optional<PaperColour> tone = std::nullopt;
};

/// A picture made of points: three bytes (red, green, blue) each, row by row from the top left.
struct PointImage {
  int wide = 0;
  int high = 0;
  std::vector<std::uint8_t> rgb;
};

/// Such a picture on a sheet, stretched over the upright rectangle. It lies under lines and words.
struct DrawnPicture {
  PaperPoint low;
  PaperPoint high;
  std::shared_ptr<const PointImage> image;
};

enum class Anchor { left, middle, right };  ///< which end of the base line stands at the place

/// One line of words. `turned`: read from below upwards (a quarter turn anticlockwise).
struct DrawnText {
  std::string words;  ///< UTF-8 without line ends
  PaperPoint place;   ///< on the base line
  double size_mm = 2.5;
  Anchor anchor = Anchor::left;
  bool turned = false;
  bool bold = false;
};

enum class Paper { a4, a3, letter, a5 };

/// A sheet of paper, mm.
struct SheetSize {
  Paper paper = Paper::a4;
  bool landscape = false;

  [[nodiscard]] double width_mm() const;
  [[nodiscard]] double height_mm() const;
};
const char* name_of(Paper paper);  ///< "A4", "A3", "Letter", "A5"

struct Sheet {
  SheetSize size;
  std::vector<Stroke> strokes;
  std::vector<DrawnText> texts;
  std::vector<DrawnPicture> pictures = {};
};

/// Sheets that belong together, and what is said of them in a file's own head.
struct Drawing {
  std::string title;
  std::string date;  ///< YYYY-MM-DD, or empty
  std::vector<Sheet> sheets;
};

Stroke straight_stroke(PaperPoint from, PaperPoint to, LineClass line);
Stroke rectangle_stroke(PaperPoint low, PaperPoint high, LineClass line);
Stroke circle_stroke(PaperPoint centre, double radius_mm, LineClass line);

}  // namespace prismwright
