#include "core/works/works_reckoning.h"

#include <algorithm>

namespace prismwright {
namespace {

const MouldFacts* mould_of(std::span<const MouldFacts> moulds, const std::string& master) {
  const auto found = std::ranges::find(moulds, master, &MouldFacts::mark);
  return found == moulds.end() ? nullptr : &*found;
}

std::vector<PieceVolumes> volumes_of(std::span<const MouldFacts> moulds) {
  constexpr double kMm3PerCm3 = 1000;
  std::vector<PieceVolumes> volumes;
  for (const MouldFacts& mould : moulds)
    volumes.push_back(
        {mould.mark, mould.master_mm3 / kMm3PerCm3, (mould.lower_mm3 + mould.upper_mm3) / kMm3PerCm3});
  return volumes;
}

LoadPiece piece_of(const LensPlan& plan, const Master& master, const PrismSize& size, const MakeRow& row,
                   const MouldFacts* mould) {
  LoadPiece piece;
  piece.name = master.name;
  piece.count = row.short_of;
  piece.any_side_up = mould == nullptr;
  piece.mould = mould ? MouldBox{mould->footprint_long_mm, mould->footprint_short_mm, mould->standing_mm}
                      : mould_box(size, plan.values.works.mould_wall_mm);
  piece.thickest_mm = size.thickest_mm;
  piece.casting_mm3 = size.volume_mm3;
  piece.moulds = std::max(1, row.moulds_needed);
  return piece;
}

void plan_vessel(WorksReckoning& reckoning, const LensPlan& plan, const WorksKinds& kinds,
                 std::span<const MouldFacts> moulds) {
  reckoning.pieces = load_pieces(plan, kinds, reckoning.list, moulds);
  Outcome<LoadPlan> loads = plan_loads(reckoning.pieces, plan.values.works);
  if (!loads) {
    reckoning.no_loads = loads.problem().text;
    return;
  }
  reckoning.loads = std::move(loads).value();
  for (const PlannedLoad& load : reckoning.loads->loads)
    reckoning.cures.push_back(plan_cure(plan.values.works, load.thickest_mm));
}

}  // namespace

WorksKinds works_kinds(const LensPlan& plan) {
  WorksKinds kinds;
  kinds.masters = masters_of(plan);
  kinds.sizes = piece_sizes(plan, kinds.masters);
  return kinds;
}

std::vector<LoadPiece> load_pieces(const LensPlan& plan, const WorksKinds& kinds, const MakeList& list,
                                   std::span<const MouldFacts> moulds) {
  std::vector<LoadPiece> pieces;
  for (std::size_t i = 0; i < kinds.masters.size(); ++i) {
    const MakeRow* row = list.find(kinds.masters[i].name);
    if (row != nullptr && row->short_of > 0)
      pieces.push_back(
          piece_of(plan, kinds.masters[i], kinds.sizes[i].prism, *row, mould_of(moulds, row->master)));
  }
  return pieces;
}

LoadCounts load_counts(const LoadPlan& loads, std::span<const CurePlan> cures) {
  LoadCounts counts;
  counts.vessel_loads = static_cast<int>(loads.loads.size());
  counts.castings = loads.castings;
  double in_vessel = 0;
  for (const CurePlan& cure : cures) {
    in_vessel += cure.vessel_h;
    counts.oven_h.push_back(cure.total_h - cure.vessel_h);
  }
  if (!cures.empty()) counts.cure_h_each = in_vessel / static_cast<double>(cures.size());
  return counts;
}

WorksReckoning reckon_works(const LensPlan& plan, std::span<const LedgerEntry> ledger, const WorksLog& log,
                            const WorksFacts& facts) {
  return reckon_works(plan, works_kinds(plan), ledger, log, facts);
}

WorksReckoning reckon_works(const LensPlan& plan, const WorksKinds& kinds, std::span<const LedgerEntry> ledger,
                            const WorksLog& log, const WorksFacts& facts) {
  WorksReckoning reckoning;
  reckoning.masters = kinds.masters;
  reckoning.list = make_list(plan, kinds.masters, kinds.sizes, ledger);
  plan_vessel(reckoning, plan, kinds, facts.moulds);
  WorkInputs inputs;
  if (reckoning.loads) inputs.loads = load_counts(*reckoning.loads, reckoning.cures);
  inputs.volumes = volumes_of(facts.moulds);
  inputs.brass_kg = facts.brass_kg;
  inputs.spendings = log.spendings;
  inputs.today = facts.today;
  reckoning.work = work_plan(plan, reckoning.list, inputs);
  reckoning.costs = lens_costs(plan, reckoning.list, reckoning.work, inputs);
  return reckoning;
}

}  // namespace prismwright
