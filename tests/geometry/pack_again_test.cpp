#include <gmock/gmock.h>

#include "geometry/despatch/pack_manifest.h"
#include "tests/support/empty_folder.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

// What a second pack knows of the first.

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

Outcome<PackReport> pack(const DespatchSource& source, const std::string& folder, DespatchGroup group,
                         const PaperChoice& choice = papers_on("2026-03-31")) {
  DespatchDesk desk(source, choice);
  return write_pack(desk, {folder, {group}});
}

TEST(PackAgain, TellsTheNotesOfKeptPiecesAgain) {
  // Sheets of metal so small that the rings go on none of them.
  LensValues values = few_prisms();
  values.frame.sheet_width_mm = values.frame.sheet_height_mm = 200;
  DespatchSource source = few_prisms_made();
  source.plan = std::make_shared<const LensPlan>(plan_of(values));
  const EmptyFolder folder;
  const auto first = pack(source, folder.path(), DespatchGroup::cutting);
  ASSERT_TRUE(first.ok()) << first.problem().text;
  ASSERT_THAT(first->notes, Not(IsEmpty()));
  EXPECT_EQ(piece_of(first->manifest, DespatchGroup::cutting, "sheets")->notes, first->notes);
  // From the first pack, then from one that was itself kept.
  for (int i = 0; i < 2; ++i) {
    const auto again = pack(source, folder.path(), DespatchGroup::cutting);
    ASSERT_TRUE(again.ok()) << again.problem().text;
    EXPECT_EQ(again->made_anew, 0);
    EXPECT_EQ(again->notes, first->notes);
    EXPECT_THAT(files_below(again->folder).at("index.html"), HasSubstr(first->notes.front().substr(0, 20)));
  }
}

TEST(PackAgain, OfABookWhoseFileNameIsNoUtf8GoesOnWhereTheLastOneEnded) {
  LensValues untitled = few_prisms();
  untitled.brief.title.clear();
  DespatchSource source = few_prisms_made();
  source.plan = std::make_shared<const LensPlan>(plan_of(untitled));
  source.book_name = "\xE9toile";  // as an old machine wrote it
  DespatchSource other = source;
  other.book_name = "\xE8toile";  // looks the same once it is made readable
  const EmptyFolder folder;
  const auto first = pack(source, folder.path(), DespatchGroup::record);
  ASSERT_TRUE(first.ok()) << first.problem().text;
  const auto again = pack(source, folder.path(), DespatchGroup::record);
  ASSERT_TRUE(again.ok()) << again.problem().text;
  EXPECT_EQ(again->manifest.number, 2);
  EXPECT_EQ(again->made_anew, 0);
  EXPECT_EQ(read_manifest(again->folder)->book, source.book_name);
  EXPECT_EQ(pack(other, folder.path(), DespatchGroup::record)->manifest.number, 1) << "it is another book";
  const auto files = files_below(again->folder);
  for (const char* page : {"index.html", "changes.txt", "manifest.json"}) {
    EXPECT_THAT(files.at(page), Not(HasSubstr("\xE9toile"))) << page;
    EXPECT_THAT(files.at(page), HasSubstr("\xEF\xBF\xBDtoile")) << page;
  }
}

TEST(PackAgain, FindsHowTheEstimateWasAskedFor) {
  PaperChoice choice = papers_on("2026-03-31");
  choice.estimate = {12.5, 90, 3, "Paid in \"three\" parts \xC3\xA9"};
  const EmptyFolder folder;
  ASSERT_TRUE(pack(few_prisms_made(), folder.path(), DespatchGroup::record, choice).ok());
  const auto last = last_pack(folder.path(), "low-head");
  ASSERT_TRUE(last && last->manifest.estimate);
  EXPECT_EQ(*last->manifest.estimate, choice.estimate);
}

TEST(PackAgain, ReadsAManifestThatSaysNothingOfEstimateAndNotes) {
  const PackManifest before{"b", "t", "2026-01-02", "C", 7, {}, {}, {}, {}};
  const auto read = manifest_of(manifest_text(before), "here");
  ASSERT_TRUE(read.ok()) << read.problem().text;
  EXPECT_FALSE(read->estimate);
}

