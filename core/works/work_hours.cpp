#include "core/works/work_hours.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/works/cure_plan.h"

namespace prismwright {
namespace {

int at(const MakeRow& row, Stage stage) { return row.in_hand[static_cast<std::size_t>(stage)]; }

const PieceVolumes* volumes_of(const MakeRow& row, const WorkInputs& inputs) {
  const auto found = std::find_if(inputs.volumes.begin(), inputs.volumes.end(),
                                  [&](const PieceVolumes& v) { return v.master == row.master; });
  return found == inputs.volumes.end() ? nullptr : &*found;
}

/// Adds up the steps row by row.
class HoursSum {
 public:
  HoursSum(const LensPlan& plan, const WorkInputs& inputs) : works_(plan.values.works), inputs_(inputs) {
    for (const WorkStep step : kWorkSteps) {
      StepHours hours;
      hours.plan.step = step;
      steps_.push_back(hours);
    }
  }

  void add(const MakeRow& row) {
    add_models(row);
    const int castings = whole_castings(row, works_);
    whole_castings_ += castings;
    const int to_anneal = row.short_of + at(row, Stage::cast);
    const int to_polish = to_anneal + at(row, Stage::annealed);
    const int to_prove = to_polish + at(row, Stage::polished);
    const int prisms = static_cast<int>(row.marks.size());
    short_of_ += row.short_of;
    of(WorkStep::cast).flow_left += row.short_of;
    of(WorkStep::anneal).flow_left += to_anneal;
    if (at(row, Stage::cast) > 0) {
      const CurePlan cure = plan_cure(works_, row.thickness_mm);
      waiting_oven_h_ = std::max(waiting_oven_h_, cure.total_h - cure.vessel_h);
      castings_wait_ = true;
    }
    add_pieces(WorkStep::polish, castings, to_polish, works_.polish_h_per_dm2 * row.optical_mm2 / 1e4);
    add_pieces(WorkStep::prove, castings, to_prove, works_.prove_h);
    add_pieces(WorkStep::glaze, prisms, prisms - at(row, Stage::glazed), works_.glaze_h);
    proved_ += at(row, Stage::proved);
  }

  std::vector<StepHours> sum(const LoadCounts& loads, const LoadCounts& whole_guess) {
    add_loads(loads, whole_guess);
    add_frame();
    return std::move(steps_);
  }

 private:
  StepHours& of(WorkStep step) { return steps_[static_cast<std::size_t>(step)]; }

  void add_pieces(WorkStep step, int units, int left, double hours_each) {
    StepHours& hours = of(step);
    hours.plan.units += units;
    hours.plan.units_left += left;
    hours.plan.hands_h += units * hours_each;
    hours.plan.hands_left_h += left * hours_each;
    hours.flow_left += left;
  }

  void add_models(const MakeRow& row) {
    const int master_left = !row.has_master && row.short_of > 0 ? 1 : 0;
    add_pieces(WorkStep::master, 1, master_left, works_.master_h);
    of(WorkStep::master).plan.machine_left_h += master_left * print_cm3(row, inputs_) / works_.print_cm3_per_h;
    add_pieces(WorkStep::mould, whole_moulds(row, works_), row.moulds_to_make, works_.mould_h);
    // What they pass on are castings, not themselves.
    of(WorkStep::master).flow_left += master_left * (row.short_of - 1);
    of(WorkStep::mould).flow_left +=
        row.moulds_to_make > 0 ? (row.has_mould ? 0 : row.short_of) - row.moulds_to_make : 0;
  }

  void add_loads(const LoadCounts& loads, const LoadCounts& whole_guess) {
    // Loads of the whole lens, filled as those to come are.
    const double whole = short_of_ > 0 && loads.vessel_loads > 0
                             ? std::ceil(loads.vessel_loads * whole_castings_ / short_of_ - 1e-9)
                             : whole_guess.vessel_loads;
    StepPlan& cast = of(WorkStep::cast).plan;
    cast.units = whole;
    cast.units_left = loads.vessel_loads;
    cast.hands_h = whole * works_.load_h;
    cast.hands_left_h = loads.vessel_loads * works_.load_h;
    cast.machine_left_h = loads.vessel_loads * loads.cure_h_each;
    StepPlan& anneal = of(WorkStep::anneal).plan;
    const double waiting = castings_wait_ ? 1 : 0;
    anneal.units = whole;
    anneal.units_left = static_cast<double>(loads.oven_h.size()) + waiting;
    anneal.hands_h = whole * works_.anneal_hand_h;
    anneal.hands_left_h = anneal.units_left * works_.anneal_hand_h;
    anneal.machine_left_h =
        std::accumulate(loads.oven_h.begin(), loads.oven_h.end(), waiting * waiting_oven_h_);
  }

