#include "geometry/clearances.h"

#include <algorithm>
#include <new>
#include <unordered_map>

#include <Standard_Failure.hxx>

#include "geometry/clearance_rules.h"
#include "geometry/gap_finder.h"
#include "geometry/measured_part.h"
#include "geometry/near_pairs.h"
#include "geometry/rib_place.h"
#include "geometry/surroundings.h"

namespace prismwright {
namespace {

constexpr std::size_t kGapsKept = 100000;

using GapStore = std::unordered_map<std::string, GapsFound>;

Problem not_measured(const std::string& why) {
  return request_problem("clearance", "", "The clearances could not be measured" + why);
}

// One survey of a lens: what is wanted, what of it is known, and what the answers say.
class Survey {
 public:
  Survey(const LensPlan& plan, const FramePlan& frame, const std::vector<MeasuredPart>& parts, GapStore& store)
      : parts_(parts), store_(store), rules_(plan, frame), round_(surroundings_of(plan.values.frame)) {
    pairs_ = near_pairs(plan, frame, parts);
  }

  std::optional<Problem> measure(const Progress& progress) {
    std::vector<GapJob> jobs;
    ask_pairs(jobs);
    ask_surroundings(jobs);
    measured_ = static_cast<int>(jobs.size());
    auto trouble = do_all(jobs, progress);
    for (GapJob& job : jobs) {
      if (job.done) store_[job.key] = job.found;
    }
    return trouble;
  }

  std::vector<Clearance> answers() {
    std::vector<Clearance> all;
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const WantedPair& pair = pairs_[i];
      const MeasuredPart& first = parts_[pair.first];
      const GapsFound gaps = moved(store_.at(pair_keys_[i]), first.place);
      if (!gaps.end && !gaps.side) continue;
      Clearance judged = rules_.judged(first, parts_[pair.second], pair.joint, gaps);
      if (judged.gap_mm <= pair.no_farther_mm) all.push_back(std::move(judged));
    }
    for (const Surrounding& surrounding : round_) add_surrounding(surrounding, all);
    return all;
  }

  [[nodiscard]] int measured() const { return measured_; }

 private:
  void ask(std::vector<GapJob>& jobs, const std::string& key, const std::string& mark,
           std::function<GapsFound()> measure) {
    if (!store_.contains(key) && asked_.emplace(key, true).second) {
      jobs.push_back({mark, key, std::move(measure), {}, false});
    }
  }

  void ask_pairs(std::vector<GapJob>& jobs) {
    for (const WantedPair& pair : pairs_) {
      const MeasuredPart& first = parts_[pair.first];
      const MeasuredPart& second = parts_[pair.second];
      // How far is looked decides what is left out.
      pair_keys_.push_back(pair_word(first, second) + (pair.no_farther_mm < kNear_mm ? "near" : ""));
      ask(jobs, pair_keys_.back(), first.mark,
          [&first, &second, far_mm = pair.no_farther_mm] { return pair_gap(first, second, far_mm); });
    }
  }

  void ask_surroundings(std::vector<GapJob>& jobs) {
    for (const Surrounding& surrounding : round_) {
      for (const MeasuredPart& part : parts_) {
        ask(jobs, round_word(part, surrounding), part.mark, [&part, &surrounding] {
          return GapsFound{std::nullopt, upright(gap_to(part, surrounding), part, false)};
        });
      }
    }
  }

  // Points about the lens axis are kept as if the part stood where its solid was made.
  static std::optional<SolidGap> upright(std::optional<SolidGap> gap, const MeasuredPart& part, bool back) {
    if (!gap) return gap;
    const gp_Trsf place = back ? part.place : part.place.Inverted();
    gap->first_point.Transform(place);
    gap->second_point.Transform(place);
    return gap;
  }

  void add_surrounding(const Surrounding& surrounding, std::vector<Clearance>& all) {
    std::vector<Clearance> found;
    for (const MeasuredPart& part : parts_) {
      const auto gap = upright(store_.at(round_word(part, surrounding)).side, part, true);
      if (gap) found.push_back(rules_.judged_round(part, surrounding.mark, *gap));
    }
    if (found.empty()) return;
    const double least = std::min_element(found.begin(), found.end(), [](const auto& a, const auto& b) {
                           return a.gap_mm < b.gap_mm;
                         })->gap_mm;
    const double near = std::max(kNear_mm, found.front().needed_mm);
    bool told = false;
    for (Clearance& clearance : found) {
      const bool nearest = !told && clearance.gap_mm == least;
      told = told || nearest;
      if (nearest || clearance.gap_mm <= near) all.push_back(std::move(clearance));
    }
  }

  const std::vector<MeasuredPart>& parts_;
  GapStore& store_;
  ClearanceRules rules_;
  std::vector<Surrounding> round_;
  std::vector<WantedPair> pairs_;
  std::vector<std::string> pair_keys_;
  std::unordered_map<std::string, bool> asked_;
  int measured_ = 0;
};

}  // namespace

struct ClearanceShop::Inside {
  PartBook book;
  GapStore store;
  int measured = 0;
};

ClearanceShop::ClearanceShop() : inside_(std::make_unique<Inside>()) {}
ClearanceShop::~ClearanceShop() = default;

int ClearanceShop::measured_anew() const { return inside_->measured; }

Outcome<std::vector<Clearance>> ClearanceShop::find(const LensPlan& plan, const LensBodies& bodies,
                                                    const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                    const Progress& progress) {
  try {
    if (inside_->store.size() > kGapsKept) inside_->store.clear();
    const auto parts = inside_->book.parts_of(plan, bodies, frame, metal);
    Survey survey(plan, frame, parts, inside_->store);
    auto trouble = survey.measure(progress);
    inside_->measured = survey.measured();
    if (trouble) return std::move(*trouble);
    return survey.answers();
  } catch (const Standard_Failure& failure) {
    return not_measured(std::string(" (") + failure.GetMessageString() +
                        "). Change the setting gap or the division of the zones a little.");
  } catch (const std::bad_alloc&) {
    return not_measured(": memory ran out. Close other programs and start them again.");
  }
}

Outcome<std::vector<Clearance>> find_clearances(const LensPlan& plan, const LensBodies& bodies,
                                                const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                const Progress& progress) {
  return ClearanceShop().find(plan, bodies, frame, metal, progress);
}

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

std::string_view name_of(ClearanceKind kind) {
  switch (kind) {
    case ClearanceKind::prism_prism:
      return "prism-prism";
    case ClearanceKind::prism_metal:
      return "prism-metal";
    case ClearanceKind::metal_metal:
      return "metal-metal";
    case ClearanceKind::surroundings:
      return "surroundings";
  }
  return "prism-metal";
}

}  // namespace prismwright
