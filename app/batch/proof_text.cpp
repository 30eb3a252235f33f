#include <fmt/format.h>

#include <cmath>

#include "app/batch/proved_section.h"
#include "app/batch/text_table.h"
#include "core/drawing/lengths.h"
#include "core/lens/zone_colours.h"

namespace prismwright {

namespace {

void print_shares(const double (&share)[kFates], std::ostream& out) {
  for (int i = 0; i < kFates; ++i) {
    const Fate fate = static_cast<Fate>(i);
    if (fate != Fate::level && fate != Fate::escaped && share[i] == 0) continue;
    out << fmt::format("  {:>8.3f} %  {}\n", 100 * share[i], name_of(fate));
  }
}

/// Causes without their places: the places are in the JSON.
void print_losses(const std::vector<LossByCause>& losses, std::ostream& out) {
  double share[static_cast<int>(LossCause::joint) + 1] = {};
  for (const LossByCause& loss : losses) share[static_cast<int>(loss.cause)] += loss.share;
  if (losses.empty()) return;
  out << "Not level, by cause:\n";
  for (int i = 1; i <= static_cast<int>(LossCause::joint); ++i) {
    if (share[i] > 0)
      out << fmt::format("  {:>8.3f} %  {}\n", 100 * share[i], words_of(static_cast<LossCause>(i)));
  }
}

void print_lamp(const LampLineProof& lamp, std::ostream& out) {
  out << fmt::format("A lamp {} mm high, its middle {} mm over the focal point:\n",
                     number_text(lamp.lamp.height_mm), number_text(lamp.lamp.above_mm));
  print_shares(lamp.share, out);
  out << fmt::format("  By the zones' own way {:.3f} %, departing {} to {} deg, {:.3f} deg root mean square.\n",
                     100 * lamp.own_way, decimals(lamp.lowest_departure_deg, 3),
                     decimals(lamp.highest_departure_deg, 3), lamp.rms_departure_deg);
}

/// What flat inner faces do away from the middles of the panels.
void print_facets(const std::vector<FacetDeparture>& facets, std::ostream& out) {
  const FacetDeparture* worst = worst_of(facets);
  if (!worst) return;
  out << fmt::format(
      "All this holds at the middle of each panel. Towards its sides the flat inner faces send light "
      "up to {:.4f} deg from its aim, worst in {} at {:.2f} deg from the panel's axis.\n",
      std::abs(worst->worst.departure_deg), worst->zone, worst->worst.azimuth_deg);
  out << fmt::format(
      "They also turn it sideways, towards the panel's axis: what enters up to {:.2f} deg from the axis "
      "leaves up to {:.2f} deg from it, and the horizon between gets no light of the focus.\n",
      worst->side_deg, lit_to_deg(facets));
  TextTable table({{"zone"}, {"departs deg", true}, {"sideways deg", true}, {"own way %", true}});
  for (const FacetDeparture& facet : facets) {
    table.add({facet.zone, fmt::format("{:.4f}", facet.worst.departure_deg),
               fmt::format("{:.4f}", facet.most_turned.sideways_deg),
               fmt::format("{:.2f}", 100 * facet.own_way)});
  }
  table.print(out);
}

std::string degrees_text(const std::optional<double>& value) {
  return value ? fmt::format("{:.3f}", *value) : "";
}

void print_zones(const ProvedSection& proved, std::ostream& out) {
  TextTable table({{"zone"},
                   {"kind"},
                   {"from deg", true},
                   {"to deg", true},
                   {"worst deg", true},
                   {"margin deg", true},
                   {"through %", true},
                   {"F deg", true},
                   {"C deg", true},
                   {"pieces", true},
                   {"glass g", true}});
  const double density = proved.plan.values.material.density_g_cm3;
  for (std::size_t i = 0; i < proved.proof.zones.size(); ++i) {
    const ZoneProof& zone = proved.proof.zones[i];
    const ColourDepartures& colour = proved.colours[i].middle;
    const ZoneGlass& glass = proved.glass[i];
    table.add({zone.mark, std::string(name_of(zone.kind)), fmt::format("{:.3f}", zone.from_deg),
               fmt::format("{:.3f}", zone.to_deg), fmt::format("{:.4f}", zone.worst_departure_deg),
               zone.least_margin_deg ? fmt::format("{:.2f}", *zone.least_margin_deg) : "",
               fmt::format("{:.1f}", 100 * zone.through), degrees_text(colour.f), degrees_text(colour.c),
               std::to_string(glass.pieces), fmt::format("{:.1f}", glass.volume_mm3 * density / 1000)});
  }
  table.print(out);
}

}  // namespace

void print_proof(const ProvedSection& proved, std::ostream& out) {
  const Proof& proof = proved.proof;
  const Section& section = proved.plan.section;
  double dark = 0;
  for (const BeamStrip& strip : proof.dark_strips) dark += strip.to_mm - strip.from_mm;
  out << fmt::format("Level within {:.4f} deg{} ({} allowed).\n", proof.worst_departure_deg,
                     proof.worst_zone.empty() ? "" : ", worst in " + proof.worst_zone,
                     number_text(section.input.settings.level_within_deg));
  out << fmt::format("Of the light between {:.2f} and {:.2f} deg ({:.1f} % of the source), by {} rays:\n",
                     proof.lowest_deg, proof.highest_deg, 100 * proof.share_of_source, proof.elevations);
  print_shares(proof.share, out);
  print_losses(proof.losses, out);
  if (proved.lamp) print_lamp(*proved.lamp, out);
  out << fmt::format("{:.1f} % of the level light comes through the faces. {} dark strips, {:.2f} mm in all.\n",
                     100 * proof.through, proof.dark_strips.size(), dark);
  if (proof.least_margin_deg)
    out << fmt::format("Least margin to total reflection {:.2f} deg.\n", *proof.least_margin_deg);
  double volume_mm3 = 0;
  for (const ZoneGlass& zone : proved.glass) volume_mm3 += zone.volume_mm3;
  out << fmt::format("Glass {:.1f} cm3, {:.2f} kg.\n", volume_mm3 / 1e3,
                     volume_mm3 * proved.plan.values.material.density_g_cm3 / 1e6);
  print_zones(proved, out);
  if (!disperses(proved.plan.values.material))
    out << fmt::format("How {} disperses is not known: nothing is said of blue light (F) and red (C).\n",
                       proved.plan.values.material.name);
  print_facets(proved.facets, out);
  for (const std::string& note : section.notes) out << note << '\n';
}

}  // namespace prismwright
