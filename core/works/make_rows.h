#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "core/works/casting_count.h"
#include "core/works/make_list.h"

namespace prismwright {

/// Where the prisms and spares of a lens stand, as the make list reads it.
class WorksState {
 public:
  WorksState(const LensPlan& plan, std::span<const Master> masters, std::span<const LedgerEntry> ledger);

  /// The stage that a prism has in hand: a scrapped one stands where it starts again.
  [[nodiscard]] Stage in_hand(const std::string& mark) const;
  [[nodiscard]] Stage stage_of(const std::string& mark) const { return now_.stage_of(mark); }
  /// Spare marks of the ledger that belong to a master, by its place in the list.
  [[nodiscard]] const std::vector<std::string>& spares_of(std::size_t master) const { return spares_[master]; }
  [[nodiscard]] CastingCount castings_of(const std::string& mark) const;
  /// The least stage in hand of a panel's prisms.
  [[nodiscard]] Stage least_of_panel(int panel) const;

 private:
  StageByMark now_;
  std::map<std::string, CastingCount> castings_;
  std::vector<std::vector<std::string>> spares_;
  std::map<int, Stage> least_;
};

/// The row of one master.
MakeRow make_row(const LensPlan& plan, const WorksState& state, std::size_t index, const Master& master,
                 const PieceSize& size);

}  // namespace prismwright
