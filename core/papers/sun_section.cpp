#include <fmt/format.h>

#include "core/papers/light_sections.h"

namespace prismwright {

std::vector<std::string> sun_sentences(const LensPlan& plan, const LightReport& light,
                                       const LengthWords& lengths) {
  const SunHazard& sun = light.sun;
  if (sun.panel == 0 || sun.spots.empty())
    return {"What the sun does at the focus was not worked out. Cover the lens by day all the same."};
  std::vector<std::string> sentences = {
      fmt::format("With the sun in the beam of panel {} ({} W/m2 square to its rays), up to {} kW/m2 fall on "
                  "the focus, "
                  "{} W on a ball {} {} across; the sun's image is {} {} wide.",
                  sun.panel, shortest(plan.values.light.sun_w_m2), decimals(sun.worst_kw_m2, 0),
                  decimals(sun.spots.back().watts, 1), lengths.plain(sun.spots.back().diameter_mm),
                  lengths.unit(), lengths.plain(sun.image_mm), lengths.unit()),
      fmt::format("Wood takes fire in time from {} kW/m2 (Babrauskas 2001).", shortest(kWoodKindles_kw_m2))};
  sentences.push_back(
      sun.kindles
          ? "So the lens can set fire to what stands at the focus or near it, lamp and cables too. Cover the "
            "lens "
            "by day, in store and in transport, whenever the sun can reach it, and keep what burns away from "
            "it."
          : "This lens stays under that figure. Cover it by day all the same: thin, dark or dry things catch "
            "fire from less.");
  return sentences;
}

void write_sun(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
               const LengthWords& lengths) {
  pages.section("The sun at the focus", 40);
  for (const std::string& sentence : sun_sentences(plan, light, lengths)) pages.paragraph(sentence);
  std::vector<DocumentPages::Cells> rows;
  for (const SunSpot& spot : light.sun.spots)
    rows.push_back({lengths.plain(spot.diameter_mm), decimals(spot.watts, 1), decimals(spot.kw_m2, 1)});
  if (rows.empty()) return;
  pages.table({{fmt::format("ball about the focus: diameter, {}", lengths.unit()), 0.4, true},
               {"sunlight on it, W", 0.3, true},
               {"kW/m2 over its round", 0.3, true}},
              rows);
}

}  // namespace prismwright
