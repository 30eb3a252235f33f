#include <fmt/format.h>

#include "core/papers/dossier_parts.h"
#include "core/papers/lens_facts.h"
#include "core/works/spares.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

std::string number_or_blank(long long number) { return number == 0 ? "" : std::to_string(number); }

void write_how_to_order(DossierDesk& desk) {
  desk.pages.section("How to order a spare", 24);
  desk.pages.points(
      {"Give the name of this lens, the mark of the prism, and the number of its casting where one is listed. "
       "That is all the "
       "maker needs: the mark leads to the master, and the master to the drawing.",
       "A mark reads P, the number of the panel, and the zone: C is the centre, R a refracting ring (a above, "
       "b below), U an "
       "upper and L a lower reflecting prism, counted outwards from the focal plane.",
       "Prisms of one kind come from one master and take each other's places. Kinds that are mirror images of "
       "each other do "
       "not, however alike they look.",
       "Set a spare as the old one stood: with shims and glazing compound, and with its beam checked on the "
       "bench."});
}

void write_spares(DossierDesk& desk) {
  std::vector<Cells> rows;
  for (const std::string& spare : spare_marks(desk.facts.ledger)) {
    const Stage stage = desk.state.now.stage_of(spare);
    if (stage < Stage::cast || stage == Stage::scrapped || stage == Stage::glazed) continue;
    const Master* master = master_of_spare(desk.facts.masters, spare);
    rows.push_back({spare, master ? master->name : "no kind of this lens",
                    number_or_blank(desk.state.serial_of(spare)),
                    number_or_blank(desk.state.load_of_mark(spare)), std::string(name_of(stage))});
  }
  desk.pages.section("Spares that are kept", 16);
  if (rows.empty()) {
    desk.pages.paragraph("No spare casting is kept by the works record.");
    return;
  }
  desk.pages.table(
      {{"spare", 0.22}, {"fits kind", 0.28}, {"casting", 0.15, true}, {"load", 0.12, true}, {"stage", 0.23}},
      rows);
}

/// Which other kind it is like, and may not be taken for.
std::string likeness(const Master& master) {
  if (!master.mirror_of.empty()) return "mirror image of " + master.mirror_of;
  if (!master.turned_twin_of.empty()) return "turned end for end, " + master.turned_twin_of;
  return {};
}

void write_kinds(DossierDesk& desk) {
  std::vector<Cells> rows;
  for (const Master& master : desk.facts.masters)
    rows.push_back({master.name, std::to_string(master.uses.size()), likeness(master)});
  if (rows.empty()) return;
  desk.pages.section("Kinds of prism", 24);
  desk.pages.twin_table({{"kind", 0.24}, {"prisms", 0.18, true}, {"like another", 0.58}}, rows);
}

void write_list(DossierDesk& desk) {
  std::vector<Cells> rows;
  for (const PlannedPrism& prism : desk.facts.plan.prisms) {
    const Master* master = master_of_mark(desk.facts.masters, prism.mark);
    rows.push_back({prism.mark, std::string(name_of(prism.kind)), master ? master->name : "",
                    number_or_blank(desk.state.serial_of(prism.mark)),
                    number_or_blank(desk.state.load_of_mark(prism.mark)),
                    std::string(name_of(desk.state.now.stage_of(prism.mark)))});
  }
  desk.pages.section("Every prism", 30);
  desk.pages.paragraph(
      "Its mark, the zone it is of, its kind (the master it is cast from), the number of its casting and its "
      "vessel load where "
      "they are recorded, and how far it has come.");
  desk.pages.twin_table({{"mark", 0.17},
                         {"zone", 0.28},
                         {"kind", 0.17},
                         {"no.", 0.1, true},
                         {"load", 0.105, true},
                         {"stage", 0.175}},
                        rows);
}

}  // namespace

void write_prisms(DossierDesk& desk) {
  desk.pages.chapter("Prisms and spares", 60);
  write_how_to_order(desk);
  write_spares(desk);
  write_kinds(desk);
  write_list(desk);
}

}  // namespace prismwright
