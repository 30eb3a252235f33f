#include <fmt/format.h>

#include <cmath>
#include <numeric>

#include "core/base/angle.h"
#include "core/lens/flat_inner_face.h"
#include "core/lens/quantity_table.h"
#include "core/lens/spectrum.h"
#include "core/lens/zone_rows.h"
#include "core/works/works_checks.h"

namespace prismwright {

namespace {

constexpr double kWidthSum_deg = 1e-6;

Done in_range(const Quantity& q, double value) {
  if (std::isfinite(value) && value >= q.min && value <= q.max) return {};
  const std::string unit = q.unit.empty() ? "" : " " + q.unit;
  return request_problem(
      "value.range", q.key,
      fmt::format("{} is {:g}{}; it must lie between {:g} and {:g}{}. Choose a value inside that range", q.key,
                  value, unit, q.min, q.max, unit));
}

Done numbers_in_range(const QuantityRow& row, LensValues& values) {
  if (const auto* place = std::get_if<NumberPlace>(&row.place)) return in_range(row.quantity, (*place)(values));
  if (const auto* place = std::get_if<BlankNumberPlace>(&row.place)) {
    const auto& number = (*place)(values);
    return number ? in_range(row.quantity, *number) : Done();
  }
  if (const auto* place = std::get_if<CountPlace>(&row.place)) return in_range(row.quantity, (*place)(values));
  if (const auto* place = std::get_if<NumbersPlace>(&row.place)) {
    for (const double number : (*place)(values)) {
      if (const Done done = in_range(row.quantity, number); !done) return done;
    }
  }
  return {};
}

Done check_one_panel(const LensValues& values, std::size_t i) {
  const Panel& panel = values.panels[i];
  if (const Done done = in_range(*find_quantity("panels.widths_deg"), panel.width_deg); !done) return done;
  if (!(std::abs(panel.axis_shift_deg) <= panel.width_deg / 2)) {
    return request_problem(
        "panels.axis", "panels.axis_shift_deg",
        fmt::format("the axis of panel {} is shifted by {:g} deg, out of the panel, which reaches {:g} deg to "
                    "either side of its middle. Keep the shift within that",
                    i + 1, panel.axis_shift_deg, panel.width_deg / 2));
  }
  const double room_mm = 2 * values.brief.focal_mm * std::sin(radians(panel.width_deg / 2));
  const double metal_mm = 2 * values.frame.prism_set_back_mm();
  if (room_mm <= 1.5 * metal_mm) {
    return request_problem(
        "panels.narrow", "panels.widths_deg",
        fmt::format("panel {} of {:g} deg is {:.1f} mm wide at the focal distance, but its ribs and end gaps "
                    "take {:.1f} mm. Widen the panel or make the ribs thinner",
                    i + 1, panel.width_deg, room_mm, metal_mm));
  }
  return {};
}

Done check_panels(const LensValues& values) {
  const Quantity& count = *find_quantity("brief.panels");
  if (const Done done = in_range(count, static_cast<double>(values.panels.size())); !done) return done;
  bool any = false;
  double sum = 0;
  for (std::size_t i = 0; i < values.panels.size(); ++i) {
    if (const Done done = check_one_panel(values, i); !done) return done;
    sum += values.panels[i].width_deg;
    any = any || !values.panels[i].blind;
  }
  if (std::abs(sum - 360) > kWidthSum_deg) {
    return request_problem(
        "panels.sum", "panels.widths_deg",
        fmt::format("the panel widths add to {:g} deg; they must add to 360. Make panels {:g} deg {} in all",
                    sum, std::abs(sum - 360), sum < 360 ? "wider" : "narrower"));
  }
  if (!any) {
    return request_problem(
        "panels.all_blind", "panels.blind",
        fmt::format("all {} panels are blind; at least one must hold prisms. Clear panels.blind",
                    values.panels.size()));
  }
  return {};
}

Done check_frame(const LensValues& values) {
  const FrameSettings& frame = values.frame;
  if (frame.pocket_mm > frame.rib_mm) {
    return request_problem(
        "frame.pocket", "frame.pocket_mm",
        fmt::format("frame.pocket_mm is {:g} mm, but the rib is only {:g} mm thick "
                    "(frame.rib_mm); as deep as the rib means a seat right through. Make the "
                    "pocket shallower or the rib thicker",
                    frame.pocket_mm, frame.rib_mm));
  }
  const auto panels = static_cast<int>(values.panels.size());
  if (frame.door_panel > panels) {
    return request_problem(
        "frame.door", "frame.door_panel",
        fmt::format("frame.door_panel is {}, but the lens has {} panels. Choose one of them, or 0 for none",
                    frame.door_panel, panels));
  }
  const double left_mm = frame.rib_mm - frame.pocket_mm - frame.door_gap_mm;
  if (frame.door_panel > 0 && left_mm < 0) {
    return request_problem("frame.door_gap", "frame.door_gap_mm",
                           fmt::format("frame.door_gap_mm is {:g} mm and is taken off the back of the door's "
                                       "ribs, where the pockets leave only {:g} mm. Make the gap smaller or "
                                       "the pockets shallower",
                                       frame.door_gap_mm, frame.rib_mm - frame.pocket_mm));
  }
  if (frame.changer_radius_mm > 0 && frame.changer_to_mm <= frame.changer_from_mm) {
    return request_problem(
        "frame.changer", "frame.changer_to_mm",
        fmt::format("the lamp changer reaches from {:g} up to {:g} mm over the focal plane; its upper end must "
                    "lie over its lower one. Change frame.changer_to_mm",
                    frame.changer_from_mm, frame.changer_to_mm));
  }
  return {};
}

Done check_limit(const SectionSettings& section, Band band, double limit) {
  if (section.of(band).division == Division::by_hand || limit >= section.refracting_to_deg) return {};
  const std::string key = fmt::format("section.{}_to_deg", name_of(band));
  return request_problem(
      "limit.below_band", key,
      fmt::format(
          "{} is {:g} deg, inside the refracting band, which reaches {:g} deg. Choose {:g} for no reflecting "
          "prisms, or more",
          key, limit, section.refracting_to_deg, section.refracting_to_deg));
}

Done check_bands(const SectionSettings& section) {
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    if (const Done rows = check_rows(section.of(band).rows, band); !rows) return rows;
  }
  if (!section.refracting_margins_mm.empty() && !section.refracting.rows.empty()) {
    return request_problem("margins.twice", "section.refracting_rows",
                           "the refracting band has both margins (section.refracting_margins_mm) and zone rows "
                           "(section.refracting_rows). Clear one of the two");
  }
  if (!section.refracting_margins_mm.empty() || section.refracting.division == Division::by_hand) return {};
  if (const Done upper = check_limit(section, Band::upper, section.upper_to_deg); !upper) return upper;
  return check_limit(section, Band::lower, section.lower_to_deg);
}

Done check_section(const SectionSettings& section) {
  for (std::size_t i = 1; i < section.refracting_margins_mm.size(); ++i) {
    const double before = section.refracting_margins_mm[i - 1];
    const double here = section.refracting_margins_mm[i];
    if (here > before) continue;
    return request_problem("margins.rise", "section.refracting_margins_mm",
                           fmt::format("margin {} of section.refracting_margins_mm is {:g} mm, not above the "
                                       "{:g} mm before it. Give margins that rise",
                                       i + 1, here, before));
  }
  if (section.upper_start_r_mm.has_value() != section.upper_start_z_mm.has_value()) {
    const char* missing = section.upper_start_r_mm ? "section.upper_start_z_mm" : "section.upper_start_r_mm";
    return request_problem(
        "start.half", missing,
        fmt::format(
            "{} is blank while its companion is given; corner A needs both. Give both or leave both blank",
            missing));
  }
  if (const Done bands = check_bands(section); !bands) return bands;
  if (section.rib_inner_r_mm && section.rib_outer_r_mm && *section.rib_outer_r_mm < *section.rib_inner_r_mm) {
    return request_problem(
        "rib.backward", "section.rib_outer_r_mm",
        fmt::format(
            "section.rib_outer_r_mm is {:g} mm, less than section.rib_inner_r_mm, {:g} mm. Let the ribs end "
            "farther out than they begin",
            *section.rib_outer_r_mm, *section.rib_inner_r_mm));
  }
  return {};
}

Done check_points(const std::string& text, SpectrumKind kind, const char* key) {
  if (text.empty()) return {};
  const auto points = Spectrum::from_text(text, kind, key);
  return points ? Done() : Done(points.problem());
}

Done check_spectra(const LensValues& values) {
  using enum SpectrumKind;
  const LightSettings& light = values.light;
  for (const Done& done : {check_points(values.lamp.spectrum, emission, "lamp.spectrum"),
                           check_points(values.material.tint, transmittance, "material.tint"),
                           check_points(light.red_screen, transmittance, "light.red_screen"),
                           check_points(light.green_screen, transmittance, "light.green_screen"),
                           check_points(light.yellow_screen, transmittance, "light.yellow_screen")})
    if (!done) return done;
  return {};
}

}  // namespace

Done check_values(const LensValues& values) {
  LensValues open = values;  // places give references; this copy is only read
  for (const QuantityRow& row : quantity_rows()) {
    if (const Done done = numbers_in_range(row, open); !done) return done;
  }
  if (const Done done = check_panels(values); !done) return done;
  if (const Done done = check_frame(values); !done) return done;
  if (const Done done = check_spectra(values); !done) return done;
  if (const Done done = check_works(values.works); !done) return done;
  return check_section(values.section);
}

Done check_buildable(const LensValues& values) {
  const auto section = solve_section(values.section_input());
  return section ? check_flat_facets(values, *section) : Done(section.problem());
}

}  // namespace prismwright
