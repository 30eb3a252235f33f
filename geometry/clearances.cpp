#include "geometry/clearances.h"

#include <algorithm>
#include <limits>
#include <map>
#include <new>

#include <BRepBndLib.hxx>
#include <Bnd_Box.hxx>
#include <Standard_Failure.hxx>

#include "core/frame/needed_gap.h"
#include "geometry/gap_finder.h"

namespace prismwright {
namespace {

constexpr double kClash_mm3 = 1e-3;
constexpr double kSame_mm = 1e-6;    // a gap that is short of the needed one by less is as good
constexpr double kNearRing_mm = 25;  // prisms whose box is farther from a ring are not measured against it

Verdict verdict_of(double gap_mm, double needed_mm, double overlap_mm3) {
  if (overlap_mm3 > kClash_mm3) return Verdict::clash;
  return gap_mm < needed_mm - kSame_mm ? Verdict::tight : Verdict::clear;
}

// What is asked about one pair beside its solids.
struct Asked {
  std::string second;
  double side_needed_mm = 0;
  double end_needed_mm = 0;
};

Clearance judged(const std::string& first, const Asked& asked, const SolidGap& gap, double needed_mm) {
  return {first,           asked.second,    gap.gap_mm,
          needed_mm,       gap.overlap_mm3, verdict_of(gap.gap_mm, needed_mm, gap.overlap_mm3),
          gap.first_point, gap.second_point};
}

// A prism meets a rib with its end and with its sides. The worse verdict counts; of two alike, the lesser gap.
Clearance judged_rib(const std::string& first, const Asked& asked, const GapsFound& gaps) {
  if (!gaps.end) return judged(first, asked, *gaps.side, asked.side_needed_mm);
  const Clearance end = judged(first, asked, *gaps.end, asked.end_needed_mm);
  if (!gaps.side) return end;
  Clearance side = judged(first, asked, *gaps.side, asked.side_needed_mm);
  Clearance worse = end.verdict != side.verdict ? (end.verdict > side.verdict ? end : side)
                                                : (end.gap_mm < side.gap_mm ? end : side);
  worse.overlap_mm3 = end.overlap_mm3 + side.overlap_mm3;
  return worse;
}

class Surveyor {
 public:
  Surveyor(const LensPlan& plan, const LensBodies& bodies, const FramePlan& frame,
           const std::vector<FrameBody>& metal)
      : plan_(plan), bodies_(bodies), frame_(frame) {
    for (const FrameBody& body : metal) metal_[body.mark] = &body;
    for (const PrismBody& body : bodies.prisms) prisms_[body.mark] = &body;
  }

  Outcome<std::vector<Clearance>> survey(const Progress& progress) {
    ask_prism_pairs();
    ask_ribs();
    ask_rings();
    const auto found = find_gaps(wanted_, progress);
    if (!found) return found.problem();
    std::vector<Clearance> clearances;
    for (std::size_t i = 0; i < wanted_.size(); ++i) {
      const GapsFound& gaps = (*found)[i];
      clearances.push_back(wanted_[i].rib
                               ? judged_rib(wanted_[i].mark, asked_[i], gaps)
                               : judged(wanted_[i].mark, asked_[i], *gaps.side, asked_[i].side_needed_mm));
    }
    return clearances;
  }

 private:
  [[nodiscard]] const PrismBody* body_of(const PlannedPrism& prism) const {
    const auto found = prisms_.find(prism.mark);
    return found == prisms_.end() ? nullptr : found->second;
  }

  [[nodiscard]] double grows(double extent_mm) const {
    return needed_gap_mm(extent_mm, plan_.values.material.name, plan_.values.frame.heat_range_k);
  }

  // Congruent prisms share their section.
  double side_growth(const PlannedPrism& prism) {
    const auto [known, fresh] = side_growth_.emplace(prism.zone, 0.0);
    if (fresh) known->second = grows(section_extent_mm(prism.profile));
    return known->second;
  }

