#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// What one axis of a plot shows: from must be less than to.
struct PlotSpan {
  double from = 0;
  double to = 1;
  std::string words;  ///< quantity and unit, "azimuth, deg"
};

/// Round numbers that part a span into about `wanted` steps: 1, 2 or 5 times a power of ten, within the span.
/// Empty for a span that is not finite or not positive.
std::vector<double> round_ticks(double from, double to, int wanted);

struct PlotPoint {
  double x = 0;
  double y = 0;
};

/// A plot on a sheet, drawn in strokes: two axes with ticks and numbers, curves that are cut at its edges,
/// level marks. `size_mm`: of its letters.
class PlotFrame {
 public:
  PlotFrame(SheetMaker& maker, const PaperBox& room, const PlotSpan& across, const PlotSpan& up, double size_mm,
            int ticks_across = 6, int ticks_up = 4);

  [[nodiscard]] const PaperBox& field() const { return field_; }
  [[nodiscard]] PaperPoint at(PlotPoint point) const;

  /// A curve; what lies beyond the field is cut off. `ground`: the ground between it and y = 0 (`upright`: x =
  /// 0) is toned.
  enum class Ground { none, below, beside };
  void curve(const std::vector<PlotPoint>& points, Ground ground, LineClass line = LineClass::outline);
  /// A dashed line from one place to another.
  void dashes(PlotPoint from, PlotPoint to);
  /// Two arrows that meet the places from inside, with words above or beside; outside where there is no room.
  void span(PlotPoint from, PlotPoint to, const std::string& words);
  /// Words at the first free of several places about a point.
  void label(PlotPoint at, const std::string& words);

 private:
  void draw_axes(const PlotSpan& across, const PlotSpan& up, int ticks_across, int ticks_up);

  SheetMaker& maker_;
  PaperBox field_;
  PlotSpan across_;
  PlotSpan up_;
  double size_mm_ = 2.2;
};

/// Where a curve over x falls to `level` on the way from its highest point to each side; blank where it does
/// not.
struct LevelWidth {
  bool whole = false;
  double from = 0;
  double to = 0;
};
LevelWidth width_at(const std::vector<PlotPoint>& points, double level);

}  // namespace prismwright
