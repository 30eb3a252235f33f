#include "core/frame/nest_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/plate_sums.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.01;
constexpr double kSafe_mm = 0.02;  ///< for the polygons' own chords
constexpr std::size_t kFewCorners = 64;
constexpr std::array kThinned_mm = {0.05, 0.1, 0.2, 0.4, 0.8, 1.6};
/// Openings smaller than this take no part.
constexpr double kSmallOpening_mm2 = 100;

double turn_rad(int turn) { return radians(static_cast<double>(turn * kTurnStep_deg)); }

int turn_between(int first, int second) { return ((second - first) % kTurnSteps + kTurnSteps) % kTurnSteps; }

std::size_t corners_of(const PlateRegion& region) {
  std::size_t sum = 0;
  for (const PlateOutline& outline : region) sum += outline.size();
  return sum;
}

PlateRegion grown_ground(const PlateRegion& plate, double by_mm) {
  PlateRegion ground;
  for (const double within : kThinned_mm) {
    ground = grown(plate, by_mm + within + kSafe_mm, Corner::round);
    for (PlateOutline& outline : ground) outline = thinned(outline, within);
    ground = united(ground);
    if (corners_of(ground) <= kFewCorners * ground.size()) break;
  }
  std::erase_if(ground, [](const PlateOutline& outline) {
    const double area = signed_area_mm2(outline);
    return area < 0 && -area < kSmallOpening_mm2;
  });
  return ground;
}

PlateOutline largest_of(const PlateRegion& region) {
  return *std::ranges::max_element(region, {}, [](const PlateOutline& o) { return signed_area_mm2(o); });
}

PlateExtent shifted(const PlateExtent& extent, PlatePoint by) {
  return {{extent.low.u + by.u, extent.low.v + by.v}, {extent.high.u + by.u, extent.high.v + by.v}};
}

PlateExtent joined(const PlateExtent& a, const PlateExtent& b) {
  return {{std::min(a.low.u, b.low.u), std::min(a.low.v, b.low.v)},
          {std::max(a.high.u, b.high.u), std::max(a.high.v, b.high.v)}};
}

/// How a place is judged, in whole hundredths so that equal places are told apart by the next figure.
using Rank = std::array<long long, 4>;
Rank rank_of(const PlateExtent& used, const PlateExtent& part, NestAim aim) {
  const auto whole = [](double value) { return std::llround(value * 100); };
  const long long box = std::llround((used.high.u - used.low.u) * (used.high.v - used.low.v));
  switch (aim) {
    case NestAim::small_box:
      return {box, whole(used.high.v), whole(part.low.v), whole(part.low.u)};
    case NestAim::low:
      return {whole(part.high.v), whole(part.low.v), whole(part.low.u), box};
    case NestAim::left:
      return {whole(part.high.u), whole(part.low.u), whole(part.low.v), box};
  }
  return {};
}

}  // namespace

NestShape nest_shape(const FlatPart& part, double spacing_mm) {
  NestShape shape;
  shape.outline = part.outline;
  std::vector<PlateOutline> cuts;
  for (const PlateChain& cut : through_cuts(part)) cuts.push_back(flattened(cut, kChord_mm));
  const PlateRegion plate = first_less_second({flattened(part.outline, kChord_mm)}, united(cuts));
  shape.ground = grown_ground(plate, spacing_mm / 2);
  shape.cover = largest_of(shape.ground);
  for (int turn = 0; turn < kTurnSteps; ++turn)
    shape.extents.push_back(extent_of(moved(part.outline, turn_rad(turn), {})));
  return shape;
}

PlateRegion MeetingPlaces::of(std::size_t first, int first_turn, std::size_t second, int second_turn) {
  const int relative = turn_between(first_turn, second_turn);
  const auto key = std::make_tuple(first, second, relative);
  auto known = known_.find(key);
  if (known == known_.end()) {
    const PlateOutline turned = moved({shapes_[second].cover}, turn_rad(relative), {}).front();
    known = known_.emplace(key, places_that_meet(shapes_[first].ground, turned)).first;
  }
  return first_turn == 0 ? known->second : moved(known->second, turn_rad(first_turn), {});
}

PlateRegion OpenSheet::empty_sheet(const PlateExtent& part) const {
  // A part that just fits has one place; it needs a little width to be a region.
  constexpr double kJustFits_mm = 2e-5;
  const PlatePoint low = {edge_mm_ - part.low.u - kJustFits_mm, edge_mm_ - part.low.v - kJustFits_mm};
  const PlatePoint high = {width_mm_ - edge_mm_ - part.high.u + kJustFits_mm,
                           height_mm_ - edge_mm_ - part.high.v + kJustFits_mm};
  if (high.u <= low.u || high.v <= low.v) return {};
  return {plate_rectangle(low, high)};
}

PlatePoint OpenSheet::on_sheet(PlatePoint place, const PlateExtent& part) const {
  const auto kept = [&](double at, double low, double high) {
    return std::max(edge_mm_ - low, std::min(at, high));
  };
  return {kept(place.u, part.low.u, width_mm_ - edge_mm_ - part.high.u),
          kept(place.v, part.low.v, height_mm_ - edge_mm_ - part.high.v)};
}

const PlateRegion& OpenSheet::free_places(std::size_t shape, int turn, const std::vector<NestShape>& shapes,
                                          MeetingPlaces& meetings) {
  const auto key = std::make_pair(shape, turn);
  auto found = free_.find(key);
  if (found == free_.end()) {
    const PlateExtent& extent = shapes[shape].extents[static_cast<std::size_t>(turn)];
    found = free_.emplace(key, Free{empty_sheet(extent), 0}).first;
  }
  Free& free = found->second;
  std::vector<PlateOutline> taken;
  for (; free.counted < standing_.size() && !free.places.empty(); ++free.counted) {
    const LaidShape& other = standing_[free.counted];
    PlateRegion meeting = moved(meetings.of(other.shape, other.turn, shape, turn), 0, other.shift);
    taken.insert(taken.end(), meeting.begin(), meeting.end());
  }
  if (!taken.empty()) free.places = first_less_second(free.places, taken);
  return free.places;
}

std::optional<LaidShape> OpenSheet::place(std::size_t shape, const std::vector<NestShape>& shapes,
                                          const std::vector<int>& turns, MeetingPlaces& meetings) {
  std::optional<LaidShape> best;
  Rank best_rank{};
  for (const int turn : turns) {
    const PlateExtent& extent = shapes[shape].extents[static_cast<std::size_t>(turn)];
    for (const PlateOutline& outline : free_places(shape, turn, shapes, meetings)) {
      for (const PlatePoint place : outline) {
        const PlateExtent part = shifted(extent, place);
        const Rank rank = rank_of(used_ ? joined(*used_, part) : part, part, aim_);
        if (best && rank >= best_rank) continue;
        best = LaidShape{shape, turn, on_sheet(place, extent)};
        best_rank = rank;
      }
    }
  }
  return best;
}

double OpenSheet::box_area_mm2() const {
  return used_ ? (used_->high.u - used_->low.u) * (used_->high.v - used_->low.v) : 0;
}

void OpenSheet::put(const LaidShape& standing, const std::vector<NestShape>& shapes) {
  const PlateExtent part =
      shifted(shapes[standing.shape].extents[static_cast<std::size_t>(standing.turn)], standing.shift);
  used_ = used_ ? joined(*used_, part) : part;
  standing_.push_back(standing);
}

}  // namespace prismwright
