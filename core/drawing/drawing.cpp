#include "core/drawing/drawing.h"

#include "core/base/angle.h"

namespace prismwright {

namespace {

struct Sides {
  double narrow;
  double wide;
};

/// ISO 216, and 8.5 by 11 inches.
Sides sides_mm(Paper paper) {
  switch (paper) {
    case Paper::a4:
      return {210, 297};
    case Paper::a3:
      return {297, 420};
    case Paper::letter:
      return {215.9, 279.4};
    case Paper::a5:
      return {148, 210};
  }
  return {210, 297};
}

}  // namespace

double width_mm(LineClass line) {
  switch (line) {
    case LineClass::outline:
    case LineClass::frame:
      return 0.35;
    case LineClass::thin:
    case LineClass::centre:
    case LineClass::ray:
      return 0.18;
    case LineClass::hatch:
      return 0.13;
  }
  return 0.18;
}

std::vector<double> dashes_mm(LineClass line) {
  if (line == LineClass::centre) return {6, 1.2, 0.8, 1.2};
  if (line == LineClass::ray) return {2, 1.2};
  return {};
}

double SheetSize::width_mm() const { return landscape ? sides_mm(paper).wide : sides_mm(paper).narrow; }
double SheetSize::height_mm() const { return landscape ? sides_mm(paper).narrow : sides_mm(paper).wide; }

const char* name_of(Paper paper) {
  switch (paper) {
    case Paper::a4:
      return "A4";
    case Paper::a3:
      return "A3";
    case Paper::letter:
      return "Letter";
    case Paper::a5:
      return "A5";
  }
  return "A4";
}

Stroke straight_stroke(PaperPoint from, PaperPoint to, LineClass line) {
  Stroke stroke;
  stroke.start = from;
  stroke.steps = {{to, 0, {}, 0}};
  stroke.line = line;
  return stroke;
}

Stroke rectangle_stroke(PaperPoint low, PaperPoint high, LineClass line) {
  Stroke stroke;
  stroke.start = low;
  stroke.steps = {{{high.x, low.y}, 0, {}, 0}, {high, 0, {}, 0}, {{low.x, high.y}, 0, {}, 0}};
  stroke.line = line;
  stroke.closed = true;
  return stroke;
}

Stroke circle_stroke(PaperPoint centre, double radius_mm, LineClass line) {
  Stroke stroke;
  stroke.start = {centre.x + radius_mm, centre.y};
  stroke.steps = {{{centre.x - radius_mm, centre.y}, kPi, centre, radius_mm},
                  {stroke.start, kPi, centre, radius_mm}};
  stroke.line = line;
  stroke.closed = true;
  return stroke;
}

}  // namespace prismwright
