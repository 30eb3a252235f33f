#include "core/papers/plot_frame.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/drawing/lengths.h"

namespace prismwright {

namespace {

constexpr PaperColour kGround{0xF1, 0xE8, 0xD2};  ///< a pale brass
constexpr double kTick_mm = 1.2;
constexpr int kMostTicks = 200;

/// A piece of a straight line within the field, or nothing.
struct Piece {
  PlotPoint from;
  PlotPoint to;
};

std::optional<Piece> cut_to(const PlotSpan& across, const PlotSpan& up, PlotPoint a, PlotPoint b) {
  double enters = 0, leaves = 1;
  const auto cut = [&](double start, double step, double low, double high) {
    if (step == 0) return start >= low && start <= high;
    const double first = (low - start) / step;
    const double second = (high - start) / step;
    enters = std::max(enters, std::min(first, second));
    leaves = std::min(leaves, std::max(first, second));
    return enters <= leaves;
  };
  if (!cut(a.x, b.x - a.x, across.from, across.to) || !cut(a.y, b.y - a.y, up.from, up.to)) return std::nullopt;
  const auto along = [&](double t) { return PlotPoint{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}; };
  return Piece{along(enters), along(leaves)};
}

/// Decimals that ticks of this step need.
int decimals_for(double step) {
  int count = 0;
  for (double left = step; count < 6 && std::abs(left - std::round(left)) > 1e-6 * step; left *= 10) ++count;
  return count;
}

}  // namespace

std::vector<double> round_ticks(double from, double to, int wanted) {
  std::vector<double> ticks;
  if (!std::isfinite(from) || !std::isfinite(to) || !(to > from) || wanted < 1) return ticks;
  const double rough = (to - from) / wanted;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  double step = 10 * power;
  for (const double times : {5.0, 2.0, 1.0}) {
    if (times * power >= rough * (1 - 1e-9)) step = times * power;
  }
  const double first = std::ceil(from / step - 1e-9);
  for (int i = 0; i < kMostTicks && (first + i) * step <= to + 1e-9 * step; ++i)
    ticks.push_back((first + i) * step);
  return ticks;
}

PlotFrame::PlotFrame(SheetMaker& maker, const PaperBox& room, const PlotSpan& across, const PlotSpan& up,
                     double size_mm, int ticks_across, int ticks_up)
    : maker_(maker), across_(across), up_(up), size_mm_(size_mm) {
  double widest = 0;
  const std::vector<double> ticks = round_ticks(up.from, up.to, ticks_up);
  const int digits = ticks.size() > 1 ? decimals_for(ticks[1] - ticks[0]) : 0;
  for (const double tick : ticks) widest = std::max(widest, text_width_mm(decimals(tick, digits), size_mm));
  field_ = {{room.low.x + 1.8 * size_mm + widest + kTick_mm + 1, room.low.y + 4 * size_mm},
            {room.high.x - 1.5 * size_mm, room.high.y - 0.8 * size_mm}};
  draw_axes(across, up, ticks_across, ticks_up);
  maker_.write(
      {up.words, {room.low.x + size_mm, (field_.low.y + field_.high.y) / 2}, size_mm, Anchor::middle, true});
}

PaperPoint PlotFrame::at(PlotPoint point) const {
  return {
      field_.low.x + (point.x - across_.from) / (across_.to - across_.from) * (field_.high.x - field_.low.x),
      field_.low.y + (point.y - up_.from) / (up_.to - up_.from) * (field_.high.y - field_.low.y)};
}

void PlotFrame::draw_axes(const PlotSpan& across, const PlotSpan& up, int ticks_across, int ticks_up) {
  maker_.line(field_.low, {field_.high.x, field_.low.y}, LineClass::thin);
  maker_.line(field_.low, {field_.low.x, field_.high.y}, LineClass::thin);
  const auto level = round_ticks(across.from, across.to, ticks_across);
  const int level_digits = level.size() > 1 ? decimals_for(level[1] - level[0]) : 0;
  for (const double tick : level) {
    const PaperPoint foot = {at({tick, 0}).x, field_.low.y};
    maker_.line(foot, {foot.x, foot.y - kTick_mm}, LineClass::thin);
    maker_.write({decimals(tick, level_digits),
                  {foot.x, foot.y - kTick_mm - 1.15 * size_mm_},
                  size_mm_,
                  Anchor::middle});
  }
  const auto rising = round_ticks(up.from, up.to, ticks_up);
  const int rising_digits = rising.size() > 1 ? decimals_for(rising[1] - rising[0]) : 0;
  for (const double tick : rising) {
    const PaperPoint foot = {field_.low.x, at({0, tick}).y};
    maker_.line(foot, {foot.x - kTick_mm, foot.y}, LineClass::thin);
    maker_.write({decimals(tick, rising_digits),
                  {foot.x - kTick_mm - 0.6, foot.y - 0.36 * size_mm_},
                  size_mm_,
                  Anchor::right});
  }
  const double middle = (field_.low.x + field_.high.x) / 2;
  maker_.write({across.words, {middle, field_.low.y - kTick_mm - 2.6 * size_mm_}, size_mm_, Anchor::middle});
}

void PlotFrame::curve(const std::vector<PlotPoint>& points, Ground ground, LineClass line) {
  std::vector<std::vector<PaperPoint>> runs;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto piece = cut_to(across_, up_, points[i - 1], points[i]);
    if (!piece) continue;
    const PaperPoint from = at(piece->from);
    const PaperPoint to = at(piece->to);
    const bool joins =
        !runs.empty() && std::hypot(runs.back().back().x - from.x, runs.back().back().y - from.y) < 1e-6;
    if (!joins) runs.push_back({from});
    runs.back().push_back(to);
  }
  const PaperPoint nought = at({std::clamp(0.0, across_.from, across_.to), std::clamp(0.0, up_.from, up_.to)});
  for (const std::vector<PaperPoint>& run : runs) {
    Stroke stroke;
    stroke.start = run.front();
    stroke.line = line;
    for (std::size_t i = 1; i < run.size(); ++i) {
      stroke.steps.push_back({run[i], 0, {}, 0});
      maker_.keep_clear(run[i - 1], run[i]);
    }
    if (ground != Ground::none) {
      Stroke toned = stroke;
      const bool below = ground == Ground::below;
      const auto foot = [&](PaperPoint p) {
        return below ? PaperPoint{p.x, nought.y} : PaperPoint{nought.x, p.y};
      };
      toned.steps.push_back({foot(run.back()), 0, {}, 0});
      toned.steps.push_back({foot(run.front()), 0, {}, 0});
      toned.line = LineClass::hatch;
      toned.closed = true;
      toned.tone = kGround;
      maker_.draw(std::move(toned));
    }
    maker_.draw(std::move(stroke));
  }
}

