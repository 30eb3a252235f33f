#include "core/papers/estimate_options.h"

#include <algorithm>

#include "core/works/work_hours.h"

namespace prismwright {

namespace {

constexpr double kMm2PerDm2 = 1e4;
constexpr double kMostScrap = 0.9;  ///< as castings_for has it

const CostLine* line_of(const Costs& costs, std::string_view item) {
  const auto found = std::ranges::find(costs.lines, item, &CostLine::item);
  return found == costs.lines.end() ? nullptr : &*found;
}

/// Sums over the whole lens by the make list's rule.
struct WholeLens {
  double castings = 0;
  double casting_mm3 = 0;
  double mould_mm3 = 0;
  double print_mm3 = 0;
};

WholeLens whole_lens(const WorksReckoning& works, const WorksSettings& settings) {
  WholeLens sum;
  for (const MakeRow& row : works.list.rows) {
    const int castings = whole_castings(row, settings);
    sum.castings += castings;
    sum.casting_mm3 += castings * row.volume_mm3;
    sum.mould_mm3 += whole_moulds(row, settings) * row.mould_mm3;
    sum.print_mm3 += row.volume_mm3;
  }
  return sum;
}

/// Cost of so much of a line's material by volume of what is made of it.
double cost_per_mm3(const Costs& costs, std::string_view item, double whole_mm3) {
  const CostLine* line = line_of(costs, item);
  return line && whole_mm3 > 0 ? line->cost / whole_mm3 : 0;
}

class Pricing {
 public:
  Pricing(const LensPlan& plan, const WorksReckoning& works, double margin_percent)
      : settings_(plan.values.works),
        works_(works),
        sum_(whole_lens(works, settings_)),
        margin_(margin_percent) {
    const double loads_h = works.work.of(WorkStep::cast).hands_h + works.work.of(WorkStep::anneal).hands_h;
    load_h_ = sum_.castings > 0 ? loads_h / sum_.castings : 0;
    sound_ = 1 - std::clamp(settings_.scrap_percent / 100, 0.0, kMostScrap);
  }

  [[nodiscard]] SpareOffer spare(const MakeRow& row) const {
    const CostLine* resin = line_of(works_.costs, "resin");
    SpareOffer offer;
    offer.kind = row.master;
    offer.prisms = static_cast<int>(row.marks.size());
    offer.resin_kg =
        resin && sum_.casting_mm3 > 0 ? resin->quantity * row.volume_mm3 / sum_.casting_mm3 / sound_ : 0;
    offer.hours =
        (settings_.polish_h_per_dm2 * row.optical_mm2 / kMm2PerDm2 + settings_.prove_h + load_h_) / sound_;
    offer.price = with_margin(offer.resin_kg * settings_.resin_cost_per_kg + offer.hours * settings_.hour_cost);
    return offer;
  }
  [[nodiscard]] double mould(const MakeRow& row) const {
    return row.mould_mm3 * cost_per_mm3(works_.costs, "tooling", sum_.mould_mm3) +
           settings_.mould_h * settings_.hour_cost;
  }
  [[nodiscard]] double master(const MakeRow& row) const {
    return row.volume_mm3 * cost_per_mm3(works_.costs, "printing", sum_.print_mm3) +
           settings_.master_h * settings_.hour_cost;
  }
  [[nodiscard]] int further_moulds(const MakeRow& row, int sets) const {
    const CastingNeed need = castings_for(static_cast<int>(row.marks.size()) + sets, settings_.scrap_percent);
    const int life = std::max(1, settings_.mould_life);
    return std::max(0, (need.castings + life - 1) / life - whole_moulds(row, settings_));
  }
  [[nodiscard]] Money with_margin(double cost) const {
    const Money own = Money::printed(cost);
    return own + own.share_percent(margin_);
  }

 private:
  const WorksSettings& settings_;
  const WorksReckoning& works_;
  WholeLens sum_;
  double margin_ = 0;
  double load_h_ = 0;
  double sound_ = 1;
};

}  // namespace

EstimateOptions estimate_options(const LensPlan& plan, const WorksReckoning& works, double margin_percent,
                                 int sets) {
  const Pricing pricing(plan, works, margin_percent);
  EstimateOptions options;
  options.sets = sets;
  double further = 0, moulds = 0, masters = 0;
  for (const MakeRow& row : works.list.rows) {
    options.spares.push_back(pricing.spare(row));
    options.one_set = options.one_set + options.spares.back().price;
    const int more = pricing.further_moulds(row, sets);
    options.further_moulds += more;
    further += more * pricing.mould(row);
    moulds += pricing.mould(row);
    masters += pricing.master(row);
  }
  options.all_sets = options.one_set * sets;
  options.further_moulds_price = pricing.with_margin(further);
  options.new_moulds = pricing.with_margin(moulds);
  options.new_masters = pricing.with_margin(masters);
  return options;
}

}  // namespace prismwright
