#include <algorithm>

#include "core/book/sqlite_api.h"
#include "tests/book/book_fixture.h"
#include "tests/book/failing_disk.h"
#include "tests/book/other_process.h"

namespace prismwright {
namespace {

using testing::AnyOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::MatchesRegex;
using testing::Optional;

/// The name of a variant and the edge thickness it holds, for short expectations.
std::vector<std::string> told(const Lensbook& book) {
  std::vector<std::string> lines;
  for (const SectionVariant& variant : book.variants()) {
    const auto edge = std::find_if(variant.texts.begin(), variant.texts.end(),
                                   [](const Assignment& each) { return each.first == "section.edge_mm"; });
    lines.push_back(variant.name + " " + (edge == variant.texts.end() ? "none" : edge->second));
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

class Variants : public BookTest {
 protected:
  Variants() : book_(well(Lensbook::create(file("lens.lensbook"), {}))) {}

  void reopen() {
    { const Lensbook closed = std::move(book_); }
    book_ = well(Lensbook::open(file("lens.lensbook")));
  }

  Lensbook book_;
};

TEST_F(Variants, ANewBookHasNone) {
  EXPECT_THAT(book_.variants(), IsEmpty());
  EXPECT_THAT(book_.variant("steep").problem().text, HasSubstr("none is kept"));
}

TEST_F(Variants, HoldEveryQuantityOfSectionAndMaterialAndNoOther) {
  well(book_.keep_variant("steep joints"));
  reopen();
  const SectionVariant kept = well(book_.variant("steep joints"));
  std::size_t expected = 0;
  for (const Quantity& quantity : quantities()) {
    if (!quantity.key.starts_with("section.") && !quantity.key.starts_with("material.")) continue;
    ASSERT_LT(expected, kept.texts.size());
    EXPECT_EQ(kept.texts[expected].first, quantity.key);
    EXPECT_EQ(kept.texts[expected].second, value_text(LensValues(), quantity.key)) << quantity.key;
    ++expected;
  }
  EXPECT_EQ(kept.texts.size(), expected);
  EXPECT_GT(expected, 30u);
  EXPECT_THAT(kept.when_utc,
              MatchesRegex("20[0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-6][0-9]Z"));
}

TEST_F(Variants, AreStepsThatUndoNames) {
  well(book_.keep_variant("steep joints"));
  EXPECT_THAT(book_.undo_text(), Optional(std::string("keep variant 'steep joints'")));
  well(book_.edit(with_edge(5), "edge"));
  well(book_.keep_variant("thick"));
  EXPECT_THAT(told(book_), ElementsAre("steep joints 4", "thick 5"));
  EXPECT_EQ(well(book_.undo()), "keep variant 'thick'");
  EXPECT_THAT(told(book_), ElementsAre("steep joints 4"));
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
  EXPECT_EQ(well(book_.undo()), "edge");
  EXPECT_THAT(told(book_), ElementsAre("steep joints 4"));
  EXPECT_EQ(well(book_.undo()), "keep variant 'steep joints'");
  EXPECT_THAT(book_.variants(), IsEmpty());
  reopen();
  for (int i = 0; i < 3; ++i) well(book_.redo());
  reopen();
  EXPECT_THAT(told(book_), ElementsAre("steep joints 4", "thick 5"));
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
}

TEST_F(Variants, StayAsTheyWereWhileTheSectionGoesOn) {
  well(book_.keep_variant("first"));
  well(book_.edit(with_edge(6), "edge"));
  EXPECT_THAT(told(book_), ElementsAre("first 4"));
}

TEST_F(Variants, AreReplacedOnlyWhenAsked) {
  well(book_.keep_variant("a"));
  well(book_.edit(with_edge(5), "edge"));
  const Done refused = book_.keep_variant("a");
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "variant.taken");
  EXPECT_THAT(told(book_), ElementsAre("a 4"));
  EXPECT_THAT(book_.undo_text(), Optional(std::string("edge")));
  well(book_.keep_variant("a", Lensbook::SameName::replace));
  reopen();
  EXPECT_THAT(told(book_), ElementsAre("a 5"));
  EXPECT_EQ(well(book_.undo()), "replace variant 'a'");
  EXPECT_THAT(told(book_), ElementsAre("a 4"));
}

TEST_F(Variants, AreDroppedAndComeBack) {
  well(book_.keep_variant("a"));
  well(book_.keep_variant("b"));
  well(book_.drop_variant("a"));
  reopen();
  EXPECT_THAT(told(book_), ElementsAre("b 4"));
  EXPECT_EQ(well(book_.undo()), "drop variant 'a'");
  reopen();
  EXPECT_THAT(told(book_), ElementsAre("a 4", "b 4"));
  EXPECT_THAT(book_.drop_variant("c").problem().text, HasSubstr("'a', 'b'"));
}

TEST_F(Variants, AreRenamed) {
  well(book_.keep_variant("a"));
  well(book_.keep_variant("b"));
  EXPECT_EQ(book_.rename_variant("a", "b").problem().code, "variant.taken");
  EXPECT_EQ(book_.rename_variant("c", "d").problem().code, "variant.unknown");
  EXPECT_EQ(book_.rename_variant("a", " ").problem().code, "variant.name");
  well(book_.rename_variant("a", "c"));
  reopen();
  EXPECT_THAT(told(book_), ElementsAre("b 4", "c 4"));
  EXPECT_EQ(well(book_.undo()), "rename variant 'a' to 'c'");
  EXPECT_THAT(told(book_), ElementsAre("a 4", "b 4"));
}

TEST_F(Variants, RefuseNamesThatCannotBe) {
  const std::string sixty_letters = [] {
    std::string text;
    for (int i = 0; i < 60; ++i) text += "\xC3\xA6";  // two bytes each
    return text;
  }();
  for (const std::string& name :
       {std::string(), std::string(" \t "), sixty_letters + "x", std::string("present"),
        std::string("two\nlines"), std::string("broken \xC3"), std::string("\xFF")}) {
    const Done refused = book_.keep_variant(name);
    ASSERT_FALSE(refused.ok()) << name;
    EXPECT_EQ(refused.problem().code, "variant.name") << name;
  }
  EXPECT_FALSE(book_.undo_text());
  well(book_.keep_variant("  " + sixty_letters + " "));
  EXPECT_EQ(book_.variants().front().name, sixty_letters);
}

TEST_F(Variants, TakeQuotesAndSignsInNamesAndTexts) {
  const std::string name = "o'Dwyer; \"steep\" {\"a\":1} \\ \xC2\xB5";
  well(book_.keep_variant(name));
  reopen();
  EXPECT_EQ(book_.variants().front().name, name);
  well(book_.drop_variant(name));
  EXPECT_THAT(book_.variants(), IsEmpty());
}

TEST_F(Variants, ReadBackEveryNumberExactly) {
  LensValues values = with_edge(4.1 + 1.0 / 3.0);
  values.material.index = 1.49 + 1e-15;
  well(book_.edit(values, "odd numbers"));
  well(book_.keep_variant("odd"));
  well(book_.edit(LensValues(), "plain again"));
  reopen();
  const TakenVariant taken = well(with_variant(book_.values(), well(book_.variant("odd"))));
  EXPECT_THAT(taken.notes, IsEmpty());
  EXPECT_THAT(taken.values, HasValuesOf(values));
  EXPECT_EQ(taken.values.section.edge_mm, values.section.edge_mm);
  EXPECT_EQ(taken.values.material.index, values.material.index);
}

TEST_F(Variants, AreNotTouchedInABookThatIsReadOnly) {
  well(book_.keep_variant("a"));
  Lensbook reader = well(Lensbook::open(file("lens.lensbook"), Lensbook::Access::read_only));
  EXPECT_THAT(told(reader), ElementsAre("a 4"));
  EXPECT_EQ(reader.keep_variant("b").problem().trouble, Trouble::file);
  EXPECT_EQ(reader.drop_variant("a").problem().trouble, Trouble::file);
  EXPECT_THAT(told(reader), ElementsAre("a 4"));
}

TEST_F(Variants, ThatWereAlteredOutsideAreDamage) {
  well(book_.keep_variant("a"));
  { const Lensbook closed = std::move(book_); }
  {
    SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
    db.exec("UPDATE variant SET texts = replace(texts, '\"4\"', '\"5\"')");
  }
  EXPECT_EQ(Lensbook::open(file("lens.lensbook")).problem().code, "damaged");
  book_ = well(Lensbook::create(file("other.lensbook"), {}));
}

TEST_F(Variants, OfAKilledProcessAreKeptWholeOrNotAtAll) {
  const std::string path = file("killed.lensbook");
  int without = 0;
  for (int acts = 0;; ++acts) {
    ASSERT_LT(acts, 200) << "the keeping never came to its end";
    std::filesystem::remove(path);
    well(Lensbook::create(path, with_edge(5)));
    OtherProcess keeper([&](int) {
      const FailingDisk disk(FailingDisk::Fault::power_cut, acts);
      Lensbook book = well(Lensbook::open(path));
      well(book.keep_variant("a"));
      return 0;
    });
    const int code = keeper.wait();
    Lensbook book = well(Lensbook::open(path));
    ASSERT_THAT(told(book), AnyOf(IsEmpty(), ElementsAre("a 5"))) << "act " << acts;
    EXPECT_EQ(book.undo_text().has_value(), !book.variants().empty()) << "act " << acts;
    without += book.variants().empty() ? 1 : 0;
    if (code != 0) continue;
    EXPECT_THAT(told(book), ElementsAre("a 5"));
    break;
  }
  EXPECT_GT(without, 5);
}

}  // namespace
}  // namespace prismwright
