#include "core/works/make_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/works/cure_plan.h"
#include "core/works/load_plan.h"
#include "core/works/spares.h"

namespace prismwright {
namespace {

int panel_of(std::string_view mark) {
  int panel = 0;
  for (std::size_t i = 1; i < mark.size() && mark[i] >= '0' && mark[i] <= '9'; ++i)
    panel = 10 * panel + (mark[i] - '0');
  return panel;
}

int divided_up(int count, int by) { return (count + by - 1) / by; }

/// Fills one row from what the ledger says of its prisms.
class RowMaker {
 public:
  RowMaker(const LensPlan& plan, const WorksState& state, std::size_t index, const Master& master,
           const PieceSize& size)
      : works_(plan.values.works), state_(state), spares_(state.spares_of(index)), size_(size) {
    row_.master = master.name;
    row_.mirror_of = master.mirror_of;
    row_.turned_twin_of = master.turned_twin_of;
    for (const MasterUse& use : master.uses) row_.marks.push_back(use.mark);
    row_.volume_mm3 = size.prism.volume_mm3;
    row_.optical_mm2 = size.optical_mm2;
    row_.thickness_mm = size.prism.thickest_mm;
    const MouldBox box = mould_box(size.prism, works_.mould_wall_mm);
    row_.mould_mm3 = std::max(0.0, box.length_mm * box.depth_mm * box.height_mm - row_.volume_mm3);
  }

  MakeRow made() {
    count_prisms();
    count_castings();
    count_moulds();
    say_next();
    find_held_panels();
    row_.hours_left = hours_left();
    return std::move(row_);
  }

 private:
  void count_prisms() {
    for (const std::string& mark : row_.marks) {
      ++row_.at[static_cast<std::size_t>(state_.stage_of(mark))];
      const Stage stage = state_.in_hand(mark);
      ++row_.in_hand[static_cast<std::size_t>(stage)];
      furthest_ = std::max(furthest_, stage);
    }
    for (const std::string& mark : spares_) {
      furthest_ = std::max(furthest_, state_.in_hand(mark));
      if (state_.in_hand(mark) >= Stage::cast) ++row_.spares_on_shelf;
    }
  }

  void count_castings() {
    add_castings(row_.marks);
    add_castings(spares_);
    without_casting_ = in_hand(Stage::drawn) + in_hand(Stage::mastered) + in_hand(Stage::moulded);
    row_.need = castings_for(std::max(0, without_casting_ - row_.spares_on_shelf), works_.scrap_percent);
    row_.short_of = row_.need.castings;
  }

  void add_castings(const std::vector<std::string>& marks) {
    for (const std::string& mark : marks) {
      row_.castings_made += state_.castings_of(mark).made;
      row_.castings_scrapped += state_.castings_of(mark).scrapped;
    }
  }

  void count_moulds() {
    row_.has_master = furthest_ >= Stage::mastered;
    const int made_of_them = divided_up(row_.castings_made, works_.mould_life);
    const int moulds = furthest_ >= Stage::moulded ? std::max(1, made_of_them) : made_of_them;
    row_.has_mould = furthest_ >= Stage::moulded && row_.castings_made < moulds * works_.mould_life;
    row_.moulds_needed = std::max(moulds, divided_up(row_.castings_made + row_.short_of, works_.mould_life));
    row_.moulds_to_make = row_.moulds_needed - moulds;
  }

  void say_next() {
    const auto say = [&](Stage to, std::string words) {
      row_.next_stage = to;
      row_.next = std::move(words);
    };
    if (row_.short_of > 0) {
      if (!row_.has_master) return say(Stage::mastered, "print the master");
      if (!row_.has_mould) return say(Stage::moulded, "make the mould");
      return say(Stage::cast, fmt::format("cast {}", row_.short_of));
    }
    if (without_casting_ > 0) return say(Stage::cast, fmt::format("take {} from the shelf", without_casting_));
    struct Work {
      Stage at;
      const char* word;
    };
    for (const auto& [at, word] : {Work{Stage::cast, "anneal"}, Work{Stage::annealed, "polish"},
                                   Work{Stage::polished, "prove"}, Work{Stage::proved, "glaze"}}) {
      if (in_hand(at) > 0) return say(*next_stage(at), fmt::format("{} {}", word, in_hand(at)));
    }
    say(Stage::glazed, "done");
  }

