#include "geometry/door_sweep.h"

#include <algorithm>
#include <limits>
#include <new>
#include <queue>

#include <Standard_Failure.hxx>

#include "core/base/angle.h"
#include "geometry/clearances.h"
#include "geometry/door_motion.h"
#include "geometry/nearest_place.h"

namespace prismwright {
namespace {

constexpr double kWidest_deg = 180;
constexpr double kTouch_mm = 2e-3;
constexpr double kStride_mm = 3;  // gaps are not measured farther than this on the way to the first touch
constexpr double kFarthest_mm = 1000;

// Every way of the door that may hold the least gap: a pair over a stretch of angles.
struct Stretch {
  std::size_t pair = 0;
  double from_deg = 0;
  double to_deg = 0;
  double least_mm = 0;
};
struct Later {
  bool operator()(const Stretch& a, const Stretch& b) const { return a.least_mm > b.least_mm; }
};

class Sweeper {
 public:
  Sweeper(const DoorMotion& motion, const Progress& progress) : motion_(motion), progress_(progress) {}

  std::optional<DoorSweep> run(double wanted_deg) {
    DoorSweep sweep;
    find_free(sweep);
    for (const double angle : angles_to(sweep.free_deg)) {
      if (stopped_ || !goes_on(progress_, 0.4 + 0.3 * angle / kWidest_deg, "door")) return std::nullopt;
      if (auto step = step_at(angle)) sweep.steps.push_back(*step);
    }
    if (sweep.steps.empty()) return sweep;
    sweep.least = *std::min_element(sweep.steps.begin(), sweep.steps.end(),
                                    [](const auto& a, const auto& b) { return a.gap_mm < b.gap_mm; });
    if (stop_) {
      sweep.steps.push_back(*stop_);
      sweep.least = *stop_;
    } else {
      find_least(sweep);
    }
    if (stopped_) return std::nullopt;
    sweep.opens_enough = sweep.free_deg >= wanted_deg - kDoorFree_deg / 2;
    sweep.shut_enough = sweep.steps.front().gap_mm >= kMetalApart_mm;
    return sweep;
  }

 private:
  // Each pair goes as far as its gap allows, again and again, until it touches or is as far as the others.
  void find_free(DoorSweep& sweep) {
    sweep.free_deg = kWidest_deg;
    std::size_t done = 0;
    for (const std::size_t number : nearest_first()) {
      const DoorPair& pair = motion_.pairs()[number];
      if (++done % 64 == 0 &&
          !goes_on(progress_, 0.4 * static_cast<double>(done) / static_cast<double>(motion_.pairs().size()),
                   "door")) {
        stopped_ = true;
        return;
      }
      if (pair.height_apart_mm > kTouch_mm) continue;
      advance(pair, sweep);
    }
  }

  void advance(const DoorPair& pair, DoorSweep& sweep) {
    for (double angle = 0; angle < sweep.free_deg;) {
      double apart = motion_.least_by_boxes_mm(pair, angle);
      if (apart < kStride_mm / 2) {
        const auto gap = motion_.gap_at(pair, angle, kStride_mm);
        apart = gap ? gap->gap_mm : kStride_mm;
        if (apart < kTouch_mm) {
          sweep.free_deg = angle;
          stop_ = DoorStep{angle,
                           0,
                           motion_.mark_of_first(pair),
                           motion_.mark_of_second(pair),
                           gap->first_point,
                           gap->second_point};
          return;
        }
        apart -= kSearchWithin_mm;
      }
      angle += std::max(degrees(apart / pair.reach_mm), 1e-4);
    }
  }

  [[nodiscard]] std::vector<std::size_t> nearest_first() const {
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < motion_.pairs().size(); ++i) {
      order.emplace_back(motion_.least_by_boxes_mm(motion_.pairs()[i], 0), i);
    }
    std::sort(order.begin(), order.end());
    std::vector<std::size_t> numbers;
    for (const auto& [apart, number] : order) numbers.push_back(number);
    return numbers;
  }

  static std::vector<double> angles_to(double free_deg) {
    std::vector<double> angles;
    for (const double angle : {0.0, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0}) {
      if (angle <= free_deg) angles.push_back(angle);
    }
    for (double angle = 10; angle <= free_deg; angle += 5) angles.push_back(angle);
    return angles;
  }

  // The nearest of all pairs at one angle; those whose boxes stand apart are not measured.
  std::optional<DoorStep> step_at(double angle_deg) const {
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < motion_.pairs().size(); ++i) {
      const DoorPair& pair = motion_.pairs()[i];
      order.emplace_back(std::max(pair.height_apart_mm, motion_.least_by_boxes_mm(pair, angle_deg)), i);
    }
    std::sort(order.begin(), order.end());
    std::optional<DoorStep> nearest;
    double limit = kFarthest_mm;
    for (const auto& [apart, number] : order) {
      if (apart >= limit) break;
      const DoorPair& pair = motion_.pairs()[number];
      if (const auto gap = motion_.gap_at(pair, angle_deg, limit)) {
        limit = gap->gap_mm;
        nearest = step_of(pair, angle_deg, *gap);
      }
    }
    return nearest;
  }

