#include <gmock/gmock.h>

#include "core/lens/quantities.h"
#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// new, set, undo, redo and keys: the verbs that hold only values.
class ValuesVerbs : public BatchDesk {
 protected:
  nlohmann::json value_of(const std::string& book, const std::string& key) {
    const Answer answer = ask({"keys", book, "--json"});
    EXPECT_EQ(answer.code, 0) << answer.err;
    return row_where(answer.json().at("keys"), "key", key).at("value");
  }
};

TEST_F(ValuesVerbs, NewSaysWhatItMadeAndKeepsEveryChoice) {
  const Answer answer = ask({"new",         at("belt.lensbook"),
                             "--order",     "3.5",
                             "--work",      "belt",
                             "--panels",    "6",
                             "--material",  "crown",
                             "--faces",     "arc",
                             "--focal-mm",  "380",
                             "--title",     "Tallow Ness",
                             "--client",    "Ostrenny Harbour Board",
                             "--character", "Fl(2) 10s"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("small third order"));
  EXPECT_THAT(answer.out, HasSubstr("380 mm"));
  const std::string book = at("belt.lensbook");
  EXPECT_EQ(value_of(book, "brief.order"), "3.5");
  EXPECT_EQ(value_of(book, "brief.work"), "belt");
  EXPECT_EQ(value_of(book, "brief.panels"), 6);
  EXPECT_EQ(value_of(book, "brief.focal_mm"), 380);
  EXPECT_EQ(value_of(book, "brief.title"), "Tallow Ness");
  EXPECT_EQ(value_of(book, "brief.client"), "Ostrenny Harbour Board");
  EXPECT_EQ(value_of(book, "brief.character"), "Fl(2) 10s");
  EXPECT_EQ(value_of(book, "material.name"), "crown");
  EXPECT_EQ(value_of(book, "section.faces"), "arc");
}

TEST_F(ValuesVerbs, AnOrderBringsItsOwnFocalDistanceEdgeAndChord) {
  const std::string book = make_book({"--order", "first"});
  // Encyclopaedia Britannica, 11th ed. (1911), vol. 16, Table II p. 639: first order 920 mm.
  EXPECT_EQ(value_of(book, "brief.focal_mm"), 920);
  EXPECT_GT(value_of(book, "section.reflecting_chord_mm").get<double>(), 80);
}

TEST_F(ValuesVerbs, NewNeverWritesOverAFile) {
  const std::string book = make_book({"--order", "4"});
  const std::string before = bytes_of(book);
  const Answer again = ask({"new", book, "--order", "1"});
  EXPECT_EQ(again.code, 3);
  EXPECT_THAT(again.err, HasSubstr("lens.lensbook"));
  EXPECT_EQ(bytes_of(book), before);
}

TEST_F(ValuesVerbs, ARefusedNewLeavesNoFile) {
  for (const std::vector<std::string>& words :
       std::vector<std::vector<std::string>>{{"--order", "9"},
                                             {"--order", "4", "--panels", "0"},
                                             {"--order", "4", "--panels", "eight"},
                                             {"--order", "4", "--work", "both"},
                                             {"--order", "4", "--material", "jelly"},
                                             {"--order", "4", "--focal-mm", "-250"},
                                             {"--order", "4", "--faces", "flat"}}) {
    std::vector<std::string> all = {"new", at("refused.lensbook")};
    all.insert(all.end(), words.begin(), words.end());
    const Answer answer = ask(all);
    EXPECT_EQ(answer.code, 2) << testing::PrintToString(words);
    EXPECT_THAT(answer.err, HasSubstr(words.back()));
    EXPECT_FALSE(std::filesystem::exists(at("refused.lensbook")));
  }
}

TEST_F(ValuesVerbs, SetTakesAllOrNone) {
  const std::string book = make_book({"--order", "4"});
  const Answer taken = ask({"set", book, "section.edge_mm=5", "brief.title=Grey point"});
  ASSERT_EQ(taken.code, 0) << taken.err;
  EXPECT_THAT(taken.out, HasSubstr("4 -> 5 mm"));
  const std::string before = bytes_of(book);
  const Answer refused = ask({"set", book, "section.edge_mm=6", "material.index=3"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("3"));
  EXPECT_EQ(bytes_of(book), before);
  EXPECT_EQ(value_of(book, "section.edge_mm"), 5);
}

TEST_F(ValuesVerbs, SetReadsInches) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.edge_mm=3/16 in"}).code, 0);
  EXPECT_DOUBLE_EQ(value_of(book, "section.edge_mm").get<double>(), 4.7625);
}

TEST_F(ValuesVerbs, AValueMayHoldAnEqualsSign) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "brief.notes=f = 250, as found"}).code, 0);
  EXPECT_EQ(value_of(book, "brief.notes"), "f = 250, as found");
}