  void find_held_panels() {
    for (const std::string& mark : row_.marks) {
      const int panel = panel_of(mark);
      const Stage stage = state_.in_hand(mark);
      if (stage == Stage::glazed || stage > state_.least_of_panel(panel)) continue;
      if (row_.holds_up.empty() || row_.holds_up.back() != panel) row_.holds_up.push_back(panel);
    }
  }

  [[nodiscard]] double hours_left() const {
    double hours = 0;
    const CurePlan cure = plan_cure(works_, size_.prism.thickest_mm);
    if (row_.short_of > 0) {
      if (!row_.has_master) hours += works_.master_h + size_.prism.volume_mm3 / 1000 / works_.print_cm3_per_h;
      hours += row_.moulds_to_make * works_.mould_h;
      // Each mould fills once in a load of the vessel.
      const int moulds = std::max(1, row_.moulds_to_make + (row_.has_mould ? 1 : 0));
      hours += divided_up(row_.short_of, moulds) * (works_.load_h + cure.vessel_h);
    }
    const int to_anneal = std::max(without_casting_, 0) + in_hand(Stage::cast);
    if (to_anneal > 0) hours += works_.anneal_hand_h + cure.total_h - cure.vessel_h;
    const int to_polish = to_anneal + in_hand(Stage::annealed);
    hours += to_polish * works_.polish_h_per_dm2 * size_.optical_mm2 / 1e4;
    const int to_prove = to_polish + in_hand(Stage::polished);
    hours += to_prove * works_.prove_h;
    return hours + (to_prove + in_hand(Stage::proved)) * works_.glaze_h;
  }

  [[nodiscard]] int in_hand(Stage stage) const { return row_.in_hand[static_cast<std::size_t>(stage)]; }

  const WorksSettings& works_;
  const WorksState& state_;
  const std::vector<std::string>& spares_;
  const PieceSize& size_;
  MakeRow row_;
  Stage furthest_ = Stage::drawn;
  int without_casting_ = 0;
};

}  // namespace

WorksState::WorksState(const LensPlan& plan, std::span<const Master> masters,
                       std::span<const LedgerEntry> ledger)
    : now_(stages_from(ledger)), castings_(count_castings(ledger)), spares_(masters.size()) {
  for (const auto& [mark, stage] : now_) {
    if (!is_spare_mark(mark)) continue;
    if (const Master* master = master_of_spare(masters, mark))
      spares_[static_cast<std::size_t>(master - masters.data())].push_back(mark);
  }
  for (const PlannedPrism& prism : plan.prisms) {
    const auto [place, is_new] = least_.try_emplace(prism.panel, in_hand(prism.mark));
    if (!is_new) place->second = std::min(place->second, in_hand(prism.mark));
  }
}

Stage WorksState::in_hand(const std::string& mark) const {
  const Stage stage = now_.stage_of(mark);
  if (stage != Stage::scrapped) return stage;
  const auto again = now_.back_to.find(mark);
  return again == now_.back_to.end() ? Stage::moulded : again->second;
}

CastingCount WorksState::castings_of(const std::string& mark) const {
  const auto found = castings_.find(mark);
  return found == castings_.end() ? CastingCount{} : found->second;
}

Stage WorksState::least_of_panel(int panel) const {
  const auto found = least_.find(panel);
  return found == least_.end() ? Stage::drawn : found->second;
}

MakeRow make_row(const LensPlan& plan, const WorksState& state, std::size_t index, const Master& master,
                 const PieceSize& size) {
  return RowMaker(plan, state, index, master, size).made();
}

}  // namespace prismwright
