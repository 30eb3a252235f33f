#include "ui/models/despatch_work.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace prismwright
