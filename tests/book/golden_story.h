#pragma once

#include <string>

#include "core/book/schema.h"
#include "tests/book/book_fixture.h"

namespace prismwright {

/// Values of the works, kept from version 7 on: blanks, choices off their defaults, a number that no decimal
/// shows exactly.
inline WorksSettings golden_works() {
  WorksSettings works;
  works.resin = "clear syrup";
  works.resin_batch = "lot 7 µ";
  works.shrink_length_percent = 0.4 + 1.0 / 3.0;
  works.stock_faces = StockFaces::all;
  works.half_turn = HalfTurn::shared;
  works.mould_life = 12;
  works.vessel_max_bar = 6.5;
  works.cooling_c_per_h = 7.25;
  works.start_date = "2027-03-01";
  return works;
}

/// What every golden book tells (tests/golden/README.md). Written out in full and frozen: a later version of
/// the program must read the same story from the same files.
inline LensValues golden_start(int version = kBookVersion) {
  LensValues values;
  if (version >= 7) values.works = golden_works();
  values.brief = {"Skarv Rock",      "Harbour Office of Nordhavn", "4", 250, Work::bullseye, "Fl(2) 10s",
                  "line 1\nline 2 µ"};
  values.material = {"acrylic", 1.4918, 1.19};
  values.panels = equal_panels(8);
  SectionSettings& section = values.section;
  section.faces = Faces::true_curve;
  section.joint = Joint::along_ray;
  section.edge_mm = 4;
  section.ring_growth_mm = 5.5;
  section.land_mm = 0.5;
  section.gap_mm = 0.5;
  section.refracting_to_deg = 28.5;
  section.refracting_margins_mm = {};
  section.upper_to_deg = 70;
  section.lower_to_deg = 45;
  section.reflecting_chord_mm = 30;
  section.upper_start_r_mm.reset();
  section.upper_start_z_mm.reset();
  values.frame.rib_mm = 5;
  values.frame.pocket_mm = 3;
  values.frame.setting_gap_mm = 0.5;
  values.frame.end_gap_mm = 0.5;
  values.frame.rib_margin_mm = 8;
  values.frame.ring_mm = 8;
  return values;
}

/// After "edge": a number that no decimal shows exactly.
inline LensValues golden_edge(int version = kBookVersion) {
  return with_edge(4.1 + 1.0 / 3.0, golden_start(version));
}

/// After "panels": six panels, unequal, one blind; arcs; the index of the batch blank again.
inline LensValues golden_panels(int version = kBookVersion) {
  LensValues values = golden_edge(version);
  values.panels = {{72, 1.5, false},  {48, 0, false}, {60, 0, true},
                   {72, -1.5, false}, {48, 0, false}, {60, 0, false}};
  values.section.faces = Faces::arc;
  values.material.index.reset();
  return values;
}

/// After "margins", which is taken back again.
inline LensValues golden_margins(int version = kBookVersion) {
  LensValues values = golden_panels(version);
  values.section.refracting_margins_mm = {38.2, 57.1 + 1e-13, 71};
  return values;
}

/// Readings of the bench: one prism read, shimmed and read again, another read once.
inline std::vector<BenchReading> golden_readings() {
  return {{0, "", "P01-U02", 17.25, -3.1 - 1.0 / 3.0, 5000, "E. Marsh", "before\nthe shim"},
          {0, "", "P01-C", -0.5, 0, 5000, "", ""},
          {0, "", "P01-U02", 1.5, 0.25, 4800.5, "E. Marsh", "shim of 0.3 µm \"paper\""}};
}

/// Two loads of the vessel, the second with no word beside its resin.
inline std::vector<VesselLoad> golden_loads() {
  return {{0, "", "clear syrup", "lot 7 µ", "straw, 1 drop", 812.5 + 1.0 / 3.0, 4.0625, 0.25, "E. Marsh",
           "two\nmoulds"},
          {0, "", "clear syrup", "", "", 0, 0, 0, "", ""}};
}

/// The first bytes of a JPEG, then zero bytes, a quote and every other byte there is.
inline std::string golden_picture() {
  std::string bytes("\xFF\xD8\xFF\xE0\0\0\0\"'", 9);
  for (int byte = 0; byte < 256; ++byte) bytes += static_cast<char>(byte);
  return bytes + std::string(3, '\0');
}

/// What was written down once the first casting was out of its mould.
inline WorksLog golden_log() {
  WorksLog log;
  log.measurements = {{0, "", "P01-C", 2, "length", 118.1 + 1.0 / 3.0, "E. Marsh", "at\nnoon"},
                      {0, "", "P01-C", 2, "laser", -0.25, "", ""}};
  log.decisions = {{0, "", "P01-C", 2, DecisionKind::shim, "E. Marsh", "0.3 mm \"short\""}};
  log.shrink = {
      {0, "", "U02", ShrinkDirection::height, 40.25, 40.1 - 1.0 / 3.0, "clear syrup", "lot 7 µ", "", ""}};
  log.photographs = {
      {0, "", "P01-C", 2, "disc µ.jpg", "image/jpeg", golden_picture(), "E. Marsh", "a\nscratch"}};
  log.spendings = {{0, "", "cast", 2.5, 31.1 + 1.0 / 3.0, "E. Marsh", "resin"},
                   {0, "", "cast", -0.5, 0, "", "half an hour too many"}};
  return log;
}

/// The line of the ledger that went in with the loads: serial 2, cast in the first of them.
inline LedgerEntry golden_casting() {
  LedgerEntry casting = line("P01-C", Stage::mastered, Stage::cast, "mould of an older lens");
  casting.load = Lensbook::kNewLoad;
  return casting;
}

/// Writes the story as a new book: a variant kept, three edits, the last taken back, four lines of the ledger,
/// three readings of the bench, and a fifth line with loads and all that was written down of them.
inline void write_golden_book(const std::string& path) {
  Lensbook book = well(Lensbook::create(path, golden_start()));
  well(book.keep_variant("as first drawn"));  // kept from version 3 on
  well(book.edit(golden_edge(), "edge"));
  well(book.edit(golden_panels(), "panels"));
  well(book.edit(golden_margins(), "margins"));
  well(book.undo());
  const std::vector<LedgerEntry> first = {line("P01-C", Stage::drawn, Stage::mastered),
                                          line("P01-U02", Stage::drawn, Stage::cast, "first trial\nin resin")};
  well(book.record(first));
  LedgerEntry scrapped = line("P01-U02", Stage::cast, Stage::scrapped, "bubble \"as a pea\"");
  scrapped.back_to = Stage::mastered;  // kept from version 2 on
  well(book.record({&scrapped, 1}));
  const LedgerEntry again = line("P01-U02", Stage::scrapped, Stage::mastered);
  well(book.record({&again, 1}));
  well(book.record_readings(golden_readings()));  // kept from version 5 on
  const LedgerEntry casting = golden_casting();   // and what follows from version 7 on
  WorksLog loads;
  loads.loads = golden_loads();
  well(book.record({&casting, 1}, loads));
  well(book.record({}, golden_log()));
}

}  // namespace prismwright
