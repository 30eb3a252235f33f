#include "geometry/clearance_rules.h"

#include "core/frame/needed_gap.h"

namespace prismwright {
namespace {

constexpr double kClash_mm3 = 1e-3;
constexpr double kSame_mm = 1e-6;  // a gap that is short of the needed one by less is as good

Verdict verdict_of(double gap_mm, double needed_mm, double overlap_mm3) {
  if (overlap_mm3 > kClash_mm3) return Verdict::clash;
  return gap_mm < needed_mm - kSame_mm ? Verdict::tight : Verdict::clear;
}

ClearanceKind kind_of(const MeasuredPart& first, const MeasuredPart& second) {
  if (first.prism && second.prism) return ClearanceKind::prism_prism;
  return first.prism || second.prism ? ClearanceKind::prism_metal : ClearanceKind::metal_metal;
}

}  // namespace

Clearance ClearanceRules::judged(const MeasuredPart& first, const MeasuredPart& second, bool joint,
                                 const GapsFound& gaps) {
  const Needed wanted = needed(first, second, joint);
  const auto judge = [&](const SolidGap& gap, double needed_mm) {
    return Clearance{first.mark,      second.mark,      gap.gap_mm,
                     needed_mm,       gap.overlap_mm3,  verdict_of(gap.gap_mm, needed_mm, gap.overlap_mm3),
                     gap.first_point, gap.second_point, kind_of(first, second)};
  };
  if (!gaps.end) return judge(*gaps.side, wanted.side_mm);
  const Clearance end = judge(*gaps.end, wanted.end_mm);
  if (!gaps.side) return end;
  const Clearance side = judge(*gaps.side, wanted.side_mm);
  Clearance worse = end.verdict != side.verdict ? (end.verdict > side.verdict ? end : side)
                                                : (end.gap_mm < side.gap_mm ? end : side);
  worse.overlap_mm3 = end.overlap_mm3 + side.overlap_mm3;
  return worse;
}

// No volume is worked out there: what reaches in clashes.
Clearance ClearanceRules::judged_round(const MeasuredPart& part, const std::string& surrounding,
                                       const SolidGap& gap) const {
  const double needed_mm = plan_.values.frame.room_round_mm;
  const Verdict verdict = gap.gap_mm == 0 ? Verdict::clash : verdict_of(gap.gap_mm, needed_mm, 0);
  return {part.mark,
          surrounding,
          gap.gap_mm,
          needed_mm,
          0,
          verdict,
          gap.first_point,
          gap.second_point,
          ClearanceKind::surroundings};
}

ClearanceRules::Needed ClearanceRules::needed(const MeasuredPart& first, const MeasuredPart& second,
                                              bool joint) {
  if (!first.prism) return joint ? Needed{} : Needed{kMetalApart_mm, kMetalApart_mm};
  const double own = side_growth(*first.prism);
  if (!second.prism) {
    // The whole length grows between two ribs; a part that stands beside meets its side.
    return {own, grows(first.greatest_length_mm)};
  }
  const bool cemented = plan_.section.input.settings.gap_mm == 0 && is_refracting(first.prism->kind) &&
                        is_refracting(second.prism->kind);
  const double both = cemented ? 0 : own + side_growth(*second.prism);
  return {both, both};
}

double ClearanceRules::grows(double extent_mm) const {
  return needed_gap_mm(extent_mm, plan_.values.material.name, plan_.values.frame.heat_range_k);
}

// Congruent prisms share their section.
double ClearanceRules::side_growth(const PlannedPrism& prism) {
  const auto [known, fresh] = side_growth_.emplace(prism.zone, 0.0);
  if (fresh) known->second = grows(section_extent_mm(prism.profile));
  return known->second;
}

}  // namespace prismwright