  [[nodiscard]] DoorStep step_of(const DoorPair& pair, double angle_deg, const SolidGap& gap) const {
    return {angle_deg,       gap.gap_mm,      motion_.mark_of_first(pair), motion_.mark_of_second(pair),
            gap.first_point, gap.second_point};
  }

  // Stretches of angles in the order of the least that they may hold; halved until none may hold less.
  void find_least(DoorSweep& sweep) {
    std::priority_queue<Stretch, std::vector<Stretch>, Later> waiting;
    for (std::size_t i = 0; i < motion_.pairs().size(); ++i) {
      if (motion_.pairs()[i].height_apart_mm >= sweep.least.gap_mm - kDoorGap_mm) continue;
      const std::vector<double> angles = angles_to(sweep.free_deg);
      for (std::size_t k = 0; k < angles.size(); ++k) {
        const double to = k + 1 < angles.size() ? angles[k + 1] : sweep.free_deg;
        if (to > angles[k]) put(waiting, {i, angles[k], to, 0}, sweep);
      }
    }
    for (int taken = 0; !waiting.empty(); ++taken) {
      const Stretch stretch = waiting.top();
      waiting.pop();
      if (stretch.least_mm >= sweep.least.gap_mm - kDoorGap_mm) return;
      if (taken % 64 == 0 && !goes_on(progress_, 0.8, "door")) {
        stopped_ = true;
        return;
      }
      measure(waiting, stretch, sweep);
    }
  }

  using Waiting = std::priority_queue<Stretch, std::vector<Stretch>, Later>;

  // By boxes alone.
  void put(Waiting& waiting, Stretch stretch, const DoorSweep& sweep) const {
    const DoorPair& pair = motion_.pairs()[stretch.pair];
    const double half = (stretch.to_deg - stretch.from_deg) / 2;
    const double boxes = motion_.least_by_boxes_mm(pair, stretch.from_deg + half);
    stretch.least_mm = std::max(stretch.least_mm, boxes - pair.reach_mm * radians(half));
    if (stretch.least_mm < sweep.least.gap_mm - kDoorGap_mm) waiting.push(stretch);
  }

  void measure(Waiting& waiting, const Stretch& stretch, DoorSweep& sweep) const {
    const DoorPair& pair = motion_.pairs()[stretch.pair];
    const double middle = (stretch.from_deg + stretch.to_deg) / 2;
    const double way = pair.reach_mm * radians((stretch.to_deg - stretch.from_deg) / 2);
    const double far = sweep.least.gap_mm + way;
    const auto gap = motion_.gap_at(pair, middle, far);
    if (!gap) return;
    if (gap->gap_mm < sweep.least.gap_mm) sweep.least = step_of(pair, middle, *gap);
    const double least = std::max(pair.height_apart_mm, gap->gap_mm - way);
    put(waiting, {stretch.pair, stretch.from_deg, middle, least}, sweep);
    put(waiting, {stretch.pair, middle, stretch.to_deg, least}, sweep);
  }

  const DoorMotion& motion_;
  const Progress& progress_;
  std::optional<DoorStep> stop_;
  bool stopped_ = false;
};

Problem stopped() {
  return {Trouble::stopped, "stopped", "door",
          "The door's way was stopped before it was measured. Start it again to go on."};
}

Problem not_swept(const std::string& why) {
  return request_problem("clearance", "door", "The door's way could not be measured" + why);
}

}  // namespace

Outcome<std::optional<DoorSweep>> sweep_door(const LensPlan& plan, const LensBodies& bodies,
                                             const FramePlan& frame, const std::vector<FrameBody>& metal,
                                             const Progress& progress) {
  if (!frame.hinge) return std::optional<DoorSweep>();
  try {
    PartBook book;
    const auto parts = book.parts_of(plan, bodies, frame, metal);
    const DoorMotion motion(plan, frame, parts);
    auto sweep = Sweeper(motion, progress).run(plan.values.frame.door_open_deg);
    if (!sweep) return stopped();
    return sweep;
  } catch (const Standard_Failure& failure) {
    return not_swept(std::string(" (") + failure.GetMessageString() +
                     "). Change the door's gap or the division of the zones a little.");
  } catch (const std::bad_alloc&) {
    return not_swept(": memory ran out. Close other programs and start them again.");
  }
}

}  // namespace prismwright
