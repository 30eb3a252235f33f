#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/frame_bodies.h"
#include "tests/support/random_frame_values.h"

namespace prismwright {

/// A frame drawn by lot with a few of its prisms and the brass near them, so that hundreds are soon made.
struct RandomFrame {
  LensPlan plan;
  LensBodies bodies;
  FramePlan frame;
  std::vector<FrameBody> metal;

  [[nodiscard]] std::vector<Clearance> clearances() const {
    auto found = find_clearances(plan, bodies, frame, metal);
    EXPECT_TRUE(found.ok()) << (found.ok() ? "" : found.problem().text);
    return found.ok() ? *found : std::vector<Clearance>{};
  }

  /// The solid of a prism or metal part; the mark must exist.
  TopoDS_Shape& shape(const std::string& mark) {
    for (PrismBody& body : bodies.prisms) {
      if (body.mark == mark) return body.shape;
    }
    return std::find_if(metal.begin(), metal.end(), [&](const FrameBody& part) { return part.mark == mark; })
        ->shape;
  }
};

/// Leaves two neighbours of the first panel and what stands in the same zones of the second.
inline void keep_few_prisms(LensPlan& plan, Lot& lot) {
  const auto pairs = neighbours(plan);
  std::set<std::string> marks;
  if (!pairs.empty()) {
    const int last = static_cast<int>(pairs.size() / plan.panels.size());
    const NeighbourPair pair = pairs[static_cast<std::size_t>(lot.whole(0, std::max(0, last - 1)))];
    marks = {plan.prisms[pair.first].mark, plan.prisms[pair.second].mark};
  }
  if (lot.once_in(3)) {
    for (const std::string& mark : std::set<std::string>(marks)) marks.insert("P02" + mark.substr(3));
  }
  std::erase_if(plan.prisms, [&](const PlannedPrism& prism) { return !marks.contains(prism.mark); });
}

/// Leaves the ribs, rails and cross ribs of the first panel, the rib beside it and two screws.
inline void keep_near_metal(FramePlan& frame) {
  const auto far = [](const auto& part) { return part.panel != 1; };
  const auto far_rib = [](const auto& part) { return part.panel != 1 && part.mark != "P02-rib-right"; };
  std::erase_if(frame.ribs, far_rib);
  std::erase_if(frame.flats, far_rib);
  frame.rings.clear();
  std::erase_if(frame.bars, far);
  std::erase_if(frame.rounds, far);
  if (frame.rounds.size() > 2) frame.rounds.resize(2);
}

/// Drawn values of which no lens or frame came, by the code of the refusal.
struct Refusals {
  std::map<std::string, int> count;
  std::map<std::string, std::string> example;  ///< the first sentence of each

  /// Counts a refusal, which must say something; whoever shows it ends it with a full stop.
  std::nullopt_t take(const std::string& code, const std::string& sentence) {
    EXPECT_FALSE(code.empty()) << sentence;
    EXPECT_GT(sentence.size(), 20u) << code;
    ++count[code];
    example.try_emplace(code, sentence);
    return std::nullopt;
  }
  std::nullopt_t take(const Problem& problem) { return take(problem.code, problem.text); }
};

/// Makes the solids of what was kept of plan and frame.
inline std::optional<RandomFrame> with_solids(RandomFrame drawn) {
  auto bodies = BodyShop().make(drawn.plan);
  auto metal = make_frame(drawn.frame);
  EXPECT_TRUE(bodies.ok()) << (bodies.ok() ? "" : bodies.problem().text);
  EXPECT_TRUE(metal.ok()) << (metal.ok() ? "" : metal.problem().text);
  if (!bodies || !metal) return std::nullopt;
  drawn.bodies = std::move(bodies).value();
  drawn.metal = std::move(metal).value();
  return drawn;
}

/// Blank where the values drawn cannot be made into a lens.
inline std::optional<RandomFrame> drawn_frame(const LensValues& values, Lot& lot, Refusals& refusals) {
  if (const Done fit = check_values(values); !fit) return refusals.take(fit.problem());
  auto plan = plan_lens(values);
  if (!plan) return refusals.take(plan.problem());
  RandomFrame drawn;
  drawn.plan = std::move(plan).value();
  keep_few_prisms(drawn.plan, lot);
  if (drawn.plan.prisms.empty()) return refusals.take("one prism", "A lens of one zone has no neighbours.");
  drawn.frame = plan_frame(drawn.plan);
  keep_near_metal(drawn.frame);
  return with_solids(std::move(drawn));
}

/// Draws until a lens comes of it.
inline RandomFrame random_frame(Lot& lot, Refusals& refusals) {
  for (;;) {
    if (auto drawn = drawn_frame(random_frame_values(lot), lot, refusals)) return std::move(*drawn);
  }
}

}  // namespace prismwright
