#include <gmock/gmock.h>

#include <cmath>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using nlohmann::json;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// section: zones one by one, bands divided anew.
class SectionVerb : public BatchDesk {
 protected:
  static json zones_of(const std::string& book) { return list_of(book).at("zones"); }
  static json list_of(const std::string& book) {
    const Answer answer = ask({"section", book, "list", "--json"});
    EXPECT_EQ(answer.code, 0) << answer.err;
    return answer.json();
  }
  static json zone_of(const std::string& book, const std::string& mark) {
    return row_where(zones_of(book), "mark", mark);
  }
  static int count_of(const std::string& book, const std::string& band) {
    int count = 0;
    for (const auto& zone : zones_of(book)) count += zone.at("band") == band ? 1 : 0;
    return count;
  }
};

TEST_F(SectionVerb, ListTellsEveryZoneAsShowDoes) {
  const std::string book = make_book({"--order", "6"});
  const auto shown = ask({"show", book, "--json"}).json().at("zones");
  const auto zones = zones_of(book);
  ASSERT_EQ(zones.size(), shown.size());
  for (std::size_t i = 0; i < zones.size(); ++i) {
    for (const char* name : {"mark", "kind", "from_deg", "to_deg", "thickness_mm"})
      EXPECT_EQ(zones[i].at(name), shown[i].at(name)) << zones[i].at("mark");
    EXPECT_GT(zones[i].at("size_mm"), 0) << zones[i].at("mark");
    EXPECT_GT(zones[i].at("section_thickness_mm"), 0) << zones[i].at("mark");
    EXPECT_EQ(zones[i].at("locked"), false);
    EXPECT_EQ(zones[i].at("size_by"), zones[i].at("band") == "refracting" ? "margin" : "side");
  }
  const Answer words = ask({"section", book, "list"});
  EXPECT_EQ(words.code, 0);
  EXPECT_THAT(words.out, HasSubstr("U01"));
  EXPECT_THAT(words.out, Not(HasSubstr("Variants")));
  EXPECT_THAT(list_of(book).at("variants"), IsEmpty());
}

TEST_F(SectionVerb, DivideGivesAsManyZonesAsAsked) {
  const std::string book = make_book({"--order", "4"});
  const Answer answer = ask({"section", book, "divide", "refracting", "--by", "count", "5", "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_EQ(count_of(book, "refracting"), 5);
  EXPECT_EQ(answer.json().at("zones"), zones_of(book));
  EXPECT_EQ(row_where(answer.json().at("settings"), "key", "section.refracting_division").at("after"), "count");
  const Answer undone = ask({"undo", book});
  EXPECT_THAT(undone.out, HasSubstr("divide refracting band by count 5"));
}

TEST_F(SectionVerb, DivideByEqualHeightGivesEqualHeights) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"section", book, "divide", "refracting", "--by", "height", "4"}).code, 0);
  const auto zones = zones_of(book);
  ASSERT_EQ(count_of(book, "refracting"), 4);
  // Rings that are equally high have margins that rise by equal steps, less the thin edge's own slant.
  const double first = zones[1].at("size_mm").get<double>() - zones[0].at("size_mm").get<double>();
  const double last = zones[3].at("size_mm").get<double>() - zones[2].at("size_mm").get<double>();
  EXPECT_NEAR(last / first, 1, 0.05);
}

TEST_F(SectionVerb, DivideReadsLengthsWithTheirUnit) {
  const std::string book = make_book({"--order", "4"});
  const Answer answer = ask({"section", book, "divide", "upper", "--by", "side", "1 in"});
  ASSERT_NE(answer.code, 2) << answer.err;
  EXPECT_NEAR(zone_of(book, "U01").at("size_mm").get<double>(), 25.4, 1e-9);
}

