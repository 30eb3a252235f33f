#include "geometry/bodies.h"

#include <algorithm>
#include <atomic>
#include <future>
#include <map>
#include <mutex>
#include <new>
#include <set>
#include <string_view>

#include <fmt/format.h>
#include <Standard_Failure.hxx>
#include <TopLoc_Location.hxx>
#include <gp_Trsf.hxx>

#include "core/base/angle.h"
#include "core/lens/trimmed_volume.h"
#include "geometry/convert.h"
#include "geometry/greatest_length.h"
#include "geometry/solid_check.h"

namespace prismwright {

namespace {

/// One shape in its panel's own frame, with what is measured on it.
struct Made {
  TopoDS_Shape shape;
  SolidMeasure measure;
  double greatest_length_mm = 0;
};
using MadeByKey = std::map<std::string, Made, std::less<>>;

constexpr std::size_t kShapesKept = 4000;

Problem stopped() {
  return {Trouble::stopped, "stopped", "",
          "The solids were stopped before all were made. Start them again to go on."};
}

Problem kernel_gave_up(const PlannedPrism& prism, std::string_view why) {
  return request_problem(
      "solid", prism.mark,
      fmt::format("{}: its solid could not be measured ({}). Change the division of the zones "
                  "or the panel's width a little.",
                  prism.mark, why));
}

Outcome<Made> make_one(const PlannedPrism& prism) {
  try {
    const auto shape = prism_shape(prism);
    if (!shape) return shape.problem();
    return Made{*shape, measured(*shape, trimmed_volume_mm3(prism)), greatest_length_mm(prism)};
  } catch (const Standard_Failure& failure) {
    return kernel_gave_up(prism, failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return kernel_gave_up(prism, "memory ran out");
  }
}

/// Shapes that two threads make from one list; the first trouble ends the work of both.
class SharedWork {
 public:
  SharedWork(std::vector<const PlannedPrism*> wanted, MadeByKey& made, const Progress& progress)
      : wanted_(std::move(wanted)), made_(made), progress_(progress) {}

  Done run() {
    auto helper = std::async(std::launch::async, [this] { work(); });
    work();
    helper.get();
    return trouble_ ? Done(*trouble_) : Done();
  }

 private:
  void work() {
    for (std::size_t i = next_++; i < wanted_.size() && !over_; i = next_++) {
      auto made = make_one(*wanted_[i]);
      const std::lock_guard<std::mutex> lock(guard_);
      take(*wanted_[i], i, std::move(made));
    }
  }

  void take(const PlannedPrism& prism, std::size_t place, Outcome<Made> made) {
    if (!made) return end_with(made.problem(), place);
    made_.insert_or_assign(prism.shape_key, std::move(made).value());
    ++ready_;
    if (over_) return;
    const double share = static_cast<double>(ready_) / static_cast<double>(wanted_.size());
    if (!goes_on(progress_, share, prism.mark)) end_with(stopped(), wanted_.size());
  }

  /// Of two troubles the one that comes first in the plan is told.
  void end_with(Problem problem, std::size_t place) {
    if (!trouble_ || place < trouble_place_) {
      trouble_ = std::move(problem);
      trouble_place_ = place;
    }
    over_ = true;
  }

  std::vector<const PlannedPrism*> wanted_;
  MadeByKey& made_;
  const Progress& progress_;
  std::mutex guard_;
  std::atomic<std::size_t> next_ = 0;
  std::atomic<bool> over_ = false;
  std::size_t ready_ = 0;
  std::optional<Problem> trouble_;
  std::size_t trouble_place_ = 0;
};

PrismBody in_place(const PlannedPrism& prism, const Made& made, double density_g_cm3) {
  gp_Trsf turn;
  turn.SetRotation(turning_line(TurningAxis::lens), radians(prism.axis_deg));
  PrismBody body;
  body.mark = prism.mark;
  body.shape = made.shape.Moved(TopLoc_Location(turn));
  body.volume_mm3 = made.measure.volume_mm3;
  body.mass_g = made.measure.volume_mm3 * density_g_cm3 / 1000;
  body.centre_of_gravity_mm = made.measure.centre_of_gravity_mm.Transformed(turn);
  body.greatest_length_mm = made.greatest_length_mm;
  return body;
}

}  // namespace

struct BodyShop::Inside {
  MadeByKey made;
  int made_anew = 0;

  [[nodiscard]] std::vector<const PlannedPrism*> wanted(const LensPlan& plan) const {
    std::vector<const PlannedPrism*> list;
    std::set<std::string_view> keys;
    for (const PlannedPrism& prism : plan.prisms) {
      if (made.find(prism.shape_key) == made.end() && keys.insert(prism.shape_key).second)
        list.push_back(&prism);
    }
    return list;
  }

  /// Keeps the store from growing without end: what this plan does not use goes when there is too much.
  void clear_out(const LensPlan& plan) {
    if (made.size() <= kShapesKept) return;
    std::set<std::string_view> used;
    for (const PlannedPrism& prism : plan.prisms) used.insert(prism.shape_key);
    std::erase_if(made, [&](const auto& entry) { return used.count(entry.first) == 0; });
  }
};

const PrismBody* LensBodies::find(std::string_view mark) const {
  const auto found =
      std::find_if(prisms.begin(), prisms.end(), [&](const PrismBody& b) { return b.mark == mark; });
  return found == prisms.end() ? nullptr : &*found;
}

BodyShop::BodyShop() : inside_(std::make_unique<Inside>()) {}
BodyShop::~BodyShop() = default;

int BodyShop::made_anew() const { return inside_->made_anew; }

Outcome<LensBodies> BodyShop::make(const LensPlan& plan, const Progress& progress) {
  auto wanted = inside_->wanted(plan);
  inside_->made_anew = static_cast<int>(wanted.size());
  if (!wanted.empty()) {
    if (!goes_on(progress, 0, wanted.front()->mark)) return stopped();
    const Done done = SharedWork(std::move(wanted), inside_->made, progress).run();
    if (!done) return done.problem();
  }
  LensBodies bodies;
  bodies.prisms.reserve(plan.prisms.size());
  for (const PlannedPrism& prism : plan.prisms) {
    bodies.prisms.push_back(
        in_place(prism, inside_->made.find(prism.shape_key)->second, plan.values.material.density_g_cm3));
  }
  inside_->clear_out(plan);
  return bodies;
}

}  // namespace prismwright
