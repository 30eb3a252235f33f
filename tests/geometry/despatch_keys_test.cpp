#include "geometry/despatch/despatch_keys.h"

#include <gmock/gmock.h>

#include "geometry/despatch/despatch_desk.h"
#include "tests/support/empty_folder.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::Not;

/// Pieces that are soon made from solids that stand: their bytes are compared under both values.
bool is_quick(const DespatchPiece& piece) {
  switch (piece.group) {
    case DespatchGroup::prisms:
      return piece.name == "P01-C" || piece.name == "P02-U01";
    case DespatchGroup::drawings:
      return piece.name == "section" || piece.name == "panel-chart" || piece.name == "frame-P01-rib-left";
    case DespatchGroup::lists:
    case DespatchGroup::cutting:
    case DespatchGroup::record:
    case DespatchGroup::estimate:
      return true;
    default:
      return false;
  }
}

/// The pieces of one lens with the bytes of the quick ones, by group and name.
struct MadePieces {
  std::map<std::string, std::string> keys;
  std::map<std::string, std::map<std::string, std::string>> bytes;
};

/// No clearances are measured: their list and verdicts have tests of their own.
MadePieces made_pieces(const LensValues& values, bool with_bytes,
                       PaperChoice choice = papers_on("2026-03-31")) {
  DespatchSource source = source_of(values);
  source.clearances = std::make_shared<const std::vector<Clearance>>();
  DespatchDesk desk(source, choice);
  MadePieces made;
  const auto pieces = desk.pieces();
  EXPECT_TRUE(pieces.ok()) << (pieces.ok() ? "" : pieces.problem().text);
  if (!pieces) return made;
  for (const DespatchPiece& piece : *pieces) {
    const std::string name = std::string(name_of(piece.group)) + "/" + piece.name;
    EXPECT_FALSE(made.keys.contains(name)) << name << " stands twice";
    made.keys[name] = piece.key;
    if (!with_bytes || !is_quick(piece) || !piece.withheld.empty()) continue;
    const EmptyFolder folder;
    const auto paths = desk.write(piece, folder.path());
    EXPECT_TRUE(paths.ok()) << name << ": " << (paths.ok() ? "" : paths.problem().text);
    made.bytes[name] = files_below(folder.path());
  }
  return made;
}

LensValues changed(const std::string& key, const std::string& text) {
  const std::vector<Assignment> change = {{key, text}};
  const auto values = with_assignments(few_prisms(), change);
  EXPECT_TRUE(values.ok()) << key << ": " << (values.ok() ? "" : values.problem().text);
  return values.ok() ? *values : few_prisms();
}

std::vector<std::string> differing(const MadePieces& a, const MadePieces& b) {
  std::vector<std::string> names;
  for (const auto& [name, key] : a.keys)
    if (!b.keys.contains(name) || b.keys.at(name) != key) names.push_back(name);
  return names;
}

const MadePieces& as_it_was() {
  static const MadePieces made = made_pieces(few_prisms(), true);
  return made;
}

struct Change {
  const char* key;
  const char* text;
  std::vector<std::string> anew;  ///< some that must be made anew
  std::vector<std::string> kept;  ///< some that must not
};

class KeyOfEachPiece : public testing::TestWithParam<Change> {};

TEST_P(KeyOfEachPiece, ChangesWheneverItsBytesDo) {
  const MadePieces after = made_pieces(changed(GetParam().key, GetParam().text), true);
  for (const auto& [name, files] : as_it_was().bytes) {
    if (!after.bytes.contains(name) || after.bytes.at(name) == files) continue;
    EXPECT_NE(after.keys.at(name), as_it_was().keys.at(name)) << name << " has other bytes under the same key";
  }
  ASSERT_GE(as_it_was().bytes.size(), 20u);
  const auto anew = differing(as_it_was(), after);
  for (const std::string& name : GetParam().anew) EXPECT_THAT(anew, Contains(name));
  for (const std::string& name : GetParam().kept) EXPECT_THAT(anew, Not(Contains(name)));
}

INSTANTIATE_TEST_SUITE_P(
    Quantities, KeyOfEachPiece,
    testing::Values(
        Change{"section.edge_mm", "4.5", {"prisms/P01-C", "masters/C", "lens/lens", "drawings/section"}, {}},
        Change{
            "section.lower_to_deg", "13", {"lists/zones", "drawings/section", "light/beam"}, {"prisms/P01-C"}},
        Change{"material.density_g_cm3", "1.2", {"lists/prisms", "drawings/prism-C"}, {"prisms/P01-C"}},
        Change{"brief.title",
               "Another",
               {"drawings/section", "cutting/sheets", "masters/C", "dossier/owners-dossier"},
               {"prisms/P01-C", "light/beam", "lists/zones", "pictures/plan"}},
        Change{"frame.sheet_width_mm",
               "900",
               {"cutting/sheets", "lists/sheets", "drawings/frame-sheets"},
               {"frame/frame", "drawings/frame-P01-rib-left"}},
        Change{"works.stock_mm", "0.4", {"masters/C"}, {"prisms/P01-C", "drawings/section", "light/beam"}},
        Change{"works.resin", "Clear cast", {"masters/C"}, {"prisms/P01-C"}},
        Change{"works.hour_cost",
               "50",
               {"estimate/estimate"},
               {"masters/C", "drawings/section", "lists/make-list"}},
        Change{"lamp.flux_lm",
               "2500",
               {"light/light-report", "light/beam", "dossier/owners-dossier"},
               {"prisms/P01-C", "lens/lens"}}),
    [](const auto& change) {
      std::string name = change.param.key;
      std::ranges::replace(name, '.', '_');
      return name;
    });

