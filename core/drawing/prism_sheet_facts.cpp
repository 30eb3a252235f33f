#include <cmath>

#include <fmt/format.h>

#include "core/base/inches.h"
#include "core/drawing/prism_sheet_tables.h"
#include "core/lens/trimmed_ring.h"
#include "core/works/prism_reach.h"

namespace prismwright {

namespace {

using Kind = TableLine::Kind;

constexpr double kMm3PerCm3 = 1000;

std::string with_unit(double mm, LengthWords lengths) { return lengths.plain(mm) + " " + lengths.unit(); }

std::string volume_words(double mm3, LengthWords lengths) {
  if (lengths.inches) return decimals(mm3 / (kInch_mm * kInch_mm * kInch_mm), 4) + " cubic in";
  return decimals(mm3 / kMm3PerCm3, 3) + " cm\u00B3";
}

/// Over all, level, along the tangent at the middle of the prism.
std::string length_words(const PlannedPrism& prism, LengthWords lengths) {
  const PrismReach reach(prism);
  const double turn = reach.middle_azimuth();
  const auto along = reach.along({-std::sin(turn), std::cos(turn), 0});
  return along ? with_unit(along->length(), lengths) : "";
}

std::string signed_degrees(double deg) { return (deg > 0 ? "+" : "") + degrees_words(deg) + "\u00B0"; }

/// "cut along the panel's sides at -22.500 and +22.500 degrees, ..."
std::string sides_words(const PlannedPrism& prism, LengthWords lengths) {
  const Trim& trim = prism.trim;
  const bool panel = prism.turning == TurningAxis::panel;
  if (panel && trim.half == Half::whole && TrimmedRing(prism).clears_sides())
    return prism.kind == ZoneKind::centre ? "Whole all round: the sides of the panel do not cut it."
                                          : "A whole ring: the sides of the panel do not cut it.";
  std::string words = fmt::format(
      "Ends cut along the sides of the panel, upright planes through the lens axis at {} and {} "
      "from the panel's axis (+ anticlockwise seen from above), set back by {}.",
      signed_degrees(trim.clockwise_side_deg), signed_degrees(trim.anticlockwise_side_deg),
      with_unit(trim.set_back_mm, lengths));
  const bool refracts = prism.kind == ZoneKind::centre || prism.kind == ZoneKind::ring;
  if (panel && refracts && trim.half != Half::whole) {
    words += fmt::format(" The {} half of a ring, cut level through the focus, set back by {}.",
                         trim.half == Half::upper ? "upper" : "lower", with_unit(trim.half_gap_mm, lengths));
  }
  if (trim.flat_inner_mm) {
    words += fmt::format(" Its inner face is flat and upright, {} from the lens axis.",
                         with_unit(*trim.flat_inner_mm, lengths));
  }
  return words;
}

std::string axis_words(const PlannedPrism& prism, LengthWords lengths) {
  if (prism.turning == TurningAxis::lens) return "Turned about the upright lens axis.";
  if (prism.axis_z_mm == 0 && prism.axis_dip_deg == 0)
    return "Turned about the panel's axis, which lies level through the focus.";
  std::string words = "Turned about the panel's axis, which crosses the lens axis ";
  words += prism.axis_z_mm == 0
               ? "in the focal plane"
               : fmt::format("{} {} the focal plane", with_unit(std::abs(prism.axis_z_mm), lengths),
                             prism.axis_z_mm > 0 ? "above" : "below");
  if (prism.axis_dip_deg == 0) return words + " and lies level.";
  return words + fmt::format(" and {} seaward by {}\u00B0 (its dip).",
                             prism.axis_dip_deg > 0 ? "falls" : "rises",
                             degrees_words(std::abs(prism.axis_dip_deg)));
}

}  // namespace

TableBlock prism_facts_block(const LensPlan& plan, const Master& kind, const PrismSolidFacts& facts,
                             LengthWords lengths) {
  const PlannedPrism& prism = plan.prisms[kind.prism];
  TableBlock block;
  block.columns = {{24}, {38}, {18}, {45}, {18}, {45}};
  block.lines.push_back({Kind::heading, {fmt::format("{}   {}", kind.name, name_of(prism.kind))}});
  block.lines.push_back({Kind::row,
                         {"level length", length_words(prism, lengths), "volume",
                          volume_words(facts.volume_mm3, lengths), "mass", decimals(facts.mass_g, 1) + " g"}});
  add_words(block, axis_words(prism, lengths));
  add_words(block, sides_words(prism, lengths));
  if (!kind.mirror_of.empty()) add_words(block, fmt::format("The mirror image of {}.", kind.mirror_of));
  if (!kind.turned_twin_of.empty())
    add_words(block, fmt::format("{}, turned end for end, is the same piece.", kind.turned_twin_of));
  return block;
}

}  // namespace prismwright
