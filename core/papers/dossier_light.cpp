#include "core/papers/dossier_parts.h"
#include "core/papers/light_sections.h"

namespace prismwright {

void write_light(DossierDesk& desk) {
  DocumentPages& pages = desk.pages;
  pages.chapter("The light", 40);
  const LightReport* light = desk.facts.light;
  if (light == nullptr) {
    pages.paragraph(
        "The light of this lens was not worked out for this dossier: it gives no beam, no range and no colour. "
        "Ask the "
        "maker for the light report before the lens is shown as a light.");
    return;
  }
  pages.paragraph(
      "The figures below are reckoned from the prisms and the brass as drawn, with the lamp named here. "
      "Another lamp makes "
      "another light.");
  const LensPlan& plan = desk.facts.plan;
  write_lamp(pages, plan, *light, desk.lengths);
  write_beam(pages, *light, desk.lengths);
  write_rhythm(pages, plan, *light);
  write_ranges(pages, plan, *light);
  write_colours(pages, plan, *light, desk.lengths);
  if (light->warnings.empty()) return;
  pages.section("What the rules find at fault", 12);
  std::vector<std::string> points = light->warnings;
  for (std::string& point : points)
    if (!point.ends_with('.')) point += '.';
  pages.points(points);
}

}  // namespace prismwright
