#include "core/works/cure_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace prismwright {

namespace {

constexpr double kSlowAbove_mm = 8;  ///< from here cooling takes a quarter of an hour for each mm at least
constexpr double kCoolingMmPerHour = 4;
constexpr const char* kSheet = "resin maker's sheet, as entered";
constexpr const char* kHandbooks = "handbooks of cast sheet, as entered";
constexpr const char* kTable = "makers' tables of cast sheet";

struct CoolingRow {
  double thick_mm;
  double c_per_h;
};
/// Bands of equal rates have two rows.
constexpr std::array<CoolingRow, 7> kCooling = {
    {{9, 30}, {12, 14}, {18, 14}, {24, 10}, {38, 6.7}, {44, 6.7}, {kCoolingTableEnds_mm, 5.6}}};

bool within(std::optional<double> asked, std::optional<double> limit) {
  return asked && limit && *asked <= *limit;
}

class CurePlanner {
 public:
  CurePlanner(const WorksSettings& works, double thickest_mm) : works_(works) {
    plan_.thickest_mm = thickest_mm;
    plate_ = works.vessel_max_bar && works.vessel_max_c;
    with_bar_ = plate_ && within(works.cure_bar, works.vessel_max_bar);
    with_c_ = plate_ && within(works.cure_c, works.vessel_max_c);
    const double hottest = std::max({works.anneal_c, works.take_out_c, works.room_c});
    with_oven_ = plate_ && within(hottest, works.vessel_max_c);
  }

  CurePlan plan() {
    cure();
    plan_.vessel_h = hour_;
    anneal();
    plan_.total_h = hour_;
    note();
    return std::move(plan_);
  }

 private:
  CureStep& add(CureAct act, double hours, std::string what, std::string source) {
    CureStep step;
    step.act = act;
    step.what = std::move(what);
    step.from_h = hour_;
    hour_ += hours;
    step.to_h = hour_;
    step.source = std::move(source);
    plan_.steps.push_back(std::move(step));
    return plan_.steps.back();
  }

  void cure() {
    add(CureAct::fill, 0, "Fill the moulds, shut the vessel", "");
    CureStep& step = add(CureAct::cure, works_.cure_h, "", kSheet);
    step.what = "Cure in the vessel";
    if (with_bar_) {
      step.bar = works_.cure_bar;
      step.what += fmt::format(", {:g} bar over the air's", *works_.cure_bar);
    }
    if (with_c_) {
      step.from_c = step.to_c = works_.cure_c;
      step.what += fmt::format(", {:g} C", *works_.cure_c);
    }
    add(CureAct::vent, 0, "Let the vessel cool, let its pressure off slowly, then open it", "");
  }

  void anneal() {
    const double hold = std::max(works_.anneal_least_h, works_.anneal_h_per_mm * plan_.thickest_mm);
    warm(CureAct::heat, std::max(0.0, works_.anneal_c - works_.room_c) / works_.heating_c_per_h, works_.room_c,
         works_.anneal_c, "Heat the oven with the castings in it", kHandbooks);
    warm(CureAct::hold, hold, works_.anneal_c, works_.anneal_c, "Hold", kHandbooks);
    warm(CureAct::cool, cooling_h(), works_.anneal_c, works_.take_out_c, "Cool, the oven shut",
         works_.cooling_c_per_h ? kSheet : kTable);
    CureStep& out = add(CureAct::take_out, 0, "Take the castings out", "");
    if (!with_oven_) return;
    out.from_c = out.to_c = works_.take_out_c;
    out.what += fmt::format(" at {:g} C or below", works_.take_out_c);
  }

  void warm(CureAct act, double hours, double from_c, double to_c, std::string what, const char* source) {
    CureStep& step = add(act, hours, std::move(what), source);
    if (!with_oven_) return;
    step.from_c = from_c;
    step.to_c = to_c;
    step.what +=
        from_c == to_c ? fmt::format(" at {:g} C", to_c) : fmt::format(", from {:g} to {:g} C", from_c, to_c);
  }

  [[nodiscard]] double cooling_h() const {
    const double fall = std::max(0.0, works_.anneal_c - works_.take_out_c);
    if (works_.cooling_c_per_h) return fall / *works_.cooling_c_per_h;
    const double thick = plan_.thickest_mm;
    const double least = thick > kSlowAbove_mm ? thick / kCoolingMmPerHour : 0;
    return std::max(fall / table_cooling_c_per_h(thick), least);
  }

  void note() {
    auto& notes = plan_.notes;
    if (!plate_) {
      notes.emplace_back(
          "The vessel's plate is not entered (works.vessel_max_bar and works.vessel_max_c), so no pressure and "
          "no "
          "temperature is given here. Enter what it says, and have a competent person look at it.");
    } else {
      note_vessel();
    }
    if (!works_.cooling_c_per_h && plan_.thickest_mm > kCoolingTableEnds_mm) {
      notes.push_back(
          fmt::format("The thickest section is {:.1f} mm; makers' tables of cooling end at {:g} mm. Beyond "
                      "that the time is "
                      "reckoned, not published: ask the resin's maker.",
                      plan_.thickest_mm, kCoolingTableEnds_mm));
    }
    notes.emplace_back("The resin maker's sheet wins over every figure of this card.");
  }

  void note_vessel() {
    auto& notes = plan_.notes;
    if (!works_.cure_bar)
      notes.emplace_back("No cure pressure is entered (works.cure_bar): the resin maker's sheet gives it.");
    else if (!with_bar_)
      notes.emplace_back(
          "The cure pressure entered lies beyond the vessel's plate and is left out. Choose another "
          "resin or another vessel.");
    if (!works_.cure_c)
      notes.emplace_back("No cure temperature is entered (works.cure_c): the resin maker's sheet gives it.");
    else if (!with_c_)
      notes.emplace_back(
          "The cure temperature entered lies beyond the vessel's plate and is left out. Choose "
          "another resin or another vessel.");
    if (!with_oven_)
      notes.emplace_back(
          "The annealing entered lies beyond the temperature of the vessel's plate, and its "
          "temperatures are left out. Anneal in an oven made for it, by the resin maker's sheet, "
          "never in the vessel.");
  }

  const WorksSettings& works_;
  CurePlan plan_;
  double hour_ = 0;
  bool plate_ = false;
  bool with_bar_ = false;
  bool with_c_ = false;
  bool with_oven_ = false;
};

}  // namespace

const CureStep* CurePlan::find(CureAct act) const {
  const auto found = std::ranges::find(steps, act, &CureStep::act);
  return found == steps.end() ? nullptr : &*found;
}

double table_cooling_c_per_h(double thickest_mm) {
  if (thickest_mm <= kCooling.front().thick_mm) return kCooling.front().c_per_h;
  for (std::size_t i = 1; i < kCooling.size(); ++i) {
    const CoolingRow& low = kCooling[i - 1];
    const CoolingRow& high = kCooling[i];
    if (thickest_mm > high.thick_mm) continue;
    const double share = (thickest_mm - low.thick_mm) / (high.thick_mm - low.thick_mm);
    return low.c_per_h + share * (high.c_per_h - low.c_per_h);
  }
  const double over = kCoolingTableEnds_mm / thickest_mm;
  return kCooling.back().c_per_h * over * over;
}

CurePlan plan_cure(const WorksSettings& works, double thickest_mm) {
  return CurePlanner(works, thickest_mm).plan();
}

}  // namespace prismwright