TEST(Keys, OfPapersDoNotHoldDateAndRevision) {
  PaperChoice later = papers_on("2027-08-09");
  later.revision = "Q";
  EXPECT_THAT(differing(as_it_was(), made_pieces(few_prisms(), false, later)), testing::IsEmpty());
}

TEST(Keys, OfPapersHoldPaperAndUnits) {
  PaperChoice inches = papers_on("2026-03-31");
  inches.inches = true;
  const auto anew = differing(as_it_was(), made_pieces(few_prisms(), false, inches));
  for (const char* name : {"drawings/section", "drawings/general-arrangement", "drawings/prism-C",
                           "drawings/frame-P01-rib-left", "drawings/frame-sheets", "masters/C"})
    EXPECT_THAT(anew, Contains(name));
  EXPECT_THAT(anew, Not(Contains("prisms/P01-C")));
  EXPECT_THAT(anew, Not(Contains("lists/prisms")));
}

TEST(Keys, OfTheDossierHoldWhatWasReadAndMeasured) {
  DespatchSource source = few_prisms_made();
  const std::string mark = source.plan->prisms.front().mark;
  source.readings = {{1, "2026-02-01T10:00:00Z", mark, 1.5, -0.5, 2000, "", ""}};
  source.log.measurements = {{1, "2026-02-01T10:00:00Z", mark, 1, "length", 80.1, "", ""}};
  source.log.decisions = {
      {1, "2026-02-01T10:00:00Z", mark, 1, DecisionKind::accept, "", "within what the joint takes up"}};
  const auto key_of = [](const DespatchSource& one) {
    const auto pieces = DespatchDesk(one, papers_on("2026-03-31")).pieces();
    EXPECT_TRUE(pieces.ok()) << (pieces.ok() ? "" : pieces.problem().text);
    return std::ranges::find(*pieces, DespatchGroup::dossier, &DespatchPiece::group)->key;
  };
  const std::vector<std::function<void(DespatchSource&)>> changes = {
      [](DespatchSource& s) { s.readings.front().height_mm = 1.6; },
      [](DespatchSource& s) { s.readings.front().aside_mm = 0.5; },
      [](DespatchSource& s) { s.readings.front().board_mm = 1999; },
      [](DespatchSource& s) { s.readings.front().mark = s.plan->prisms.back().mark; },
      [](DespatchSource& s) { s.log.measurements.front().measured = 80.2; },
      [](DespatchSource& s) { s.log.decisions.front().note = "it was turned by half a degree"; }};
  std::set<std::string> keys = {key_of(source)};
  EXPECT_TRUE(keys.contains(key_of(source)));
  for (const auto& change : changes) {
    DespatchSource other = source;
    change(other);
    keys.insert(key_of(other));
  }
  EXPECT_EQ(keys.size(), changes.size() + 1);
}

TEST(Keys, HoldEveryMemberOfAPrism) {
  const PlannedPrism prism = few_prisms_made().plan->prisms.front();
  const auto key_of = [](const PlannedPrism& one) {
    PieceKey key("test", 1);
    add_placed(key, one);
    return key.text();
  };
  const std::vector<std::function<void(PlannedPrism&)>> changes = {
      [](PlannedPrism& p) { p.mark += "x"; },
      [](PlannedPrism& p) { p.axis_deg += 1; },
      [](PlannedPrism& p) { p.axis_z_mm += 1; },
      [](PlannedPrism& p) { p.axis_dip_deg += 1; },
      [](PlannedPrism& p) { p.turning = TurningAxis::panel; },
      [](PlannedPrism& p) { p.trim.set_back_mm += 1; },
      [](PlannedPrism& p) { p.trim.half = Half::upper; },
      [](PlannedPrism& p) { p.trim.half_gap_mm += 1; },
      [](PlannedPrism& p) { p.trim.flat_inner_mm = 0; },
      [](PlannedPrism& p) { p.trim.clockwise_side_deg -= 1; },
      [](PlannedPrism& p) { p.trim.anticlockwise_side_deg += 1; },
      [](PlannedPrism& p) { p.profile.faces.front().points.front().z += 1e-12; },
      [](PlannedPrism& p) { p.profile.faces.front().role = FaceRole::land; },
      [](PlannedPrism& p) { p.profile.faces.back().radius_mm += 1; }};
  std::set<std::string> keys = {key_of(prism)};
  for (const auto& change : changes) {
    PlannedPrism other = prism;
    change(other);
    keys.insert(key_of(other));
  }
  EXPECT_EQ(keys.size(), changes.size() + 1);
}

TEST(Keys, CannotMoveWordsFromOneEntryToTheNext) {
  PieceKey ab_c("test", 1);
  ab_c << "ab"
       << "c";
  PieceKey a_bc("test", 1);
  a_bc << "a"
       << "bc";
  EXPECT_NE(ab_c.text(), a_bc.text());
  PieceKey raised("test", 2);
  raised << "ab"
         << "c";
  EXPECT_NE(ab_c.text(), raised.text());
}

}  // namespace
}  // namespace prismwright
