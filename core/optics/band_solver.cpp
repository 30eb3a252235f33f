#include "core/optics/band_solver.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/band_runs.h"
#include "core/optics/refracting_zone.h"

namespace prismwright {

namespace {

constexpr double kSteepest_deg = 60;  ///< above it the outer face is all but grazed
constexpr double kSameJoint = 1e-9;   ///< radians
constexpr double kSeenGap = 1e-7;     ///< radians

std::string mark_of(std::size_t number) { return number == 0 ? "C" : fmt::format("R{}", number); }

Problem too_steep(const std::string& key, const std::string& zone, const ZoneRow& row, double to) {
  const bool margin = row.by == SizeBy::margin_mm;
  return request_problem(
      "band.too_steep", key,
      fmt::format("{}: zone {} with {} {:g} {} reaches {:.2f} deg; a refracting ring can serve no "
                  "more than {:g} deg. Leave the light above to reflecting prisms",
                  key, zone, margin ? "margin" : "end", row.size, margin ? "mm" : "deg", degrees(to),
                  kSteepest_deg));
}

class BandMaker {
 public:
  explicit BandMaker(const BandTask& task)
      : task_(task), settings_(task.input.settings), band_{task.input.focal_mm,
                                                           task.input.index,
                                                           settings_.edge_mm,
                                                           settings_.faces_of(Band::refracting),
                                                           settings_.joint,
                                                           task.aim} {}

  Outcome<SolvedBand> solve() {
    const auto limits = chosen_limits();
    if (!limits) return limits.problem();
    for (std::size_t i = 0; i < limits->size(); ++i) {
      const Done made = make_zone(i, (*limits)[i]);
      if (!made) return made.problem();
    }
    return std::move(solved_);
  }

 private:
  Outcome<std::vector<ZoneLimits>> chosen_limits() {
    if (!settings_.refracting_margins_mm.empty()) return from_margins();
    if (settings_.refracting.division == Division::by_hand) return from_rows();
    std::vector<ZoneLimits> locked;
    for (const ZoneRow& row : settings_.refracting.rows) {
      if (!row.locked) continue;
      locked.push_back(locked_limits(row));
    }
    std::sort(locked.begin(), locked.end(), [](auto& one, auto& other) { return one.from < other.from; });
    const double end = radians(settings_.refracting_to_deg);
    if (const Done apart = check_apart(locked, end); !apart) return apart.problem();
    return divide_refracting(band_, settings_, end, locked);
  }

  [[nodiscard]] double end_of(const ZoneRow& row) const {
    return row.by == SizeBy::margin_mm ? band_.elevation_of_margin(row.size) : radians(row.size) + task_.tilt;
  }

  [[nodiscard]] ZoneLimits locked_limits(const ZoneRow& row) const {
    return {row.from_deg > 0 ? radians(row.from_deg) + task_.tilt : 0, end_of(row), true};
  }

  /// Locked zones must leave each other room, and lie within the band.
  [[nodiscard]] Done check_apart(const std::vector<ZoneLimits>& locked, double end) const {
    double free_from = 0;
    for (const ZoneLimits& zone : locked) {
      if (zone.from < free_from - kSameJoint || zone.to > end + kSameJoint) {
        return request_problem(
            "band.locked", "section.refracting_rows",
            fmt::format("the zone locked from {:.3f} to {:.3f} deg does not fit: there is room from {:.3f} to "
                        "{:.3f} deg. Free it, or make the setting gap smaller or the band larger",
                        degrees(zone.from), degrees(zone.to), degrees(free_from), degrees(end)));
      }
      free_from = start_above(band_, zone.to, settings_.gap_mm);
    }
    return {};
  }

  Outcome<std::vector<ZoneLimits>> from_margins() {
    std::vector<ZoneRow> rows;
    for (const double margin : settings_.refracting_margins_mm) {
      ZoneRow row;
      row.by = SizeBy::margin_mm;
      row.size = margin;
      rows.push_back(row);
    }
    return from_list(rows, "section.refracting_margins_mm");
  }

