#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "core/works/congruence.h"
#include "core/works/inspection.h"

namespace prismwright {

namespace {

// A casting that far from its drawing is a slip of the pen: half of the size and 5 of its unit.
constexpr double kSlipShare = 0.5;
constexpr double kSlip = 5;

Problem unknown_mark(const LensPlan& plan, const std::string& mark) {
  return request_problem("inspection.mark", mark,
                         fmt::format("The lens has no prism \"{}\". Use a mark of the plan, as {}.", mark,
                                     plan.prisms.empty() ? "P01-C" : plan.prisms.front().mark));
}

Done check_value(const Feature& feature, const Measurement& measurement) {
  const double least = feature.kind == FeatureKind::laser ? -kSlip : 0;
  const double room = kSlipShare * feature.drawn + kSlip;
  if (std::isfinite(measurement.measured) && measurement.measured >= least &&
      std::abs(measurement.measured - feature.drawn) <= room)
    return {};
  return request_problem(
      "inspection.value", measurement.mark,
      fmt::format(
          "{}: {} was given as {:g} {}, but it is drawn {:.3f} {}. A reading more than {:.3f} {} off is a "
          "slip; measure it again.",
          measurement.mark, feature.key, measurement.measured, feature.unit, feature.drawn, feature.unit, room,
          feature.unit));
}

}  // namespace

const PlannedPrism* prism_of_mark(const LensPlan& plan, std::string_view mark) {
  if (const PlannedPrism* prism = plan.find(mark)) return prism;
  if (!mark.starts_with('S')) return nullptr;
  const std::string piece = piece_of_mark(mark);
  const auto found = std::ranges::find_if(
      plan.prisms, [&](const PlannedPrism& prism) { return piece_of_mark(prism.mark) == piece; });
  return found == plan.prisms.end() ? nullptr : &*found;
}

Done check_measurement(const LensPlan& plan, const Measurement& measurement) {
  const PlannedPrism* prism = prism_of_mark(plan, measurement.mark);
  if (!prism) return unknown_mark(plan, measurement.mark);
  const auto features = features_of(*prism, plan.values.works);
  const auto feature = std::ranges::find(features, measurement.feature, &Feature::key);
  if (feature != features.end()) return check_value(*feature, measurement);
  std::vector<std::string> keys;
  for (const Feature& known : features) keys.push_back(known.key);
  return request_problem("inspection.feature", measurement.mark,
                         fmt::format("{} has no feature \"{}\". It has: {}.", measurement.mark,
                                     measurement.feature, fmt::join(keys, ", ")));
}

Done check_decision(const LensPlan& plan, const Decision& decision) {
  if (!prism_of_mark(plan, decision.mark)) return unknown_mark(plan, decision.mark);
  if (decision.note.find_first_not_of(" \t\r\n") != std::string::npos) return {};
  return request_problem(
      "inspection.reason", decision.mark,
      fmt::format("{}: a decision without its reason cannot be kept. Write in a note why it is "
                  "accepted, shimmed or scrapped.",
                  decision.mark));
}

}  // namespace prismwright
