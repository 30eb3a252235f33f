#include <fmt/format.h>

#include <cmath>

#include "core/papers/dossier_parts.h"
#include "core/papers/light_sections.h"

namespace prismwright {

void write_care(DossierDesk& desk) {
  const LensValues& values = desk.facts.plan.values;
  DocumentPages& pages = desk.pages;
  pages.chapter("Care and cleaning of acrylic", 50);
  pages.paragraph(
      "Acrylic is softer and lighter than glass, and other things harm it. What follows is common practice "
      "where no source is named; the resin maker's sheet wins over it.");
  if (values.material.name != "acrylic")
    pages.paragraph(
        fmt::format("This lens is reckoned in {}: what follows holds for prisms that are cast in acrylic.",
                    values.material.name));
  pages.section("Cleaning", 30);
  pages.points(
      {"Rinse first, with clean water, or blow dust off: grit that is rubbed scratches. Never wipe dry.",
       "Wash with lukewarm water and a little mild soap, with soft cotton and no pressure. Rinse, and dab dry "
       "with clean "
       "soft cotton.",
       "No solvents: no acetone, petrol, thinner or spirit. No window cleaner with ammonia or alcohol. They "
       "craze acrylic, "
       "at times days later.",
       "No scouring: no powder, no pads, no paper towels, no blades.",
       "Soak off salt and bird lime with a wet cloth; do not scrape.",
       "Clean in the shade and cool. Brass polish must not touch the prisms: its ammonia and its grit harm "
       "them. Mask them, or "
       "leave the brass its skin."});
  pages.section("Sun, heat and water", 24);
  pages.points(
      {"Ultraviolet light yellows acrylic and makes it brittle over the years. Cover the lens by day where it "
       "is not on show; "
       "choose lamps that give little ultraviolet light.",
       fmt::format("Heat softens it. These prisms were to be annealed at {} C: keep them well below that, lamp "
                   "heat and sun "
                   "included. They were drawn with room in the brass for a range of {} K.",
                   shortest(values.works.anneal_c), shortest(values.frame.heat_range_k)),
       fmt::format("Acrylic takes up water and grows: {} % in length from its driest to its wettest state was "
                   "reckoned with. "
                   "Do not fill the gaps at the ends of the prisms with anything that sets hard.",
                   shortest(values.frame.moisture_percent))});
  pages.section("Scratches, crazing and cracks", 24);
  pages.points(
      {"A fine scratch may be polished: wet abrasive paper, finer and finer, then a polish made for plastics, "
       "by hand and cool. "
       "Work no more than the scratch: the shape of an optical face is what sends its light where it should "
       "go.",
       "Fine silvery lines (crazing), cracks, or a prism that has come loose: note the mark, do not light the "
       "lamp, and order a "
       "spare or ask the maker.",
       "Look the lens over once a year, prism by prism: scratches, crazing, glazing compound, screws; and "
       "write down the day, "
       "what was seen and what was done."});
}

void write_handling(DossierDesk& desk) {
  const DossierFacts& facts = desk.facts;
  DocumentPages& pages = desk.pages;
  pages.chapter("Handling, lifting and the sun", 50);
  // As printed, so that the sum is that of the parts.
  const double glass = std::round(10 * facts.glass_kg) / 10;
  const double brass = std::round(10 * facts.brass_kg) / 10;
  const bool weighed = facts.glass_kg > 0 && facts.brass_kg > 0;
  pages.points(
      {weighed
           ? fmt::format(
                 "Mass. Prisms {} kg and brass {} kg, {} kg in all, reckoned from the solids and not weighed; "
                 "glazing compound and base are not in it.",
                 decimals(glass, 1), decimals(brass, 1), decimals(glass + brass, 1))
           : "Mass. The mass of the whole lens was not reckoned: weigh it before it is lifted.",
       "Lifting. Take hold of the brass and never of a prism. Slings go round the frame, spread so that they "
       "touch no prism. A "
       "competent person chooses the gear.",
       "Hands. Clean cotton gloves on optical faces; rings and watches off. Carry a panel upright, by its "
       "ribs.",
       "Turning. A lens that turns draws in fingers, sleeves and cloths: stop the drive and lock it before "
       "anyone reaches in.",
       "Light. Never look into the lit lens from near by.",
       "Laser, where one is used to check a prism. " + std::string(kLaserCaution),
       "Fire. Acrylic burns. Keep flames, hot work and hot lamps away from it."});
  pages.section("The sun at the focus", 30);
  if (facts.light == nullptr) {
    pages.paragraph(
        fmt::format("A lens gathers the sun as it gathers its lamp's light: what stands at the focus can take "
                    "fire. Wood does in time from "
                    "{} kW/m2 (Babrauskas 2001). How much this lens gathers was not worked out, so take it to "
                    "be more. Cover the lens by "
                    "day, in store and in transport, whenever the sun can reach it.",
                    shortest(kWoodKindles_kw_m2)));
    return;
  }
  pages.points(sun_sentences(facts.plan, *facts.light, desk.lengths));
}

void write_authority(DossierDesk& desk) {
  DocumentPages& pages = desk.pages;
  pages.chapter("What authority and licensed practice decide", 50);
  pages.paragraph("None of these is settled by this dossier, nor by the program that made it.");
  pages.points(
      {"Whether the lens may be shown as a light at all, with which character, colour and range, and how it is "
       "published: the "
       "authority for aids to navigation. A light that nobody approved can lead ships astray.",
       "The lamp's supply and wiring: a licensed electrician, under local code.",
       "Lifting gear, fixings, floors and stairs that bear the lens: a competent person or engineer, under "
       "local code.",
       "Work in a protected building, or in place of an historic lens: the body that protects it.",
       "Drive and bearing. An old mercury float is poisonous: only those licensed for it may open or move it.",
       "How much acrylic may stand in the room, and how fire is fought there: the fire authority.",
       "Lasers on the bench: their class and local rules."});
}

}  // namespace prismwright
