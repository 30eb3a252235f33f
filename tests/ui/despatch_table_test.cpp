#include "ui/models/despatch_table.h"

#include <gtest/gtest.h>

#include "core/lens/quantities.h"
#include "tests/support/planned_lens.h"
#include "ui/models/despatch_report.h"

namespace prismwright {
namespace {

DespatchPiece piece(DespatchGroup group, const char* name, const char* words, const char* withheld = "") {
  DespatchPiece made;
  made.group = group;
  made.name = name;
  made.words = words;
  made.withheld = withheld;
  return made;
}

/// Two prisms that lie in the last pack, one of which has changed since; one kept back; a drawing that was
/// never packed.
DespatchListing four_pieces() {
  DespatchListing listing;
  listing.pieces = {
      piece(DespatchGroup::prisms, "P01-U01", "Prism P01-U01"),
      piece(DespatchGroup::prisms, "P01-U02", "Prism P01-U02"),
      piece(DespatchGroup::prisms, "P01-C", "Prism P01-C", "P01-C overlaps P01-rib-left by 3 mm3."),
      piece(DespatchGroup::drawings, "panel-chart", "Panel chart")};
  listing.states = {DespatchState::fresh, DespatchState::stale, DespatchState::withheld,
                    DespatchState::unpacked};
  LastPack last;
  last.folder = "/packs/book-2026-03-01";
  last.manifest.date = "2026-03-01";
  last.manifest.revision = "B";
  last.manifest.pieces = {{listing.pieces[0], "A", "2026-02-01", {{"prisms/P01-U01.step", 48000, ""}}},
                          {listing.pieces[1], "B", "2026-03-01", {{"prisms/P01-U02.step", 52000, ""}}}};
  listing.last = last;
  listing.values_changed = {"section.edge_mm 4 -> 5 mm"};
  listing.revision = "C";
  return listing;
}

QString cell(const CellSheet& sheet, std::size_t row, DespatchColumn column) {
  return sheet.rows[row].cells[static_cast<std::size_t>(column)].shown;
}

TEST(DespatchTable, SaysOfEveryPieceItsStateWithAMarkAndWhenItWasLastMade) {
  const CellSheet sheet = despatch_sheet(four_pieces());
  ASSERT_EQ(sheet.rows.size(), 4u);
  EXPECT_EQ(sheet.heads.size(), static_cast<std::size_t>(DespatchColumn::kCount));
  EXPECT_EQ(cell(sheet, 0, DespatchColumn::state), "✓ fresh");
  EXPECT_EQ(cell(sheet, 1, DespatchColumn::state), "≠ stale");
  EXPECT_EQ(cell(sheet, 2, DespatchColumn::state), "✕ withheld");
  EXPECT_EQ(cell(sheet, 3, DespatchColumn::state), "○ not packed yet");
  EXPECT_EQ(cell(sheet, 0, DespatchColumn::revision), "A")
      << "kept as it was made for the pack before the last";
  EXPECT_EQ(cell(sheet, 0, DespatchColumn::date), "2026-02-01");
  EXPECT_EQ(sheet.rows[3].cells[static_cast<std::size_t>(DespatchColumn::date)].saved, "");
  EXPECT_TRUE(sheet.rows[2].amiss);
  EXPECT_FALSE(sheet.rows[1].amiss);
  EXPECT_EQ(sheet.rows[1].marks, QStringList{"P01-U02"});
}

TEST(DespatchTable, SaysWhyAPieceIsNotFresh) {
  DespatchListing listing = four_pieces();
  EXPECT_EQ(why_words(listing, 0), "");
  EXPECT_TRUE(why_words(listing, 1).contains("4 -> 5 mm")) << qPrintable(why_words(listing, 1));
  EXPECT_FALSE(why_words(listing, 1).contains("section.edge_mm"));
  EXPECT_EQ(why_words(listing, 2), "P01-C overlaps P01-rib-left by 3 mm3.");
  EXPECT_TRUE(why_words(listing, 3).contains("last pack"));
  listing.values_changed.clear();
  EXPECT_TRUE(why_words(listing, 1).contains("Records")) << qPrintable(why_words(listing, 1));
  listing.last.reset();
  EXPECT_EQ(why_words(listing, 3), "") << "nothing was packed yet: nothing to explain";
}

TEST(DespatchTable, NamesAValueByTheLabelOfItsField) {
  EXPECT_EQ(change_text("section.edge_mm 4 -> 5 mm"),
            QString::fromStdString(find_quantity("section.edge_mm")->label) + " 4 -> 5 mm");
  EXPECT_EQ(change_text("Prism P01-C was made anew"), "Prism P01-C was made anew");
}

TEST(DespatchTable, SaysOfManyChangesTheFirstAndHowManyMore) {
  DespatchListing listing = four_pieces();
  listing.values_changed = {"one", "two", "three", "four", "five"};
  const QString why = why_words(listing, 1);
  EXPECT_TRUE(why.contains("three") && !why.contains("four") && why.contains("2 more")) << qPrintable(why);
}

TEST(DespatchTable, CountsWhatWantsALookFirst) {
  const DespatchListing listing = four_pieces();
  EXPECT_EQ(counts_words(count_states(listing)), "1 withheld, 1 stale, 1 not packed yet, 1 fresh");
  EXPECT_EQ(worst_state(count_states(listing)), DespatchState::withheld);
  EXPECT_EQ(counts_words(count_states(listing, DespatchGroup::drawings)), "1 not packed yet");
  EXPECT_EQ(worst_state(count_states(listing, DespatchGroup::drawings)), DespatchState::unpacked);
  EXPECT_TRUE(count_states(listing, DespatchGroup::light).empty());
}

TEST(DespatchTable, SortsTheStateFurthestFromFreshFirst) {
  const CellSheet sheet = despatch_sheet(four_pieces());
  const auto rank = [&](std::size_t row) {
    return sheet.rows[row].cells[static_cast<std::size_t>(DespatchColumn::state)].sorts.toInt();
  };
  EXPECT_LT(rank(2), rank(1));
  EXPECT_LT(rank(1), rank(3));
  EXPECT_LT(rank(3), rank(0));
}

TEST(DespatchTable, TellsOfTheFilesThatAreNotDrawn) {
  const DespatchListing listing = four_pieces();
  const QString packed = files_words(listing, listing.pieces[0]);
  EXPECT_TRUE(packed.contains("STEP")) << qPrintable(packed);
  EXPECT_TRUE(packed.contains("prisms/P01-U01.step, 48.0 kB")) << qPrintable(packed);
  EXPECT_TRUE(packed.contains("revision A of 2026-02-01")) << qPrintable(packed);
  EXPECT_TRUE(files_words(listing, listing.pieces[2]).contains("overlaps"));
}

TEST(DespatchTable, EveryGroupSaysWhatItsFilesAre) {
  for (int i = 0; i < kDespatchGroups; ++i) {
    const auto group = static_cast<DespatchGroup>(i);
    EXPECT_FALSE(group_words(group).isEmpty()) << i;
    EXPECT_TRUE(group_meaning(group).endsWith('.')) << i;
  }
}

TEST(DespatchTable, FindsThePrismsThatAClashNames) {
  const LensPlan plan = plan_of(starting_values("6", Work::belt, 2));
  EXPECT_EQ(marks_in(piece(DespatchGroup::panels, "P01", "Panel P01",
                           "P02-U01 and P01-rib-left overlap, see (P02-U02)."),
                     plan),
            (QStringList{"P02-U01", "P02-U02"}));
  EXPECT_EQ(marks_in(piece(DespatchGroup::prisms, "P01-U01", "Prism P01-U01", "It overlaps a rib."), plan),
            QStringList{"P01-U01"});
}

TEST(DespatchReport, SaysWhatWasMadeKeptChangedAndWithheld) {
  PackEnd end;
  PackReport report;
  report.folder = "/packs/book-2026-04-01";
  report.manifest = four_pieces().last->manifest;
  report.made_anew = 12;
  report.kept = 236;
  report.changes = {"section.edge_mm 4 -> 5 mm"};
  report.withheld = {"P01-C overlaps <P01-rib-left>."};
  EXPECT_EQ(pack_words(report), "12 made anew, 236 kept from the last pack; 1 withheld.");
  end.report = std::make_shared<const PackReport>(report);
  const QString text = last_pack_text(nullptr, end);
  EXPECT_TRUE(text.contains("2 pieces in 2 files, 100.0 kB")) << qPrintable(text);
  EXPECT_TRUE(text.contains("<li>" + change_text("section.edge_mm 4 -> 5 mm").toHtmlEscaped() + "</li>"));
  EXPECT_TRUE(text.contains("&lt;P01-rib-left&gt;")) << "words of a book are no marks of the page";
}

TEST(DespatchReport, SaysBeforeAnythingIsWrittenHowThingsStandToTheLastPack) {
  DespatchListing listing = four_pieces();
  EXPECT_TRUE(last_pack_text(&listing, {}).contains("4 -&gt; 5 mm"));
  EXPECT_TRUE(last_pack_text(&listing, {}).contains("1 withheld, 1 stale"));
  listing.last.reset();
  EXPECT_TRUE(last_pack_text(&listing, {}).contains("no pack of this book"));
}

}  // namespace
}  // namespace prismwright
