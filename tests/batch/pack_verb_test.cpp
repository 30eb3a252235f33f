#include <gmock/gmock.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class PackVerb : public BatchDesk {
 protected:
  /// A belt of few prisms: every answer waits for its clearances.
  std::string make_few_prisms() {
    return make_small_belt({"section.refracting_to_deg=10", "section.upper_to_deg=18",
                            "section.lower_to_deg=10", "frame.least_brass_mm=1"});
  }
  Answer pack(const std::string& book, std::vector<std::string> more) const {
    std::vector<std::string> words = {"pack", book, "--out", at("packs"), "--date", "2026-03-31"};
    words.insert(words.end(), more.begin(), more.end());
    return ask(words);
  }
};

TEST_F(PackVerb, PacksTheGroupsAskedForAndListsHowTheyStandAfterwards) {
  const std::string book = make_few_prisms();
  const Answer packed = pack(book, {"--only", "lists", "--only", "record", "--json"});
  ASSERT_EQ(packed.code, 0) << packed.err;
  const auto report = packed.json();
  EXPECT_EQ(report.at("folder"), at("packs/lens-2026-03-31"));
  EXPECT_EQ(report.at("revision"), "A");
  EXPECT_EQ(report.at("kept"), 0);
  EXPECT_TRUE(report.at("well").get<bool>());
  EXPECT_THAT(files_in("packs/lens-2026-03-31/lists"), testing::Contains("prisms.csv"));

  ASSERT_EQ(ask({"set", book, "works.scrap_percent=25"}).code, 0);
  const Answer after = pack(book, {"--only", "lists", "--list", "--json"});
  ASSERT_EQ(after.code, 0) << after.err;
  const auto pieces = after.json().at("pieces");
  EXPECT_EQ(row_where(pieces, "name", "make-list").at("state"), "stale");
  EXPECT_EQ(row_where(pieces, "name", "prisms").at("state"), "fresh");
  EXPECT_EQ(row_where(pieces, "name", "prisms").at("last_revision"), "A");
  EXPECT_EQ(after.json().at("values_changed")[0], "works.scrap_percent 10 -> 25 %");

  const Answer again = pack(book, {"--only", "lists", "record"});
  EXPECT_EQ(again.code, 0) << again.err;
  EXPECT_THAT(again.out, HasSubstr("revision B: 1 pieces made anew"));
  EXPECT_THAT(again.out, HasSubstr("works.scrap_percent 10 -> 25 %"));
  EXPECT_THAT(again.out, HasSubstr("packs/lens-2026-03-31-2"));
}

TEST_F(PackVerb, IsNotWellWhereTheFrameIsNot) {
  const std::string book = make_few_prisms();
  ASSERT_EQ(ask({"set", book, "frame.least_brass_mm=3"}).code, 0);
  ASSERT_EQ(ask({"frame", book}).code, 1) << "brass thinner than 3 mm";
  const Answer packed = pack(book, {"--only", "lists", "--json"});
  EXPECT_EQ(packed.code, 1);
  EXPECT_FALSE(packed.json().at("well").get<bool>());
  EXPECT_THAT(packed.json().at("withheld"), testing::IsEmpty());
}

TEST_F(PackVerb, RefusesWhatCannotBe) {
  const std::string book = make_book({"--order", "6", "--work", "belt"});
  const auto refused = [&](std::vector<std::string> words, const char* told) {
    const Answer answer = pack(book, std::move(words));
    EXPECT_EQ(answer.code, 2);
    EXPECT_THAT(answer.err, HasSubstr(told));
    EXPECT_FALSE(std::filesystem::exists(at("packs")));
  };
  refused({"--only", "hats"}, "hats");
  refused({"--sheet", "A9"}, "A9");
  refused({"--margin-percent", "900"}, "900");
  refused({"--margin-percent", "nan"}, "nan");
  refused({"--margin-percent", "12 percent"}, "12 percent");
  refused({"--valid-days", "0"}, "0");
  refused({"--valid-days", "1.5"}, "1.5");
  EXPECT_EQ(ask({"pack", book}).code, 2);
  EXPECT_EQ(ask({"pack", at("none.lensbook"), "--out", at("packs")}).code, 3);
  const Answer dated = ask({"pack", book, "--out", at("packs"), "--date", "31.3.26"});
  EXPECT_EQ(dated.code, 2);
  EXPECT_THAT(dated.err, HasSubstr("31.3.26"));
  for (const char* verb : {"pack", "papers"}) {
    const Answer answer = ask({verb, book, "--out", at("packs"), "--date", "2026-02-30"});
    EXPECT_EQ(answer.code, 2);
    EXPECT_THAT(answer.err, HasSubstr("2026-02-30"));
    EXPECT_FALSE(std::filesystem::exists(at("packs")));
  }
}

TEST_F(PackVerb, TakesUpWhatTheLastPackSaidOfTheEstimateAndSaysSo) {
  const std::string book = make_few_prisms();
  const Answer first =
      pack(book, {"--only", "estimate", "--margin-percent", "12.5", "--note", "Paid in three parts", "--json"});
  ASSERT_EQ(first.code, 0) << first.err;
  EXPECT_THAT(first.json().at("remembered"), testing::IsEmpty());
  const Answer again = pack(book, {"--only", "estimate"});
  ASSERT_EQ(again.code, 0) << again.err;
  EXPECT_THAT(again.out, HasSubstr("0 pieces made anew, 1 kept"));
  EXPECT_THAT(again.out, HasSubstr("Estimate: a margin of 12.5 %, as in the last pack, lens-2026-03-31 of "
                                   "2026-03-31; --margin-percent \"\" clears it."));
  EXPECT_THAT(again.out, HasSubstr("Estimate: the note \"Paid in three parts\", as in the last pack"));
}

TEST_F(PackVerb, DrawsPapersAloneByName) {
  const std::string book = make_few_prisms();
  const Answer answer = ask({"papers", book, "--out", at("papers"), "--only", "section", "panel-*", "--svg",
                             "--date", "2026-03-31", "--revision", "D", "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto files = files_in("papers");
  for (const char* name : {"section.pdf", "section.svg", "panel-chart.pdf", "panel-chart.svg"})
    EXPECT_THAT(files, testing::Contains(name));
  EXPECT_THAT(files, testing::Not(testing::Contains("estimate.pdf")));
  EXPECT_EQ(answer.json().at("files").size(), files.size());
  EXPECT_THAT(bytes_of(at("papers/section.svg")), HasSubstr(">D<"));
  const Answer unknown = ask({"papers", book, "--out", at("none"), "--only", "hat"});
  EXPECT_EQ(unknown.code, 2);
  EXPECT_THAT(unknown.err, HasSubstr("hat"));
  EXPECT_FALSE(std::filesystem::exists(at("none")));
}

}  // namespace
}  // namespace prismwright
