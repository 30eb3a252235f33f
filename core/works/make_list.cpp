#include "core/works/make_list.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <tbb/parallel_for.h>

#include <algorithm>

#include "core/base/csv_cell.h"
#include "core/works/make_rows.h"
#include "core/works/optical_area.h"

namespace prismwright {
namespace {

void add(MakeTotals& totals, const MakeRow& row) {
  totals.prisms += static_cast<int>(row.marks.size());
  ++totals.masters;
  totals.masters_to_make += !row.has_master && row.short_of > 0 ? 1 : 0;
  totals.moulds_needed += row.moulds_needed;
  totals.moulds_to_make += row.moulds_to_make;
  totals.castings_made += row.castings_made;
  totals.castings_scrapped += row.castings_scrapped;
  totals.spares_on_shelf += row.spares_on_shelf;
  totals.sound_wanted += row.need.sound;
  totals.short_of += row.short_of;
  totals.chance *= row.need.chance;
  for (std::size_t i = 0; i < row.at.size(); ++i) totals.at[i] += row.at[i];
}

std::vector<std::size_t> longest_first(const std::vector<MakeRow>& rows) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].next != "done") order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rows[a].hours_left > rows[b].hours_left; });
  return order;
}

std::string csv_line(const MakeRow& row) {
  std::string text = fmt::format("{},{},{},{},{}", csv_cell(row.master), row.marks.size(),
                                 fmt::join(row.marks, " "), row.mirror_of, row.turned_twin_of);
  for (const int count : row.at) text += fmt::format(",{}", count);
  text += fmt::format(",{},{},{},{},{},{},{},{},{:.4f}", !row.has_master && row.short_of > 0 ? 1 : 0,
                      row.moulds_needed, row.moulds_to_make, row.castings_made, row.castings_scrapped,
                      row.spares_on_shelf, row.need.sound, row.short_of, row.need.chance);
  return text + fmt::format(",{},{},{:.1f},{:.2f},{:.3f},{:.2f}\n", csv_cell(row.next),
                            fmt::join(row.holds_up, " "), row.hours_left, row.volume_mm3 / 1e3,
                            row.optical_mm2 / 1e4, row.thickness_mm);
}

std::string csv_total(const MakeTotals& totals) {
  std::string text = fmt::format("total,{},,,", totals.prisms);
  for (const int count : totals.at) text += fmt::format(",{}", count);
  return text + fmt::format(",{},{},{},{},{},{},{},{},{:.4f},,,,,,\n", totals.masters_to_make,
                            totals.moulds_needed, totals.moulds_to_make, totals.castings_made,
                            totals.castings_scrapped, totals.spares_on_shelf, totals.sound_wanted,
                            totals.short_of, totals.chance);
}

}  // namespace

std::vector<PieceSize> piece_sizes(const LensPlan& plan, std::span<const Master> masters) {
  std::vector<PieceSize> sizes(masters.size());
  tbb::parallel_for(std::size_t{0}, masters.size(), [&](std::size_t i) {
    const PlannedPrism& prism = plan.prisms[masters[i].prism];
    sizes[i] = {prism_size(prism, plan.values.material.density_g_cm3), optical_area_mm2(prism)};
  });
  return sizes;
}

MakeList make_list(const LensPlan& plan, std::span<const Master> masters, std::span<const PieceSize> sizes,
                   std::span<const LedgerEntry> ledger) {
  const WorksState state(plan, masters, ledger);
  MakeList list;
  for (std::size_t i = 0; i < masters.size(); ++i) {
    list.rows.push_back(make_row(plan, state, i, masters[i], sizes[i]));
    add(list.totals, list.rows.back());
  }
  list.totals.half_turn_saves = half_turn_saves(masters);
  list.order = longest_first(list.rows);
  return list;
}

MakeList make_list(const LensPlan& plan, std::span<const LedgerEntry> ledger) {
  const std::vector<Master> masters = masters_of(plan);
  return make_list(plan, masters, piece_sizes(plan, masters), ledger);
}

const MakeRow* MakeList::find(std::string_view master) const {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const MakeRow& row) { return row.master == master; });
  return found == rows.end() ? nullptr : &*found;
}

std::string make_list_csv(const MakeList& list) {
  std::string text = "master,prisms,marks,mirror_of,turned_twin_of";
  for (const Stage stage : kStages) text += fmt::format(",{}", name_of(stage));
  text +=
      ",masters_to_make,moulds_needed,moulds_to_make,castings_made,castings_scrapped,spares_on_shelf,"
      "sound_wanted,castings_to_pour,chance,next,holds_up,hours_left,volume_cm3,optical_dm2,thickness_mm\n";
  for (const MakeRow& row : list.rows) text += csv_line(row);
  return text + csv_total(list.totals);
}

}  // namespace prismwright
