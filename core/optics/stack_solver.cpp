#include "core/optics/stack_solver.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/refraction.h"
#include "core/optics/stack_builder.h"
#include "core/optics/stack_runs.h"

namespace prismwright {

namespace {

constexpr double kSeenStrip_mm = 1e-3;

class Stack {
 public:
  explicit Stack(const StackTask& task) : task_(task), builder_(task) {
    place_ = {task.start_elevation, task.start_height_mm, 0, task.corner_a};
    if (task.corner_a) place_.limiting = std::atan2(task.corner_a->z, task.corner_a->r);
  }

  Outcome<SolvedStack> solve() {
    const Done done = task_.settings.division == Division::by_hand ? by_hand() : by_rule();
    if (!done) return done.problem();
    return std::move(solved_);
  }

 private:
  [[nodiscard]] std::string band() const { return std::string(name_of(task_.band)); }
  [[nodiscard]] std::string mark(std::size_t more = 1) const {
    return fmt::format("{}{:02}", task_.band == Band::upper ? 'U' : 'L', solved_.prisms.size() + more);
  }
  [[nodiscard]] double seen_deg(double elevation) const { return degrees(elevation - task_.aim); }
  [[nodiscard]] double least_side() const { return kLeastSideInLands * task_.lands.greatest_mm(); }

  Done by_hand() {
    for (const ZoneRow& row : task_.settings.rows) {
      const Done done = row.locked ? add_locked(row) : add_row(row);
      if (!done) return done;
    }
    return {};
  }

  Done add_row(const ZoneRow& row) {
    std::optional<StackedPrism> prism;
    if (row.by == SizeBy::to_deg) {
      const double end = radians(row.size) + task_.aim;
      if (end - place_.limiting < kSameElevation) return ends_too_low(row);
      prism = builder_.prism_to(place_, end);
    } else {
      const Division measure = row.by == SizeBy::thickness_mm ? Division::thickness : Division::side;
      prism =
          builder_.prism_of(place_, [&](SectionPoint a) { return builder_.side_for(a, measure, row.size); });
    }
    if (!prism) return no_prism();
    return add(std::move(*prism));
  }

  Done add_locked(const ZoneRow& row) {
    auto prism = builder_.prism(row.corner_a, row.size);
    if (!prism) return no_prism();
    if (const Done done = check_locked(*prism); !done) return done;
    prism->locked = true;
    return add(std::move(*prism));
  }

  Done by_rule() {
    std::vector<StackRun> runs;
    std::vector<ZoneRow> locked;
    for (const ZoneRow& row : task_.settings.rows)
      if (row.locked) locked.push_back(row);
    std::sort(locked.begin(), locked.end(), [](const ZoneRow& one, const ZoneRow& other) {
      return std::atan2(one.corner_a.z, one.corner_a.r) < std::atan2(other.corner_a.z, other.corner_a.r);
    });
    StackPlace from = place_;
    for (const ZoneRow& row : locked) {
      const auto prism = builder_.prism(row.corner_a, row.size);
      if (!prism) return no_prism();
      runs.push_back({from, prism->reach.low});
      from = StackBuilder::above(*prism);
    }
    runs.push_back({from, task_.limit});
    auto sizes = share_out(builder_, runs, static_cast<int>(locked.size()));
    if (!sizes) return located(sizes.problem());
    for (std::size_t i = 0; i < runs.size(); ++i) {
      const Done filled = fill(runs[i], (*sizes)[i], i < locked.size());
      if (!filled) return filled;
      if (i == locked.size()) continue;
      if (const Done done = add_locked(locked[i]); !done) return done;
    }
    return {};
  }

  /// The prisms of one run between two locked ones, or up to the limit of the stack.
  Done fill(const StackRun& run, const RunSize& size, bool under_locked) {
    for (int i = 0; run.limit - place_.limiting > kSameElevation; ++i) {
      if (solved_.prisms.size() >= kMostPrisms) return too_many();
      const bool last = size.prisms > 0 && i + 1 == size.prisms;
      auto prism = last ? builder_.prism_to(place_, run.limit) : builder_.prism_of(place_, [&](SectionPoint a) {
        return builder_.side_for(a, task_.settings.division, size.measure);
      });
      if (!prism) return no_prism();
      if (prism->prism.side_mm() < least_side() && !last) return eaten_by_lands(prism->prism.side_mm());
      if (prism->reach.high > run.limit + kSameElevation) {
        prism = builder_.prism_to(place_, run.limit);
        if (!prism || prism->prism.side_mm() < least_side()) {
          note_rest(run.limit, prism ? prism->prism.side_mm() : 0, under_locked);
          return {};
        }
      }
      if (prism->prism.side_mm() < least_side()) return eaten_by_lands(prism->prism.side_mm());
      if (const Done done = add(std::move(*prism)); !done) return done;
    }
    return {};
  }

  Done add(StackedPrism prism) {
    if (solved_.prisms.size() >= kMostPrisms) return too_many();
    if (prism.prism.margin(0.5) < 0) return no_reflection(prism);
    place_ = StackBuilder::above(prism);
    solved_.prisms.push_back(std::move(prism));
    return {};
  }

