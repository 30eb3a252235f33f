#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/lens/plan.h"
#include "core/works/casting_need.h"
#include "core/works/congruence.h"
#include "core/works/ledger.h"
#include "core/works/prism_size.h"

namespace prismwright {

/// Sizes of one prism of a master that time and money are reckoned by, as drawn.
struct PieceSize {
  PrismSize prism;
  double optical_mm2 = 0;  ///< core/works/optical_area.h
};
/// One for each master, in their order. Takes some ms for each: keep them while the plan stays.
std::vector<PieceSize> piece_sizes(const LensPlan& plan, std::span<const Master> masters);

/// What is to be made of one master.
struct MakeRow {
  std::string master;              ///< name, see core/works/congruence.h
  std::vector<std::string> marks;  ///< prisms of the lens that it serves, in the order of the plan
  std::string mirror_of;           ///< as in Master
  std::string turned_twin_of;
  bool has_master = false;  ///< a prism of it stands at mastered or later
  bool has_mould = false;   ///< a prism of it stands at moulded or later, and the mould has castings left
  int moulds_needed = 0;    ///< for all castings, those already made too, by works.mould_life
  /// A mould that has given works.mould_life castings is worn out; the next one counts as made from its first
  /// casting on, since the ledger tells of prisms, not of moulds.
  int moulds_to_make = 0;
  /// Its prisms by stage. A scrapped prism counts at scrapped. Spares are left out.
  std::array<int, kStages.size()> at{};
  /// The same by the stage that work goes on from: a scrapped prism at the one it starts again from.
  std::array<int, kStages.size()> in_hand{};
  int castings_made = 0;      ///< by the ledger, spares too, scrapped ones too
  int castings_scrapped = 0;  ///< of those
  int spares_on_shelf = 0;    ///< sound spare castings, from cast on, that stand in no panel
  CastingNeed need;           ///< for prisms that have no sound casting, less the spares on the shelf
  int short_of = 0;           ///< castings still to be poured: need.castings
  std::string next;           ///< "print the master", "make the mould", "cast 5", "anneal 3", ... or "done"
  Stage next_stage = Stage::mastered;  ///< that `next` leads to; glazed when done
  std::vector<int> holds_up;  ///< panels not yet glazed in which no prism is further behind than one of these
  double hours_left = 0;      ///< from here to glazed, one after the other: hands, printer, vessel and oven
  /// Size of one prism of it.
  double volume_mm3 = 0;
  double optical_mm2 = 0;
  double thickness_mm = 0;
  double mould_mm3 = 0;  ///< tooling material of one mould: the prism's box with walls, less the prism
};

struct MakeTotals {
  int prisms = 0;  ///< of the lens
  int masters = 0;
  int masters_to_make = 0;
  int moulds_needed = 0;
  int moulds_to_make = 0;
  int castings_made = 0;
  int castings_scrapped = 0;
  int spares_on_shelf = 0;
  int sound_wanted = 0;  ///< prisms without a casting or spare
  int short_of = 0;      ///< castings to pour
  double chance = 1;     ///< that the castings to pour are enough for every master at once
  int half_turn_saves = 0;
  std::array<int, kStages.size()> at{};
};

/// The make list: one row for each master, in the order of the plan.
struct MakeList {
  std::vector<MakeRow> rows;
  std::vector<std::size_t> order;  ///< rows that are not done, what to do first first: longest hours left first
  MakeTotals totals;

  [[nodiscard]] const MakeRow* find(std::string_view master) const;
};

/// Works out the list from the plan and the whole ledger (lines of marks that the lens does not have are left
/// out; spare marks "S01-U07" count for the first master of their piece, "S01-U07-P02" for the one of that
/// name). Rates, lives and hours: plan.values.works. `sizes`: piece_sizes of the masters.
MakeList make_list(const LensPlan& plan, std::span<const Master> masters, std::span<const PieceSize> sizes,
                   std::span<const LedgerEntry> ledger);
MakeList make_list(const LensPlan& plan, std::span<const LedgerEntry> ledger);

/// Columns: master, prisms, marks, mirror_of, turned_twin_of, stages one by one, masters_to_make,
/// moulds_needed, moulds_to_make, castings_made, castings_scrapped, spares_on_shelf, sound_wanted,
/// castings_to_pour, chance, next, holds_up, hours_left, volume_cm3, optical_dm2, thickness_mm. The last line
/// is the total.
std::string make_list_csv(const MakeList& list);

}  // namespace prismwright
