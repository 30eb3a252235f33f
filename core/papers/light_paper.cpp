#include "core/papers/light_paper.h"

#include <fmt/format.h>

#include "core/papers/document_pages.h"
#include "core/papers/light_sections.h"
#include "core/papers/proof_section.h"

namespace prismwright {

namespace {

constexpr const char* kSubject = "Light report";

void write_warnings(DocumentPages& pages, const LensPlan& plan, const LightReport& light) {
  std::vector<std::string> words = light.warnings;
  if (!light.differs.empty()) words.push_back(fmt::format("Character: {}", character_words(plan, light)));
  for (std::string& sentence : words)
    if (!sentence.empty() && sentence.back() != '.') sentence += '.';
  pages.section("What is at fault", 12);
  if (words.empty()) {
    pages.paragraph("The rules that were checked find nothing at fault.");
  } else {
    pages.points(words);
  }
}

}  // namespace

Drawing light_paper(const LensPlan& plan, const Proof& proof, const LightReport& light,
                    const HouseWords& words) {
  const LengthWords lengths{words.inches};
  DocumentPages pages(document_paper(words));
  pages.title(words.title.empty() ? "A lighthouse lens" : words.title, kSubject);
  pages.paragraph(
      "The light of the lens as drawn, reckoned from its prisms, its brass and its lamp. Nothing here was "
      "measured on "
      "the finished lens. Intensities are of the lens alone where nothing else is said.");
  write_warnings(pages, plan, light);
  pages.chapter("Lamp and beam", 60);
  write_lamp(pages, plan, light, lengths);
  write_beam(pages, light, lengths);
  write_rhythm(pages, plan, light);
  write_ranges(pages, plan, light);
  write_colours(pages, plan, light, lengths);
  write_sun(pages, plan, light, lengths);
  write_budget(pages, light);
  pages.chapter("Proof of the section", 60);
  write_proof(pages, plan, proof, lengths);
  return pages.finished(kSubject, words);
}

}  // namespace prismwright
