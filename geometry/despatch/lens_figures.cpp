#include "geometry/despatch/lens_figures.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/frame/frame_verdict.h"
#include "geometry/clearance_order.h"

namespace prismwright {

namespace {

constexpr double kGramsPerKilogram = 1000;

std::string counted(std::size_t count, const char* one, const char* many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string glass_words(const LensBodies& glass) {
  double grams = 0;
  for (const PrismBody& body : glass.prisms) grams += body.mass_g;
  return fmt::format("{}, {:.2f} kg", counted(glass.prisms.size(), "prism", "prisms"),
                     grams / kGramsPerKilogram);
}

std::string level_words(const Proof& proof, double within_deg) {
  return fmt::format(
      "{} within {:.3f} deg of its aim ({} is asked for); {:.2f} % of the section's light leaves so",
      proof.worst_departure_deg <= within_deg ? "well:" : kNotWell, proof.worst_departure_deg,
      shortest(within_deg), 100 * proof.of(Fate::level));
}

std::string room_words(const std::vector<Clearance>& clearances, const LengthWords& lengths) {
  const auto count = [&](Verdict verdict) {
    return std::ranges::count(clearances, verdict, &Clearance::verdict);
  };
  if (const auto clashes = count(Verdict::clash); clashes > 0)
    return fmt::format("{} {}", kNotWell,
                       clashes == 1 ? "one pair clashes" : fmt::format("{} pairs clash", clashes));
  const auto least = std::ranges::min_element(clearances, is_worse);
  if (least == clearances.end()) return "no two parts come near each other";
  return fmt::format("{} no clash, {} tight; least room to spare at {} {}, {} to {}",
                     count(Verdict::tight) > 0 ? "look:" : "well:",
                     counted(static_cast<std::size_t>(count(Verdict::tight)), "pair", "pairs"),
                     lengths.plain(least->gap_mm), lengths.unit(), least->first, least->second);
}

/// What the frame is warned of: thin brass, a door that cannot swing and the like.
std::string frame_words(const FramePlan& frame) {
  if (frame.warnings.empty()) return "";
  const FrameWarning* bad = warning_of_not_well(frame);
  const std::string more =
      frame.warnings.size() > 1 ? fmt::format(" ({} warnings in all)", frame.warnings.size()) : "";
  return fmt::format("{} {}{}", bad ? kNotWell : "look:", (bad ? *bad : frame.warnings.front()).sentence, more);
}

std::string miles(double nmi) { return fmt::format("{:.1f} nautical miles", nmi); }

}  // namespace

Figures lens_figures(LensShop& shop) {
  const LensValues& values = shop.values();
  const HouseWords words = shop.undated_words();
  const LengthWords lengths{words.inches};
  Figures figures;
  const auto say = [&](const char* caption, const std::string& what) {
    if (!what.empty()) figures.emplace_back(caption, what);
  };
  say("Client", words.client);
  say("Order", words.order);
  say("Focal distance", lengths.plain(words.focal_mm) + " " + lengths.unit());
  say("Panels", fmt::format("{}, {}", shop.plan().panels.size(),
                            values.brief.work == Work::belt ? "belt work" : "bull's-eye work"));
  say("Character", values.brief.character);
  say("Material", words.material);
  if (const auto glass = shop.bodies()) say("Glass", glass_words(**glass));
  if (!shop.frame().flats.empty()) say("Brass", fmt::format("{:.2f} kg", shop.brass_kg()));
  say("Level", level_words(shop.proof(), values.section.level_within_deg));
  say("Frame", frame_words(shop.frame()));
  if (const auto clearances = shop.clearances()) say("Clearances", room_words(**clearances, lengths));
  return figures;
}

Figures light_figures(const LightReport& light) {
  Figures figures{{"Beam", fmt::format("{:.0f} cd in service, {:.2f} deg wide at half", light.service_cd,
                                       light.half_width_deg)},
                  {"Character as drawn", light.character},
                  {"Nominal range", miles(light.nominal_range_nmi)}};
  if (light.half_width_deg <= 0) figures.front().second = fmt::format("{:.0f} cd in service", light.service_cd);
  if (!light.differs.empty())
    figures.emplace_back("Against the brief", fmt::format("{} {}", kNotWell, light.differs));
  for (const std::string& warning : light.warnings) figures.emplace_back("Light", "look: " + warning);
  return figures;
}

}  // namespace prismwright
