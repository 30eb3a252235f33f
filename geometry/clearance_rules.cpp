#include "geometry/clearance_rules.h"

#include "core/frame/needed_gap.h"
#include "core/frame/setting_check.h"

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

ClearanceRules::ClearanceRules(const LensPlan& plan, const FramePlan& frame) : plan_(plan) {
  for (const RibPlan& rib : frame.ribs) {
    for (const Pocket& pocket : rib.pockets) {
      for (const std::string& mark : pocket.marks) held_.emplace(mark, rib.mark);
    }
  }
}

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
  return second.prism ? between_prisms(*first.prism, *second.prism) : at_metal(*first.prism, second);
}

// Prisms of two panels face each other with their ends.
ClearanceRules::Needed ClearanceRules::between_prisms(const PlannedPrism& first, const PlannedPrism& second) {
  const bool cemented = plan_.section.input.settings.gap_mm == 0 && first.panel == second.panel &&
                        is_refracting(first.kind) && is_refracting(second.kind);
  if (cemented) return {};
  const Extents own = extents_of(first);
  const Extents other = extents_of(second);
  const bool by_ends = first.panel != second.panel;
  const double needed_mm =
      needed_between_mm(by_ends ? own.end_mm : own.side_mm, by_ends ? other.end_mm : other.side_mm,
                        plan_.values.material.name, plan_.values.frame);
  return {needed_mm, needed_mm};
}

// Shim and glazing stand in its own pockets alone. What is of another panel stands beyond its end.
ClearanceRules::Needed ClearanceRules::at_metal(const PlannedPrism& prism, const MeasuredPart& metal) {
  const FrameSettings& frame = plan_.values.frame;
  const std::string& material = plan_.values.material.name;
  const Extents& own = extents_of(prism);
  const double at_end_mm = needed_at_end_mm(own.end_mm, material, frame);
  if (metal.panel != 0 && metal.panel != prism.panel) return {at_end_mm, at_end_mm};
  if (held_.contains({prism.mark, metal.mark}))
    return {needed_at_side_mm(own.side_mm, material, frame), at_end_mm};
  return {growth_of(own.side_mm, material, frame).both_mm(), at_end_mm};
}

// Congruent prisms share them.
const ClearanceRules::Extents& ClearanceRules::extents_of(const PlannedPrism& prism) {
  const auto known = extents_.find(prism.shape_key);
  if (known != extents_.end()) return known->second;
  const Extents extents{section_extent_mm(prism.profile), end_to_end_mm(prism)};
  return extents_.emplace(prism.shape_key, extents).first->second;
}

}  // namespace prismwright