  Done check_locked(const StackedPrism& locked) {
    const SectionPoint a = locked.prism.corners().a;
    if (locked.reach.low < place_.limiting - kSameElevation) {
      return request_problem(
          "stack.locked_overlap", mark(),
          fmt::format("locked zone {} begins at {:.3f} deg, but what lies below it reaches {:.3f} deg. Free it "
                      "(section {}_rows), or make its neighbours smaller",
                      mark(), seen_deg(locked.reach.low), seen_deg(place_.limiting), band()));
    }
    if (place_.inner_mm > 0 && (a - SectionPoint{}).length() <= place_.inner_mm) {
      return request_problem(
          "stack.locked_clash", mark(),
          fmt::format("locked zone {} would stand in the glass of its neighbour: its corner A lies {:.3f} mm "
                      "from the focal point, the neighbour's corner B {:.3f} mm. Free one of the two",
                      mark(), (a - SectionPoint{}).length(), place_.inner_mm));
    }
    if (locked.reach.low > place_.limiting + kSameElevation) {
      solved_.notes.push_back(
          fmt::format("Between locked zone {} and what lies below it light escapes from "
                      "{:.3f} to {:.3f} deg.",
                      mark(), seen_deg(place_.limiting), seen_deg(locked.reach.low)));
    }
    const double strip = a.z - place_.height_mm - task_.gap_mm * std::sin(place_.limiting);
    if (strip > kSeenStrip_mm) {
      solved_.notes.push_back(
          fmt::format("Locked zone {} stands {:.3f} mm above its neighbour's beam, which leaves a dark strip.",
                      mark(), strip));
    }
    return {};
  }

  Problem located(Problem problem) const {
    problem.where = fmt::format("section.{}_division", band());
    return problem;
  }

  [[nodiscard]] Problem ends_too_low(const ZoneRow& row) const {
    return request_problem(
        "stack.ends_too_low", mark(),
        fmt::format("zone {} shall end at {:g} deg, but it begins at {:.3f} deg. Let it end beyond that",
                    mark(), row.size, seen_deg(place_.limiting)));
  }

  [[nodiscard]] Problem no_prism() const {
    return request_problem(
        "stack.no_prism", mark(),
        fmt::format(
            "zone {} above {:.2f} deg cannot be: no prism there has the size asked for with its power in "
            "that face. Choose another size, or put the power in the reflecting face "
            "(section.{}_power)",
            mark(), seen_deg(place_.limiting), band()));
  }

  [[nodiscard]] Problem no_reflection(const StackedPrism& prism) const {
    const double from = seen_deg(prism.reach.low);
    return request_problem(
        "reflecting.not_total", mark(),
        fmt::format("zone {} ({:.2f} to {:.2f} deg): its middle ray meets the reflecting face at {:.2f} deg, "
                    "but index {:g} reflects totally only from {:.2f} deg. End the {} prisms below {:.1f} deg "
                    "(section.{}_to_deg) or take a material of higher index",
                    mark(), from, seen_deg(prism.reach.high),
                    degrees(prism.prism.margin(0.5) + critical_angle(task_.kind.index)), task_.kind.index,
                    degrees(critical_angle(task_.kind.index)), band(), from, band()));
  }

  [[nodiscard]] Problem too_many() const {
    return request_problem(
        "stack.too_many", fmt::format("section.{}_to_deg", band()),
        fmt::format("an entry side of {:g} mm would need more than {} {} prisms to reach {:g} deg. Make "
                    "section.reflecting_chord_mm longer",
                    task_.side_mm, kMostPrisms, band(), seen_deg(task_.limit)));
  }

  /// A prism that is small throughout, not only a short rest.
  [[nodiscard]] Problem eaten_by_lands(double side_mm) const {
    return request_problem(
        "stack.lands", "section.land_mm",
        fmt::format(
            "zone {}: lands of {:g} mm (section.land_mm, or the corner's own) eat the faces of a prism of {:g} "
            "mm "
            "entry side; it carries lands up to {:.3g} mm. Make the lands narrower or the prisms larger",
            mark(), task_.lands.greatest_mm(), side_mm, side_mm / kLeastSideInLands));
  }

  void note_rest(double limit, double side_mm, bool under_locked) {
    solved_.notes.push_back(
        fmt::format("The {} prisms{} end at {:.2f} deg, not {:g}: the rest would be a prism of {:.2f} mm entry "
                    "side, too small for lands of {:g} mm.",
                    band(), under_locked ? fmt::format(" below locked {}", mark()) : "",
                    seen_deg(place_.limiting), seen_deg(limit), side_mm, task_.lands.greatest_mm()));
  }

  const StackTask& task_;
  StackBuilder builder_;
  StackPlace place_;
  SolvedStack solved_;
};

}  // namespace

Outcome<SolvedStack> solve_stack(const StackTask& task) { return Stack(task).solve(); }

}  // namespace prismwright