  Outcome<std::vector<ZoneLimits>> from_rows() {
    if (settings_.refracting.rows.empty()) {
      return request_problem(
          "band.no_rows", "section.refracting_rows",
          "the refracting band is divided by hand but has no zone. Give section.refracting_rows "
          "at least the centre, or choose another section.refracting_division");
    }
    return from_list(settings_.refracting.rows, "section.refracting_rows");
  }

  Outcome<std::vector<ZoneLimits>> from_list(const std::vector<ZoneRow>& rows, const std::string& key) {
    std::vector<ZoneLimits> limits;
    double from = 0;
    for (const ZoneRow& row : rows) {
      const std::string zone = mark_of(limits.size());
      ZoneLimits here{from, end_of(row), row.locked};
      if (row.locked) {
        here = locked_limits(row);
        if (here.from < from - kSameJoint) return overlaps(key, zone, here.from, from);
        if (here.from > from + kSeenGap) note_opening(zone, from, here.from);
      }
      if (!(here.to > here.from)) return not_beyond(key, zone, row, from);
      if (degrees(here.to) > kSteepest_deg) return too_steep(key, zone, row, here.to);
      limits.push_back(here);
      from = start_above(band_, here.to, settings_.gap_mm);
    }
    return limits;
  }

  void note_opening(const std::string& zone, double from, double to) {
    solved_.notes.push_back(
        fmt::format("Below locked zone {} the light from {:.3f} to {:.3f} deg meets no zone.", zone,
                    degrees(from - task_.tilt), degrees(to - task_.tilt)));
  }

  [[nodiscard]] Problem overlaps(const std::string& key, const std::string& zone, double begins,
                                 double free) const {
    return request_problem(
        "band.locked", key,
        fmt::format("{}: locked zone {} begins at {:.3f} deg, but the zone inside it with its "
                    "setting gap ends at {:.3f} deg. Free it, or make its neighbour smaller",
                    key, zone, degrees(begins), degrees(free)));
  }

  [[nodiscard]] Problem not_beyond(const std::string& key, const std::string& zone, const ZoneRow& row,
                                   double from) const {
    const bool margin = row.by == SizeBy::margin_mm;
    return request_problem(
        "margins.rise", key,
        fmt::format("{}: {} {:g} {} of zone {} does not lie beyond the zone inside it, which "
                    "with its setting gap ends at {:.3f} {}. Give ends that rise",
                    key, margin ? "margin" : "end", row.size, margin ? "mm" : "deg", zone,
                    margin ? band_.margin_of_elevation(from) : degrees(from - task_.tilt),
                    margin ? "mm" : "deg"));
  }

  Done make_zone(std::size_t number, const ZoneLimits& limits) {
    Zone zone;
    zone.kind = number == 0 ? ZoneKind::centre : ZoneKind::ring;
    zone.mark = mark_of(number);
    zone.number = static_cast<int>(number);
    zone.from_deg = number == 0 ? -degrees(limits.to) : degrees(limits.from);
    zone.to_deg = degrees(limits.to);
    zone.locked = limits.locked;
    auto profile = number == 0 ? band_.centre(limits.to) : band_.ring(limits.from, limits.to);
    if (!profile) return named(profile.problem(), zone.mark);
    zone.profile = std::move(*profile);
    if (task_.aim != 0 && number > 0) {
      RefractingBand below = band_;
      below.aim = -band_.aim;
      auto image = below.ring(limits.from, limits.to);
      if (!image) return named(image.problem(), zone.mark);
      zone.lower_image = mirrored(*image);
    }
    for (const SectionPoint p : points_along(*zone.profile.find(FaceRole::outer), 0.05))
      zone.thickness_mm = std::max(zone.thickness_mm, p.r - band_.focal_mm);
    zone.section_thickness_mm = zone.thickness_mm;
    solved_.zones.push_back(std::move(zone));
    return {};
  }

  static Problem named(Problem problem, const std::string& mark) {
    problem.where = mark;
    problem.text = fmt::format("zone {}: {}", mark, problem.text);
    return problem;
  }

  const BandTask& task_;
  const SectionSettings& settings_;
  RefractingBand band_;
  SolvedBand solved_;
};

}  // namespace

Outcome<SolvedBand> solve_band(const BandTask& task) { return BandMaker(task).solve(); }

}  // namespace prismwright