  void add_frame() {
    double spent = 0;
    for (const Spending& entry : inputs_.spendings) {
      if (find_work_step(entry.step) == WorkStep::frame) spent += entry.hours;
    }
    StepPlan& frame = of(WorkStep::frame).plan;
    frame.units = 1;
    frame.hands_h = works_.frame_h;
    frame.hands_left_h = std::clamp(works_.frame_h - spent, 0.0, works_.frame_h);
    frame.units_left = works_.frame_h > 0 ? frame.hands_left_h / works_.frame_h : 0;
    // Proved prisms wait for nothing but the frame.
    of(WorkStep::prove).flow_left =
        std::max(0.0, of(WorkStep::glaze).plan.units_left - static_cast<double>(proved_));
  }

  const WorksSettings& works_;
  const WorkInputs& inputs_;
  std::vector<StepHours> steps_;
  double whole_castings_ = 0;
  double short_of_ = 0;
  double waiting_oven_h_ = 0;
  bool castings_wait_ = false;
  int proved_ = 0;
};

}  // namespace

double print_cm3(const MakeRow& row, const WorkInputs& inputs) {
  const PieceVolumes* given = volumes_of(row, inputs);
  return given && given->print_cm3 ? *given->print_cm3 : row.volume_mm3 / 1000;
}

double tooling_cm3(const MakeRow& row, const WorkInputs& inputs) {
  const PieceVolumes* given = volumes_of(row, inputs);
  return given && given->tooling_cm3 ? *given->tooling_cm3 : row.mould_mm3 / 1000;
}

int whole_castings(const MakeRow& row, const WorksSettings& works) {
  return castings_for(static_cast<int>(row.marks.size()), works.scrap_percent).castings;
}

int whole_moulds(const MakeRow& row, const WorksSettings& works) {
  return (whole_castings(row, works) + works.mould_life - 1) / works.mould_life;
}

namespace {

LoadCounts guess_loads_of(const LensPlan& plan, const MakeList& list, bool whole) {
  struct Piece {
    double thickness_mm = 0;
    int loads = 0;
  };
  const WorksSettings& works = plan.values.works;
  std::vector<Piece> pieces;
  for (const MakeRow& row : list.rows) {
    const int castings = whole ? whole_castings(row, works) : row.short_of;
    const int moulds =
        std::max(1, whole ? whole_moulds(row, works) : row.moulds_to_make + (row.has_mould ? 1 : 0));
    if (castings > 0) pieces.push_back({row.thickness_mm, (castings + moulds - 1) / moulds});
  }
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.thickness_mm > b.thickness_mm; });
  LoadCounts counts;
  for (std::size_t first = 0; first < pieces.size();) {
    const double thickest = pieces[first].thickness_mm;
    int loads = 0;
    std::size_t i = first;
    for (; i < pieces.size() && thickest <= works.thickness_ratio * pieces[i].thickness_mm + 1e-9; ++i)
      loads = std::max(loads, pieces[i].loads);
    if (i == first) loads = pieces[i++].loads;
    const CurePlan cure = plan_cure(works, thickest);
    counts.vessel_loads += loads;
    counts.cure_h_each = cure.vessel_h;
    counts.oven_h.insert(counts.oven_h.end(), static_cast<std::size_t>(loads), cure.total_h - cure.vessel_h);
    first = i;
  }
  return counts;
}

}  // namespace

LoadCounts guess_loads(const LensPlan& plan, const MakeList& list) { return guess_loads_of(plan, list, false); }

std::vector<StepHours> step_hours(const LensPlan& plan, const MakeList& list, const LoadCounts& loads,
                                  const WorkInputs& inputs) {
  HoursSum sum(plan, inputs);
  for (const MakeRow& row : list.rows) sum.add(row);
  return sum.sum(loads, guess_loads_of(plan, list, true));
}

}  // namespace prismwright
