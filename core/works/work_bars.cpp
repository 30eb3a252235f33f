#include "core/works/work_bars.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace prismwright {
namespace {

/// More units than these change a bar by less than a line's width.
constexpr double kMostUnits = 400;
constexpr double kNever = std::numeric_limits<double>::infinity();

/// One step on its way. Days throughout.
struct Course {
  WorkStep step = WorkStep::master;
  int units = 0;
  double hands = 0;      ///< of one unit
  double machine = 0;    ///< of one unit
  double waits_for = 0;  ///< share of its units that come out of the step before
  int begun = 0;
  int between = 0;  ///< units that have had their machine, or their hands, and wait for the other
  int done = 0;
  double machine_free_at = 0;  ///< kNever while none runs
  bool machine_runs = false;
  double from = kNever;
  double to = 0;

  /// A master is printed, then finished; loads are filled, then left alone.
  [[nodiscard]] bool machine_first() const { return step == WorkStep::master; }
  [[nodiscard]] bool has_machine() const { return machine > 0; }
  [[nodiscard]] double share_done() const { return units == 0 ? 1 : static_cast<double>(done) / units; }
};

std::vector<Course> courses_of(std::span<const StepHours> steps, double hands_a_day) {
  std::vector<Course> courses;
  for (const StepHours& step : steps) {
    const StepPlan& plan = step.plan;
    Course course;
    course.step = plan.step;
    double units = std::ceil(std::min(kMostUnits, plan.units_left) - 1e-9);
    if (plan.step == WorkStep::frame) units = std::ceil(std::min(kMostUnits, plan.hands_left_h));
    course.units = static_cast<int>(units);
    if (course.units > 0) {
      course.hands = plan.hands_left_h / hands_a_day / units;
      course.machine = plan.machine_left_h / 24 / units;
    }
    courses.push_back(course);
  }
  for (std::size_t i = 1; i < courses.size(); ++i) {
    const double own = courses[i].step == WorkStep::glaze ? steps[i].plan.units_left : steps[i].flow_left;
    if (courses[i].step != WorkStep::frame && own > 0)
      courses[i].waits_for = std::clamp(steps[i - 1].flow_left / own, 0.0, 1.0);
  }
  return courses;
}

/// Moves from one event to the next: hands or a machine become free.
class Workshop {
 public:
  explicit Workshop(std::vector<Course> courses) : courses_(std::move(courses)) {}

  std::vector<WorkBar> run() {
    while (begin_all() || finish_next()) {
    }
    std::vector<WorkBar> bars;
    for (const Course& course : courses_) {
      if (course.units > 0 && course.from < kNever) bars.push_back({course.step, course.from, course.to});
    }
    return bars;
  }

 private:
  /// Units of a step that may be begun.
  [[nodiscard]] int ready(std::size_t i) const {
    const Course& course = courses_[i];
    if (course.step == WorkStep::glaze && courses_.back().done < courses_.back().units) return 0;
    if (i == 0 || course.step == WorkStep::frame) return course.units;
    const double share = 1 - course.waits_for * (1 - passed_on(i - 1));
    return static_cast<int>(std::floor(share * course.units + 1e-9));
  }

  /// Share of a step that is done; an empty one passes on what it is passed.
  [[nodiscard]] double passed_on(std::size_t i) const {
    const Course& course = courses_[i];
    if (course.units > 0) return course.share_done();
    return i == 0 ? 1 : 1 - course.waits_for * (1 - passed_on(i - 1));
  }

  bool begin_all() {
    bool any = false;
    for (std::size_t i = 0; i < courses_.size(); ++i) any = begin_machine(i) || any;
    if (!hands_at_) any = begin_hands() || any;
    return any;
  }

  bool begin_machine(std::size_t i) {
    Course& course = courses_[i];
    if (!course.has_machine() || course.machine_runs) return false;
    if (course.machine_first()) {
      if (course.begun >= ready(i) || course.begun >= course.units) return false;
      ++course.begun;
      course.from = std::min(course.from, now_);
    } else {
      if (course.between == 0) return false;
      --course.between;
    }
    course.machine_runs = true;
    course.machine_free_at = now_ + course.machine;
    return true;
  }

  bool begin_hands() {
    for (std::size_t i = 0; i < courses_.size(); ++i) {
      Course& course = courses_[i];
      const bool from_machine = course.machine_first() && course.has_machine();
      if (from_machine ? course.between == 0 : course.begun >= std::min(ready(i), course.units)) continue;
      if (from_machine) {
        --course.between;
      } else {
        ++course.begun;
        course.from = std::min(course.from, now_);
      }
      hands_at_ = i;
      hands_free_at_ = now_ + course.hands;
      return true;
    }
    return false;
  }

  /// Goes on to the next end of a task; false when there is none.
  bool finish_next() {
    double next = hands_at_ ? hands_free_at_ : kNever;
    for (const Course& course : courses_) {
      if (course.machine_runs) next = std::min(next, course.machine_free_at);
    }
    if (next == kNever) return false;
    now_ = next;
    if (hands_at_ && hands_free_at_ <= now_) {
      Course& course = courses_[*hands_at_];
      hands_at_.reset();
      course.has_machine() && !course.machine_first() ? ++course.between : finish(course);
    }
    for (Course& course : courses_) {
      if (!course.machine_runs || course.machine_free_at > now_) continue;
      course.machine_runs = false;
      course.machine_first() ? ++course.between : finish(course);
    }
    return true;
  }

  int finish(Course& course) {
    course.to = now_;
    return ++course.done;
  }

  std::vector<Course> courses_;
  double now_ = 0;
  std::optional<std::size_t> hands_at_;
  double hands_free_at_ = 0;
};

}  // namespace

std::vector<WorkBar> work_bars(std::span<const StepHours> steps, double hours_a_week) {
  return Workshop(courses_of(steps, hours_a_week / 7)).run();
}

}  // namespace prismwright