void PlotFrame::dashes(PlotPoint from, PlotPoint to) {
  maker_.line(at(from), at(to), LineClass::ray);
  maker_.keep_clear(at(from), at(to));
}

void PlotFrame::span(PlotPoint from, PlotPoint to, const std::string& words) {
  const PaperPoint a = at(from);
  const PaperPoint b = at(to);
  const double way = std::atan2(b.y - a.y, b.x - a.x);
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length > 7) {
    maker_.line(a, b, LineClass::thin);
    maker_.arrow(a, way + std::numbers::pi);
    maker_.arrow(b, way);
  } else {
    const double out = 4;
    const PaperPoint before = {a.x - out * std::cos(way), a.y - out * std::sin(way)};
    const PaperPoint after = {b.x + out * std::cos(way), b.y + out * std::sin(way)};
    maker_.line(before, a, LineClass::thin);
    maker_.line(b, after, LineClass::thin);
    maker_.arrow(a, way);
    maker_.arrow(b, way + std::numbers::pi);
  }
  const double half = text_width_mm(words, size_mm_) / 2;
  const PaperPoint middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
  std::vector<PaperPoint> places;
  const bool level = std::abs(b.x - a.x) >= std::abs(b.y - a.y);
  if (level && 2 * half < length - 6) places.push_back({middle.x, middle.y + 0.5 * size_mm_});
  const double away = level ? length / 2 + 5 : 1.5;
  for (const double further : {0.0, 3.0, 8.0}) {
    for (const int side : {1, -1})
      places.push_back({middle.x + side * (away + half + further), middle.y - 0.36 * size_mm_});
  }
  for (const double up : {1.0, -2.0, 3.0}) places.push_back({middle.x, middle.y + up * size_mm_});
  maker_.write_at_free({words, {}, size_mm_, Anchor::middle}, places);
}

void PlotFrame::label(PlotPoint point, const std::string& words) {
  const PaperPoint p = at(point);
  const double half = text_width_mm(words, size_mm_) / 2;
  std::vector<PaperPoint> places;
  for (const double away : {1.2, 3.0, 6.0, 10.0}) {
    places.push_back({p.x, p.y + away});
    for (const int side : {1, -1}) places.push_back({p.x + side * (half + away), p.y - 0.36 * size_mm_});
    places.push_back({p.x, p.y - away - size_mm_});
  }
  maker_.write_at_free({words, {}, size_mm_, Anchor::middle}, places);
}

LevelWidth width_at(const std::vector<PlotPoint>& points, double level) {
  LevelWidth width;
  if (points.empty()) return width;
  const auto peak = std::ranges::max_element(points, {}, &PlotPoint::y);
  if (!(peak->y > level)) return width;
  const auto crossing = [&](const PlotPoint& in, const PlotPoint& out) {
    return in.x + (out.x - in.x) * (in.y - level) / (in.y - out.y);
  };
  bool low = false, high = false;
  for (auto i = peak; i != points.begin() && !low; --i) {
    if ((i - 1)->y >= level) continue;
    width.from = crossing(*i, *(i - 1));
    low = true;
  }
  for (auto i = peak; i + 1 != points.end() && !high; ++i) {
    if ((i + 1)->y >= level) continue;
    width.to = crossing(*i, *(i + 1));
    high = true;
  }
  width.whole = low && high;
  return width;
}

}  // namespace prismwright
