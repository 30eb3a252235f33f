#include "core/drawing/dimension_line.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/base/inches.h"
#include "core/drawing/lengths.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.8;
constexpr double kOff_mm = 1.1;      ///< words off their line
constexpr double kArrowRoom_mm = 6;  ///< a shorter line has its arrows outside
constexpr double kBar_mm = 55;       ///< a scale bar is no longer
constexpr double kBarHigh_mm = 1.5;
constexpr int kBarParts = 5;

/// The largest of 1, 2, 5 times a power of ten that is no greater.
double round_length(double most) {
  const double power = std::pow(10, std::floor(std::log10(most)));
  const double lead = most / power;
  return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
}

/// Words at the middle of a line, else slid along it, else beyond its ends.
std::vector<double> places_along(double from, double to, double width) {
  std::vector<double> places;
  const double middle = (from + to) / 2;
  const double slack = (to - from - width) / 2;
  if (slack >= 0) {
    for (const double share : {0.0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9}) places.push_back(middle + share * slack);
  }
  for (int i = 1; i < 8; ++i) {
    places.push_back(to + width / 2 + 2 * i);
    places.push_back(from - width / 2 - 2 * i);
  }
  return places;
}

}  // namespace

void level_dimension(SheetMaker& maker, double from_x, double to_x, double y, const std::string& words) {
  const bool inside = to_x - from_x >= kArrowRoom_mm;
  const double over = inside ? 0 : 4;
  maker.line({from_x - over, y}, {to_x + over, y});
  maker.keep_clear({from_x - over, y}, {to_x + over, y});
  maker.arrow({from_x, y}, inside ? kPi : 0);
  maker.arrow({to_x, y}, inside ? 0 : kPi);
  std::vector<PaperPoint> places;
  for (const double x : places_along(from_x, to_x, text_width_mm(words, kWords_mm)))
    places.push_back({x, y + kOff_mm});
  maker.write_at_free({words, {}, kWords_mm, Anchor::middle, false, false}, places);
}

void upright_dimension(SheetMaker& maker, double from_y, double to_y, double x, const std::string& words) {
  const bool inside = to_y - from_y >= kArrowRoom_mm;
  const double over = inside ? 0 : 4;
  maker.line({x, from_y - over}, {x, to_y + over});
  maker.keep_clear({x, from_y - over}, {x, to_y + over});
  maker.arrow({x, from_y}, inside ? -kPi / 2 : kPi / 2);
  maker.arrow({x, to_y}, inside ? kPi / 2 : -kPi / 2);
  std::vector<PaperPoint> places;
  for (const double y : places_along(from_y, to_y, text_width_mm(words, kWords_mm)))
    places.push_back({x - kOff_mm, y});
  maker.write_at_free({words, {}, kWords_mm, Anchor::middle, true, false}, places);
}

double scale_bar_mm(double paper_per_mm, bool inches) {
  const double paper_per_unit = paper_per_mm * (inches ? kInch_mm : 1);
  return round_length(kBar_mm / paper_per_unit) * paper_per_unit;
}

void scale_bar(SheetMaker& maker, PaperPoint low, double paper_per_mm, bool inches) {
  const double part = scale_bar_mm(paper_per_mm, inches) / kBarParts;
  const double units = kBarParts * part / (paper_per_mm * (inches ? kInch_mm : 1));
  for (int i = 0; i < kBarParts; ++i) {
    Stroke box = rectangle_stroke({low.x + i * part, low.y}, {low.x + (i + 1) * part, low.y + kBarHigh_mm},
                                  LineClass::thin);
    box.filled = i % 2 == 0;
    maker.draw(std::move(box));
  }
  maker.keep_off({low, {low.x + kBarParts * part, low.y + kBarHigh_mm}});
  constexpr double kSize_mm = 2.3;
  const double y = low.y + kBarHigh_mm + 1.3;
  const LengthWords lengths{inches};
  maker.write({"0", {low.x, y}, kSize_mm, Anchor::left, false, false});
  maker.write({decimals(units, units < 1 ? 2 : 0) + " " + lengths.unit(),
               {low.x + kBarParts * part, y},
               kSize_mm,
               Anchor::middle,
               false,
               false});
}

}  // namespace prismwright
