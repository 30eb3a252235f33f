#include "core/optics/stack_runs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/base/root.h"

namespace prismwright {

namespace {

constexpr double kSettled = 1e-11;    ///< radians of the run's end
constexpr double kLargerBelow = 1.4;  ///< a prism takes more of the elevations near the top: a first guess only

/// What so many prisms of one measure reach beyond the limit, radians (negative: they fall short).
class Overreach {
 public:
  Overreach(const StackBuilder& builder, const StackRun& run, int prisms)
      : builder_(builder), run_(run), prisms_(prisms) {}

  double operator()(double measure) const {
    StackPlace place = run_.from;
    const double span = run_.limit - run_.from.limiting;
    for (int i = 0; i < prisms_; ++i) {
      const auto prism =
          builder_.prism_of(place, [&](SectionPoint a) { return builder_.side_for(a, rule(), measure); });
      // No such prism: it is far too large.
      if (!prism) return span * (prisms_ - i);
      place = StackBuilder::above(*prism);
      if (place.limiting > run_.limit) return place.limiting - run_.limit + span * (prisms_ - 1 - i);
    }
    return place.limiting - run_.limit;
  }

 private:
  [[nodiscard]] Division rule() const { return builder_.task().settings.division; }

  const StackBuilder& builder_;
  const StackRun& run_;
  int prisms_;
};

/// The measure of one prism over the whole run, as a bound: taken with the power in the reflecting face, which
/// every size allows.
std::optional<double> bound_of(const StackBuilder& builder, const StackRun& run) {
  StackTask plain = builder.task();
  plain.kind.power = Power::reflecting;
  plain.kind.faces = Faces::arc;
  const auto whole = StackBuilder(plain).prism_to(run.from, run.limit);
  if (!whole) return std::nullopt;
  return 1.2 * StackBuilder::measure(whole->prism, plain.settings.division);
}

/// The measure at which so many prisms end at the limit; blank where none does.
std::optional<double> equal_measure(const StackBuilder& builder, const StackRun& run, int prisms) {
  const Division rule = builder.task().settings.division;
  if (prisms == 1) {
    const auto whole = builder.prism_to(run.from, run.limit);
    if (!whole) return std::nullopt;
    return StackBuilder::measure(whole->prism, rule);
  }
  const auto bound = bound_of(builder, run);
  if (!bound) return std::nullopt;
  const Overreach over(builder, run, prisms);
  const double guess = *bound / (rule == Division::area ? prisms * prisms : prisms) * kLargerBelow;
  return find_root(over, {0, run.from.limiting - run.limit, *bound, over(*bound)}, guess, kSettled);
}

/// How many prisms no thicker than asked the run needs; blank where more than the most.
std::optional<int> prisms_by_thickness(const StackBuilder& builder, const StackRun& run) {
  const double thickest = builder.task().settings.section_thickness_mm;
  StackPlace place = run.from;
  for (int i = 1; i <= kMostPrisms; ++i) {
    const auto prism = builder.prism_of(
        place, [&](SectionPoint a) { return builder.side_for(a, Division::thickness, thickest); });
    if (!prism) return i;
    place = StackBuilder::above(*prism);
    if (run.limit - place.limiting < kSameElevation) return i;
  }
  return std::nullopt;
}

bool empty(const StackRun& run) { return run.limit - run.from.limiting < kSameElevation; }

Problem too_thin(double thickest) {
  return request_problem("stack.too_thin", "",
                         fmt::format("a section thickness of {:g} mm would need more than {} prisms. Allow "
                                     "thicker sections",
                                     thickest, kMostPrisms));
}

Problem no_measure(int prisms) {
  return request_problem("stack.no_division", "",
                         fmt::format("{} {} cannot be laid over this band. Choose another number", prisms,
                                     prisms == 1 ? "prism" : "prisms"));
}

/// Shares a count out over the runs that are not empty: one each, then one more where the measure is greatest.
Outcome<std::vector<RunSize>> by_count(const StackBuilder& builder, const std::vector<StackRun>& runs,
                                       int locked) {
  const auto open =
      static_cast<int>(std::count_if(runs.begin(), runs.end(), [](auto& r) { return !empty(r); }));
  const int count = builder.task().settings.count;
  if (count < locked + open) {
    return request_problem("stack.count", "",
                           fmt::format("{} zones are too few: {} are locked and {} runs lie between them. Ask "
                                       "for {} or more, or free some",
                                       count, locked, open, locked + open));
  }
  std::vector<RunSize> sizes(runs.size());
  int left = count - locked;
  const auto settle = [&](std::size_t i) {
    sizes[i].prisms += 1;
    left -= 1;
    if (open > 1 || left == 0) {
      const auto measure = equal_measure(builder, runs[i], sizes[i].prisms);
      sizes[i].measure = measure.value_or(std::numeric_limits<double>::quiet_NaN());
    }
  };
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (!empty(runs[i])) settle(i);
  while (left > 0 && open > 0) {
    const auto greatest =
        std::max_element(sizes.begin(), sizes.end(), [](auto& a, auto& b) { return a.measure < b.measure; });
    const auto only = std::find_if(sizes.begin(), sizes.end(), [](auto& s) { return s.prisms > 0; });
    settle(static_cast<std::size_t>((open == 1 ? only : greatest) - sizes.begin()));
  }
  for (const RunSize& size : sizes)
    if (size.prisms > 0 && !std::isfinite(size.measure)) return no_measure(count);
  return sizes;
}

Outcome<std::vector<RunSize>> by_thickness(const StackBuilder& builder, const std::vector<StackRun>& runs) {
  std::vector<RunSize> sizes(runs.size());
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (empty(runs[i])) continue;
    const auto prisms = prisms_by_thickness(builder, runs[i]);
    if (!prisms) return too_thin(builder.task().settings.section_thickness_mm);
    const auto measure = equal_measure(builder, runs[i], *prisms);
    if (!measure) return no_measure(*prisms);
    sizes[i] = {*prisms, *measure};
  }
  return sizes;
}

}  // namespace

Outcome<std::vector<RunSize>> share_out(const StackBuilder& builder, const std::vector<StackRun>& runs,
                                        int locked) {
  switch (builder.task().settings.division) {
    case Division::side:
    case Division::by_hand:
      return std::vector<RunSize>(runs.size(), RunSize{0, builder.task().side_mm});
    case Division::thickness:
      return by_thickness(builder, runs);
    case Division::count:
    case Division::area:
    case Division::height:
      return by_count(builder, runs, locked);
  }
  return std::vector<RunSize>(runs.size());
}

}  // namespace prismwright
