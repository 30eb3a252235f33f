#include <fmt/format.h>

#include "core/papers/dossier_parts.h"
#include "core/papers/lens_facts.h"
#include "core/papers/light_sections.h"

namespace prismwright {

namespace {

constexpr double kPicture_mm = 118;

std::string mass_words(double kg) { return kg > 0 ? decimals(kg, 1) + " kg" : "not reckoned"; }

std::string clearance_words(const DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  if (!facts.clearances_known) return "not worked out";
  if (!facts.tightest_mm) return "nothing near";
  return fmt::format("{} {}{}", desk.lengths.plain(*facts.tightest_mm), desk.lengths.unit(),
                     facts.tightest_between.empty() ? "" : ", " + facts.tightest_between);
}

void add_light(const DossierDesk& desk, std::vector<DocumentPages::Fact>& facts) {
  const LightReport* light = desk.facts.light;
  facts.push_back({"Character as drawn",
                   light ? (light->character.empty() ? "none" : light->character) : "not worked out"});
  facts.push_back({"Intensity in service", light ? candela_words(light->service_cd) : "not worked out"});
  facts.push_back(
      {"Nominal range", light ? decimals(light->nominal_range_nmi, 1) + " nautical miles" : "not worked out"});
}

}  // namespace

void write_front(DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  DocumentPages& pages = desk.pages;
  pages.title(desk.words.title.empty() ? "A lighthouse lens" : desk.words.title,
              desk.words.client.empty() ? "Owner's dossier" : "Owner's dossier, for " + desk.words.client);
  pages.picture(facts.picture, kPicture_mm);
  pages.paragraph(
      fmt::format("This is {} {} Every prism is made by its own mark, and can be made again from it.",
                  what_it_is(facts.plan, desk.words), what_it_does(facts.plan)));
  std::vector<DocumentPages::Fact> figures =
      lens_facts(facts.plan, static_cast<int>(facts.masters.size()), desk.lengths);
  add_light(desk, figures);
  figures.push_back({"Mass of the prisms", mass_words(facts.glass_kg)});
  figures.push_back({"Mass of the brass", mass_words(facts.brass_kg)});
  figures.push_back({"Tightest clearance", clearance_words(desk)});
  figures.push_back(
      {"Glazed", fmt::format("{} of {} prisms", desk.state.at(Stage::glazed), desk.state.counts.total)});
  pages.facts(figures);
  pages.note(
      "In this dossier: how it was proved, and what was not; the light; what it is made of; care and cleaning; "
      "handling, "
      "lifting and the sun; what authority and licensed practice decide; every prism with its mark, and how to "
      "order a "
      "spare.");
}

}  // namespace prismwright
