#include "ui/models/despatch_work.h"

#include <gtest/gtest.h>

#include "geometry/despatch/pack_manifest.h"
#include "tests/support/empty_folder.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

TEST(ReadyDesk, IsTheKeptOneWhateverThePapersAndNoneOfAnotherLens) {
  const EmptyFolder folder;
  const auto source = std::make_shared<const DespatchSource>(few_prisms_made());
  DespatchWish wish;
  wish.folder = QString::fromStdString(folder.path());
  wish.choice.date = "2026-03-31";
  const auto kept = ready_desk(nullptr, source, wish);
  const auto first = list_despatch(*kept, {}, {});
  ASSERT_TRUE(first.ok()) << first.problem().text;
  const auto key_of = [](const DespatchListing& listing, const std::string& name) {
    return std::ranges::find(listing.pieces, name, &DespatchPiece::name)->key;
  };

  wish.choice.date = "2026-04-01";
  EXPECT_EQ(ready_desk(kept, source, wish), kept);
  EXPECT_FALSE(kept->pieces.empty()) << "what goes out is the same on another day";
  EXPECT_EQ(kept->desk.choice().date, "2026-04-01");

  wish.choice.paper = Paper::a3;
  wish.choice.inches = true;
  EXPECT_EQ(ready_desk(kept, source, wish), kept);
  const auto anew = list_despatch(*kept, {}, {});
  ASSERT_TRUE(anew.ok()) << anew.problem().text;
  EXPECT_NE(key_of(*anew, "section"), key_of(*first, "section"));
  EXPECT_EQ(key_of(*anew, "P01-C"), key_of(*first, "P01-C"));

  const auto other = std::make_shared<const DespatchSource>(few_prisms_made());
  EXPECT_NE(ready_desk(kept, other, wish), kept);
}

TEST(DespatchWish, BeginsWithTheEstimateOfTheLastPackUntilAnotherIsChosen) {
  const EmptyFolder folder;
  const QString book = QString::fromStdString(folder.file("low-head.lensbook"));
  EXPECT_EQ(kept_despatch_wish(book).choice.estimate, EstimateChoice());
  PackManifest manifest;
  manifest.book = "low-head";
  manifest.estimate = EstimateChoice{12.5, 90, 3, "Paid in three parts"};
  std::filesystem::create_directories(folder.file("low-head-packs/low-head-2026-03-31"));
  std::ofstream(folder.file("low-head-packs/low-head-2026-03-31/manifest.json")) << manifest_text(manifest);
  DespatchWish wish = kept_despatch_wish(book);
  EXPECT_EQ(wish.choice.estimate, *manifest.estimate);
  wish.choice.estimate = {0, 60, 1, ""};
  keep_despatch_wish(book, wish);
  EXPECT_EQ(kept_despatch_wish(book).choice.estimate, wish.choice.estimate) << "cleared is cleared";
}

}  // namespace
}  // namespace prismwright