TEST_F(ValuesVerbs, SetWithoutAChangeMakesNoStep) {
  const std::string book = make_book({"--order", "4"});
  const Answer answer = ask({"set", book, "section.edge_mm=4"});
  EXPECT_EQ(answer.code, 0);
  EXPECT_THAT(answer.out, HasSubstr("Nothing to change"));
  EXPECT_EQ(ask({"undo", book}).code, 2) << "there is no step to take back";
}

TEST_F(ValuesVerbs, UndoAndRedoOutliveEachCall) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.edge_mm=5"}).code, 0);
  ASSERT_EQ(ask({"set", book, "section.edge_mm=6"}).code, 0);
  const Answer undone = ask({"undo", book});
  ASSERT_EQ(undone.code, 0) << undone.err;
  EXPECT_THAT(undone.out, HasSubstr("5 -> 6 mm"));
  EXPECT_EQ(value_of(book, "section.edge_mm"), 5);
  ASSERT_EQ(ask({"undo", book}).code, 0);
  EXPECT_EQ(value_of(book, "section.edge_mm"), 4);
  EXPECT_EQ(ask({"undo", book}).code, 2);
  ASSERT_EQ(ask({"redo", book}).code, 0);
  ASSERT_EQ(ask({"redo", book}).code, 0);
  EXPECT_EQ(value_of(book, "section.edge_mm"), 6);
  EXPECT_EQ(ask({"redo", book}).code, 2);
}

TEST_F(ValuesVerbs, WhatIsNotAKeyAndAValueIsRefused) {
  const std::string book = make_book({"--order", "4"});
  const std::string before = bytes_of(book);
  for (const char* text : {"section.edge_mm", "=4", "section.edge=4", "section.edge_mm=thick"}) {
    const Answer answer = ask({"set", book, text});
    EXPECT_EQ(answer.code, 2) << text;
    EXPECT_THAT(answer.err, testing::Not(IsEmpty()));
  }
  EXPECT_EQ(bytes_of(book), before);
}

TEST_F(ValuesVerbs, KeysListsEveryQuantityWithItsRangeAndMeaning) {
  const std::string book = make_book({"--order", "4"});
  const auto keys = ask({"keys", book, "--json"}).json().at("keys");
  ASSERT_EQ(keys.size(), quantities().size());
  for (const auto& key : keys) {
    EXPECT_THAT(key.at("meaning").get<std::string>(), testing::Not(IsEmpty())) << key.at("key");
    EXPECT_EQ(key.at("form") == "choice", !key.at("choices").empty()) << key.at("key");
    if (key.at("min").is_null()) continue;
    EXPECT_LE(key.at("min").get<double>(), key.at("max").get<double>()) << key.at("key");
  }
  EXPECT_THAT(ask({"keys", book}).out, HasSubstr("section.reflecting_chord_mm"));
}

TEST_F(ValuesVerbs, EveryKeyThatTheTradeAskedForIsThere) {
  for (const char* key : {"brief.order",
                          "brief.focal_mm",
                          "brief.work",
                          "brief.panels",
                          "material.name",
                          "material.index",
                          "section.faces",
                          "section.joint",
                          "section.edge_mm",
                          "section.land_mm",
                          "section.gap_mm",
                          "section.refracting_to_deg",
                          "section.refracting_margins_mm",
                          "section.upper_to_deg",
                          "section.lower_to_deg",
                          "section.reflecting_chord_mm",
                          "section.upper_start_r_mm",
                          "section.upper_start_z_mm",
                          "frame.rib_mm",
                          "frame.pocket_mm",
                          "frame.setting_gap_mm",
                          "frame.end_gap_mm"}) {
    EXPECT_NE(find_quantity(key), nullptr) << key;
  }
}

TEST_F(ValuesVerbs, EveryValueThatKeysPrintsCanBeSetAgain) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.land_mm=0.3", "material.index=1.4918"}).code, 0);
  std::vector<std::string> words = {"set", book};
  const auto keys_of_lens = ask({"keys", book, "--json"}).json().at("keys");
  for (const auto& row : keys_of_lens) {
    const auto& value = row.at("value");
    if (!value.is_number()) continue;
    words.push_back(row.at("key").get<std::string>() + "=" + value.dump());
  }
  const Answer again = ask(words);
  EXPECT_EQ(again.code, 0) << again.err;
  EXPECT_THAT(again.out, HasSubstr("Nothing to change")) << "numbers must read back exactly";
}

}  // namespace
}  // namespace prismwright