TEST(PackAgain, RefusesAManifestWithAnEstimateThatCouldNotBeAskedFor) {
  PackManifest manifest{"b", "t", "2026-01-02", "C", 7, {}, {}, {}, {}};
  for (const EstimateChoice& choice :
       {EstimateChoice{-1, 60, 1, ""}, EstimateChoice{501, 60, 1, ""}, EstimateChoice{0, 0, 1, ""},
        EstimateChoice{0, 3651, 1, ""}, EstimateChoice{0, 60, -1, ""}, EstimateChoice{0, 60, 21, ""}}) {
    manifest.estimate = choice;
    EXPECT_EQ(manifest_of(manifest_text(manifest), "here").problem().code, "manifest");
  }
}

/// Asks for nothing that takes long.
bool at_once(double, std::string_view) { return false; }

TEST(DespatchDesk, KeepsLightAndPicturesWhenPapersAreWantedOtherwise) {
  DespatchDesk desk(few_prisms_made(), papers_on("2026-03-31"));
  const auto pieces = desk.pieces();
  ASSERT_TRUE(pieces.ok()) << pieces.problem().text;
  const auto of_name = [](const std::vector<DespatchPiece>& all, const std::string& name) {
    return *std::ranges::find(all, name, &DespatchPiece::name);
  };
  const DespatchPiece report = of_name(*pieces, "light-report");
  const DespatchPiece picture = of_name(*pieces, "plan");
  const EmptyFolder folder;
  ASSERT_FALSE(desk.paper(report, at_once).ok()) << "it takes long when it is first asked for";
  ASSERT_TRUE(desk.paper(report).ok());
  ASSERT_TRUE(desk.write(picture, folder.path()).ok());

  PaperChoice otherwise = papers_on("2026-04-01");
  otherwise.paper = Paper::a3;
  otherwise.inches = true;
  otherwise.estimate.margin_percent = 10;
  desk.set_choice(otherwise);
  const auto anew = desk.pieces();
  ASSERT_TRUE(anew.ok()) << anew.problem().text;
  EXPECT_NE(of_name(*anew, "light-report").key, report.key);
  EXPECT_NE(of_name(*anew, "section").key, of_name(*pieces, "section").key);
  EXPECT_NE(of_name(*anew, "estimate").key, of_name(*pieces, "estimate").key);
  EXPECT_EQ(of_name(*anew, "plan").key, picture.key);
  const auto sheets = desk.paper(of_name(*anew, "light-report"), at_once);
  ASSERT_TRUE(sheets.ok()) << sheets.problem().text;
  EXPECT_EQ(sheets->sheets.front().size.paper, Paper::a3);
  EXPECT_EQ(sheets->date, "2026-04-01");
  EXPECT_TRUE(desk.write(of_name(*anew, "plan"), folder.path(), at_once).ok());
  // The same as a desk that was set up so from the beginning.
  const auto from_the_beginning = DespatchDesk(few_prisms_made(), otherwise).pieces();
  ASSERT_TRUE(from_the_beginning.ok());
  ASSERT_EQ(from_the_beginning->size(), anew->size());
  for (std::size_t i = 0; i < anew->size(); ++i) EXPECT_EQ((*from_the_beginning)[i].key, (*anew)[i].key);
}

TEST(DespatchDesk, DrawsOnWithAnotherDateWithoutListingAnew) {
  DespatchDesk desk(few_prisms_made(), papers_on("2026-03-31"));
  const auto pieces = desk.pieces();
  ASSERT_TRUE(pieces.ok());
  desk.set_choice(papers_on("2026-04-01"));
  EXPECT_TRUE(desk.pieces(at_once).ok());
  EXPECT_EQ(desk.paper(*std::ranges::find(*pieces, "section", &DespatchPiece::name))->date, "2026-04-01");
}

}  // namespace
}  // namespace prismwright