TEST_F(SectionVerb, EditSizesOneZoneAndLeavesThoseInsideIt) {
  const std::string book = make_book({"--order", "4"});
  const auto before = zones_of(book);
  const double to = zone_of(book, "R2").at("to_deg").get<double>() - 0.25;
  const Answer answer = ask({"section", book, "edit", "R2", "--to-deg", std::to_string(to), "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_NEAR(zone_of(book, "R2").at("to_deg").get<double>(), to, 1e-6);
  EXPECT_NEAR(zone_of(book, "R1").at("to_deg").get<double>(),
              row_where(before, "mark", "R1").at("to_deg").get<double>(), 1e-9);
  // The next ring begins beyond the setting gap and ends where it ended.
  EXPECT_GT(zone_of(book, "R3").at("from_deg").get<double>(), to);
  EXPECT_LT(zone_of(book, "R3").at("from_deg").get<double>(), to + 0.15);
  EXPECT_NEAR(zone_of(book, "R3").at("to_deg").get<double>(),
              row_where(before, "mark", "R3").at("to_deg").get<double>(), 1e-9);
}

TEST_F(SectionVerb, EditSizesAPrismByItsSideOrThickness) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_NE(ask({"section", book, "edit", "U02", "--side-mm", "24"}).code, 2);
  EXPECT_NEAR(zone_of(book, "U02").at("size_mm").get<double>(), 24, 1e-9);
  const Answer thin = ask({"section", book, "edit", "U03", "--thickness-mm", "9"});
  ASSERT_NE(thin.code, 2) << thin.err;
  EXPECT_NEAR(zone_of(book, "U03").at("section_thickness_mm").get<double>(), 9, 1e-6);
}

TEST_F(SectionVerb, ALockedZoneStaysWhenItsBandIsDividedAnew) {
  const std::string book = make_book({"--order", "4"});
  const auto before = zone_of(book, "U03");
  ASSERT_EQ(ask({"section", book, "edit", "U03", "--lock"}).code, 0);
  EXPECT_EQ(zone_of(book, "U03").at("locked"), true);
  EXPECT_THAT(ask({"section", book, "list"}).out, HasSubstr("locked"));
  const Answer divided = ask({"section", book, "divide", "upper", "--by", "side", "24"});
  ASSERT_NE(divided.code, 2) << divided.err;
  EXPECT_EQ(divided.code == 1, !divided.err.empty()) << "what was not met is said, and nothing else";
  json locked;
  for (const auto& zone : zones_of(book))
    if (zone.at("locked") == true) locked = zone;
  ASSERT_FALSE(locked.is_null());
  EXPECT_NEAR(locked.at("from_deg").get<double>(), before.at("from_deg").get<double>(), 1e-6);
  EXPECT_NEAR(locked.at("to_deg").get<double>(), before.at("to_deg").get<double>(), 1e-6);
  const Answer refused = ask({"section", book, "edit", locked.at("mark"), "--remove"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("is locked"));
  ASSERT_NE(ask({"section", book, "edit", locked.at("mark"), "--free"}).code, 2);
  for (const auto& zone : zones_of(book)) EXPECT_EQ(zone.at("locked"), false);
}

TEST_F(SectionVerb, ZonesAreSplitRemovedAndAdded) {
  const std::string book = make_book({"--order", "4"});
  const int upper = count_of(book, "upper");
  const int refracting = count_of(book, "refracting");
  std::string outermost;
  for (const auto& zone : zones_of(book))
    if (zone.at("band") == "upper") outermost = zone.at("mark");
  ASSERT_NE(ask({"section", book, "edit", "R1", "--split"}).code, 2);
  EXPECT_EQ(count_of(book, "refracting"), refracting + 1);
  ASSERT_NE(ask({"section", book, "edit", "R2", "--remove"}).code, 2);
  EXPECT_EQ(count_of(book, "refracting"), refracting);
  ASSERT_NE(ask({"section", book, "edit", outermost, "--remove"}).code, 2);
  EXPECT_EQ(count_of(book, "upper"), upper - 1);
  const Answer added = ask({"section", book, "edit", "--add", "upper"});
  ASSERT_NE(added.code, 2) << added.err;
  EXPECT_EQ(count_of(book, "upper"), upper);
  for (int i = 0; i < 4; ++i) ASSERT_EQ(ask({"undo", book}).code, 0);
  EXPECT_EQ(count_of(book, "upper"), upper);
  EXPECT_EQ(count_of(book, "refracting"), refracting);
  EXPECT_EQ(ask({"undo", book}).code, 2);
}

TEST_F(SectionVerb, WrongRequestsAreRefusedWithTheReasonAndChangeNothing) {
  const std::string book = make_book({"--order", "4"});
  const std::string before = bytes_of(book);
  const std::vector<std::pair<std::vector<std::string>, std::string>> requests = {
      {{"divide", "middle", "--by", "count", "5"}, "middle"},
      {{"divide", "upper", "--by", "weight", "5"}, "weight"},
      {{"divide", "upper", "--by", "by_hand", "5"}, "by_hand"},
      {{"divide", "refracting", "--by", "side", "30"}, "side"},
      {{"divide", "upper", "--by", "count", "many"}, "many"},
      {{"divide", "upper", "--by", "count", "2.5"}, "2.5"},
      {{"divide", "upper", "--by", "count", "0"}, "0"},
      {{"divide", "upper", "--by", "side", "5000"}, "5000"},
      {{"divide", "upper", "--by", "count"}, "NUMBER"},
      {{"edit", "U99", "--split"}, "U99"},
      {{"edit", "U01"}, "--to-deg"},
      {{"edit", "U01", "--split", "--lock"}, "2 things"},
      {{"edit", "--split"}, "zone is named"},
      {{"edit", "U01", "--add", "upper"}, "U01"},
      {{"edit", "--add", "sideways"}, "sideways"},
      {{"edit", "R1", "--to-deg", "steep"}, "steep"},
      {{"edit", "R1", "--side-mm", "30"}, "30"},
      {{"edit", "U01", "--margin-mm", "30"}, "30"},
      {{"edit", "R1", "--free"}, "free already"},
      {{"edit", "R2", "--to-deg", "1"}, "1"},
      {{"edit", "U01", "--side-mm", "-4"}, "-4"},
      {{"compare"}, "variant is kept"},
      {{"compare", "steep"}, "steep"},
      {{"take", "steep"}, "steep"},
      {{"drop", "steep"}, "steep"},
      {{"rename", "steep", "flat"}, "steep"},
      {{"keep", ""}, "needs a name"},
      {{"keep", "present"}, "present"},
      {{"keep", std::string(61, 'x')}, "61"},
  };
  for (const auto& [words, reason] : requests) {
    std::vector<std::string> all = {"section", book};
    all.insert(all.end(), words.begin(), words.end());
    const Answer answer = ask(all);
    EXPECT_EQ(answer.code, 2) << testing::PrintToString(words);
    EXPECT_THAT(answer.err, HasSubstr(reason)) << testing::PrintToString(words);
    EXPECT_THAT(answer.out, IsEmpty()) << testing::PrintToString(words);
  }
  EXPECT_EQ(bytes_of(book), before);
}

TEST_F(SectionVerb, DrawWritesAFileAndNamesIt) {
  const std::string book = make_book({"--order", "6"});
  const Answer words = ask({"section", book, "draw", "--out", at("section.dxf")});
  ASSERT_EQ(words.code, 0) << words.err;
  EXPECT_EQ(words.out, at("section.dxf") + "\n");
  const Answer answer = ask({"section", book, "draw", "--out", at("section.pdf"), "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_EQ(answer.json().at("files"), json({at("section.pdf")}));
  EXPECT_GT(std::filesystem::file_size(at("section.pdf")), 1000u);
  const Answer refused = ask({"section", book, "draw", "--out", at("section.png"), "--json"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_EQ(refused.out, "");
}

TEST_F(SectionVerb, OfABookThatIsNotThereIsFileTrouble) {
  for (const char* act : {"list", "compare"})
    EXPECT_EQ(ask({"section", at("none.lensbook"), act}).code, 3) << act;
  EXPECT_EQ(ask({"section", at("none.lensbook"), "keep", "a"}).code, 3);
  EXPECT_EQ(ask({"section", at("none.lensbook"), "edit", "U01", "--split"}).code, 3);
}

}  // namespace
}  // namespace prismwright
