#pragma once

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "core/works/congruence.h"
#include "core/works/costs.h"
#include "core/works/cure_plan.h"
#include "core/works/ledger.h"
#include "core/works/load_plan.h"
#include "core/works/make_list.h"
#include "core/works/mould_facts.h"
#include "core/works/work_plan.h"
#include "core/works/works_log.h"

namespace prismwright {

/// What is known of a job beside its plan and book.
struct WorksFacts {
  /// Moulds that were worked out, `mark` being the name of the master: their own boxes, ways up and volumes
  /// count. Of the others all of that is guessed from the prisms' sizes.
  std::vector<MouldFacts> moulds;
  double brass_kg = 0;  ///< of the whole frame; 0: not known
  std::chrono::sys_days today;
};

/// What of a plan the works reckon with, whatever the book says: worked out once for each plan.
struct WorksKinds {
  std::vector<Master> masters;
  std::vector<PieceSize> sizes;  ///< of the masters, one for each
};
WorksKinds works_kinds(const LensPlan& plan);

/// Make list, loads, cure, time and money of one lens, each worked out from the one before it: the same for the
/// window and the batch program.
struct WorksReckoning {
  std::vector<Master> masters;
  MakeList list;
  std::vector<LoadPiece> pieces;  ///< castings still to be poured, one for each row of the list that has any
  std::optional<LoadPlan> loads;  ///< blank: `no_loads` says why
  std::string no_loads;
  std::vector<CurePlan> cures;  ///< one for each load
  WorkPlan work;
  Costs costs;
};

/// `kinds` are those of the plan.
WorksReckoning reckon_works(const LensPlan& plan, const WorksKinds& kinds, std::span<const LedgerEntry> ledger,
                            const WorksLog& log, const WorksFacts& facts);
WorksReckoning reckon_works(const LensPlan& plan, std::span<const LedgerEntry> ledger, const WorksLog& log,
                            const WorksFacts& facts);

/// Castings that the list asks for, with the box of their moulds and as many moulds as there will be. A mould
/// of `moulds` stands gate up on its own foot; any other is guessed and may be laid any way.
std::vector<LoadPiece> load_pieces(const LensPlan& plan, const WorksKinds& kinds, const MakeList& list,
                                   std::span<const MouldFacts> moulds = {});

/// Vessel and oven hours of planned loads.
LoadCounts load_counts(const LoadPlan& loads, std::span<const CurePlan> cures);

}  // namespace prismwright
