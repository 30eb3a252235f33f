#include "core/works/shelf_fill.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace prismwright {

namespace {

constexpr double kTouch_mm = 1e-9;

/// How a filling begins: with a row across the middle, with two that meet there, or at the lower rim.
enum class FirstRow { middle, beside_middle, rim };
enum class RowOrder { area, longer_edge, urgency };

struct FillWay {
  FirstRow first = FirstRow::middle;
  RowOrder order = RowOrder::area;
  bool long_across = true;  ///< rows take their height from the shorter edge of their first box
};

struct Level {
  double wide = 0;
  double high = 0;
};

/// One filling of the circle.
class FloorFilling {
 public:
  FloorFilling(const std::vector<FloorItem>& items, double radius, double spacing, FillWay way)
      : items_(items), radius_(radius), spacing_(spacing), way_(way), left_(items.size()) {
    std::iota(left_.begin(), left_.end(), std::size_t{0});
    if (left_.size() > 1)
      std::stable_sort(left_.begin() + 1, left_.end(),
                       [&](std::size_t a, std::size_t b) { return rank(items[a]) > rank(items[b]); });
  }

  std::vector<FloorSpot> fill() {
    double up = 0;    // next row upward begins here
    double down = 0;  // next row downward ends here
    if (!first_rows(up, down)) return {};
    bool room_up = true;
    bool room_down = way_.first != FirstRow::rim;
    while ((room_up || room_down) && !left_.empty()) {
      const bool upward = room_up && (!room_down || up <= -down);
      const double height = upward ? row(up, 1) : row(down, -1);
      (upward ? room_up : room_down) = height > 0;
      if (height > 0) (upward ? up : down) += (upward ? 1 : -1) * (height + spacing_);
    }
    return std::move(spots_);
  }

 private:
  [[nodiscard]] double rank(const FloorItem& item) const {
    if (way_.order == RowOrder::urgency) return item.urgency;
    return way_.order == RowOrder::area ? item.long_mm * item.short_mm : item.long_mm;
  }

  bool first_rows(double& up, double& down) {
    const FloorItem& item = items_[left_.front()];
    const Level level = level_of(item);
    const double corner2 = (level.wide * level.wide) / 4;
    if (way_.first == FirstRow::beside_middle) {
      up = spacing_ / 2;
      down = -spacing_ / 2;
      return row_fits(up, level);
    }
    const double foot = way_.first == FirstRow::middle ? -level.high / 2
                                                       : -std::sqrt(std::max(0.0, radius_ * radius_ - corner2));
    if (!row_fits(foot, level)) return false;
    const double height = row(foot, 1);
    up = foot + height + spacing_;
    down = foot - spacing_;
    return height > 0;
  }

  [[nodiscard]] Level level_of(const FloorItem& item) const {
    return way_.long_across ? Level{item.long_mm, item.short_mm} : Level{item.short_mm, item.long_mm};
  }
  [[nodiscard]] bool row_fits(double foot, Level level) const {
    return level.wide <= 2 * half_width(foot, foot + level.high) + kTouch_mm;
  }
  /// Half of the room across the circle between two heights; negative where there is none.
  [[nodiscard]] double half_width(double y0, double y1) const {
    const double y = std::max(std::abs(y0), std::abs(y1));
    return y > radius_ + kTouch_mm ? -1 : std::sqrt(std::max(0.0, radius_ * radius_ - y * y));
  }

  /// Fills a row that begins at `edge` and goes up or down (way 1 or -1) by the height of its first box that
  /// fits there. Answers that height, or 0.
  double row(double edge, int way) {
    for (std::size_t i = 0; i < left_.size(); ++i) {
      const FloorItem& item = items_[left_[i]];
      for (const Level level : {level_of(item), Level{level_of(item).high, level_of(item).wide}}) {
        const double y = way > 0 ? edge : edge - level.high;
        if (!row_fits(y, level)) continue;
        fill_row(edge, way, level, i);
        return level.high;
      }
    }
    return 0;
  }

  void fill_row(double edge, int way, Level first, std::size_t index) {
    double x = -half_width(edge, edge + way * first.high);
    x = column(edge, way, first.high, x, first, index);
    while (true) {
      const auto next = next_for(edge, way, first.high, x);
      if (!next) return;
      x = column(edge, way, first.high, std::max(x, next->x), next->level, next->index);
    }
  }

  struct Next {
    std::size_t index = 0;
    Level level;
    double x = 0;
  };
  /// The next box that fits into the row from x on.
  [[nodiscard]] std::optional<Next> next_for(double edge, int way, double height, double x) const {
    for (std::size_t i = 0; i < left_.size(); ++i) {
      const FloorItem& item = items_[left_[i]];
      for (const Level level : {Level{item.short_mm, item.long_mm}, Level{item.long_mm, item.short_mm}}) {
        if (level.high > height + kTouch_mm) continue;
        const double half = half_width(edge, edge + way * level.high);
        const double at = std::max(x, -half);
        if (at + level.wide <= half + kTouch_mm) return Next{i, level, at};
      }
    }
    return std::nullopt;
  }

  /// Sets a box down at x, and on its far side further ones that are no wider while the row is high enough.
  double column(double edge, int way, double height, double x, Level level, std::size_t index) {
    set_down(x, edge, way, level, index);
    double used = level.high + spacing_;
    for (std::size_t i = 0; i < left_.size() && used < height;) {
      const FloorItem& item = items_[left_[i]];
      bool placed = false;
      for (const Level more : {Level{item.long_mm, item.short_mm}, Level{item.short_mm, item.long_mm}}) {
        if (more.wide > level.wide + kTouch_mm || used + more.high > height + kTouch_mm) continue;
        const double from = edge + way * used;
        const double half = half_width(from, from + way * more.high);
        const double at = std::max(x, -half);
        if (at + more.wide > std::min(half, x + level.wide) + kTouch_mm) continue;
        set_down(at, from, way, more, i);
        used += more.high + spacing_;
        placed = true;
        break;
      }
      if (!placed) ++i;
    }
    return x + level.wide + spacing_;
  }

  void set_down(double x, double edge, int way, Level level, std::size_t index) {
    const double y = way > 0 ? edge : edge - level.high;
    spots_.push_back({left_[index], x + level.wide / 2, y + level.high / 2, level.wide, level.high});
    left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(index));
  }

  const std::vector<FloorItem>& items_;
  double radius_;
  double spacing_;
  FillWay way_;
  std::vector<std::size_t> left_;
  std::vector<FloorSpot> spots_;
};

}  // namespace

std::vector<FloorSpot> fill_floor(const std::vector<FloorItem>& items, double radius_mm, double spacing_mm) {
  std::vector<FloorSpot> best;
  double most = 0;
  if (items.empty() || !(radius_mm > 0)) return best;
  for (const FirstRow first : {FirstRow::middle, FirstRow::beside_middle, FirstRow::rim}) {
    for (const RowOrder order : {RowOrder::area, RowOrder::longer_edge, RowOrder::urgency}) {
      for (const bool across : {true, false}) {
        auto spots = FloorFilling(items, radius_mm, spacing_mm, {first, order, across}).fill();
        double value = 0;
        bool with_first = false;
        for (const FloorSpot& spot : spots) {
          value += items[spot.item].value;
          with_first = with_first || spot.item == 0;
        }
        if (!with_first || value <= most) continue;
        most = value;
        best = std::move(spots);
      }
    }
  }
  return best;
}

}  // namespace prismwright