  void ask(GapWanted wanted, Asked asked) {
    wanted_.push_back(std::move(wanted));
    asked_.push_back(std::move(asked));
  }

  // A prism as the second of a pair: by its turned section where it stands as planned.
  std::shared_ptr<const TurnedPart> turned(const PlannedPrism& prism, const PrismBody& body) {
    const auto [known, fresh] = turned_.emplace(prism.mark, nullptr);
    if (fresh) known->second = TurnedPart::of(prism, body.shape);
    return known->second;
  }

  void ask_prism_pairs() {
    for (const NeighbourPair& pair : neighbours(plan_)) {
      const PlannedPrism& a = plan_.prisms[pair.first];
      const PlannedPrism& b = plan_.prisms[pair.second];
      const PrismBody* first = body_of(a);
      const PrismBody* second = body_of(b);
      if (!first || !second) continue;
      // Refracting rings without a gap between them are cemented ring to ring and grow as one.
      const bool cemented =
          plan_.section.input.settings.gap_mm == 0 && is_refracting(a.kind) && is_refracting(b.kind);
      const double needed = cemented ? 0 : side_growth(a) + side_growth(b);
      auto part = turned(b, *second);
      if (part && !part->can_measure(a)) part = nullptr;
      ask({a.mark, first->shape, second->shape, nullptr, part}, {b.mark, needed, needed});
    }
  }

  void ask_ribs() {
    for (const PlannedPrism& prism : plan_.prisms) {
      const PrismBody* body = body_of(prism);
      if (!body) continue;
      for (const RibPlan& rib : frame_.ribs) {
        const auto metal = metal_.find(rib.mark);
        if (rib.panel != prism.panel || metal == metal_.end()) continue;
        ask({prism.mark, body->shape, metal->second->shape, &rib, nullptr},
            {rib.mark, side_growth(prism), grows(body->greatest_length_mm)});
      }
    }
  }

  void ask_rings() {
    for (const RingPlan& ring : frame_.rings) {
      const auto metal = metal_.find(ring.mark);
      if (metal == metal_.end()) continue;
      Bnd_Box ring_box;
      BRepBndLib::Add(metal->second->shape, ring_box);
      const auto part = TurnedPart::of(ring, metal->second->shape);
      for (const PlannedPrism& prism : plan_.prisms) {
        const PrismBody* body = body_of(prism);
        if (!body) continue;
        Bnd_Box box;
        BRepBndLib::Add(body->shape, box);
        if (box.Distance(ring_box) > kNearRing_mm) continue;
        const double needed = side_growth(prism);
        ask({prism.mark, body->shape, metal->second->shape, nullptr, part}, {ring.mark, needed, needed});
      }
    }
  }

  const LensPlan& plan_;
  const LensBodies& bodies_;
  const FramePlan& frame_;
  std::map<std::string, const FrameBody*> metal_;
  std::map<std::string, const PrismBody*> prisms_;
  std::map<std::string, double> side_growth_;
  std::map<std::string, std::shared_ptr<const TurnedPart>> turned_;
  std::vector<GapWanted> wanted_;
  std::vector<Asked> asked_;
};

}  // namespace

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return "clear";
    case Verdict::tight:
      return "tight";
    case Verdict::clash:
      return "clash";
  }
  return "clear";
}

Outcome<std::vector<Clearance>> find_clearances(const LensPlan& plan, const LensBodies& bodies,
                                                const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                const Progress& progress) {
  try {
    return Surveyor(plan, bodies, frame, metal).survey(progress);
  } catch (const Standard_Failure& failure) {
    return request_problem("clearance", "",
                           std::string("The clearances could not be measured (") + failure.GetMessageString() +
                               "). Change the setting gap or the division of the zones a little.");
  } catch (const std::bad_alloc&) {
    return request_problem("clearance", "",
                           "The clearances could not be measured: memory ran out. Close other "
                           "programs and start them again.");
  }
}

}  // namespace prismwright
