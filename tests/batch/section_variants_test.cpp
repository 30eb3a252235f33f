#include <gmock/gmock.h>

#include <cmath>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using nlohmann::json;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// section keep, take, rename, drop and compare.
class SectionVariants : public BatchDesk {
 protected:
  /// A book with the variant "plain", and the section since given level joints and a thicker edge.
  std::string book_with_plain() {
    const std::string book = make_book({"--order", "4"});
    EXPECT_EQ(ask({"section", book, "keep", "plain"}).code, 0);
    EXPECT_EQ(ask({"set", book, "section.joint=level", "section.edge_mm=5"}).code, 0);
    return book;
  }
  static json value_of(const std::string& book, const std::string& key) {
    return row_where(ask({"keys", book, "--json"}).json().at("keys"), "key", key).at("value");
  }
};

TEST_F(SectionVariants, AreListedWithWhatDiffers) {
  const std::string book = book_with_plain();
  const auto list = ask({"section", book, "list", "--json"}).json();
  ASSERT_EQ(list.at("variants").size(), 1u);
  EXPECT_EQ(list.at("variants")[0].at("name"), "plain");
  EXPECT_EQ(list.at("variants")[0].at("keys_that_differ"), json({"section.joint", "section.edge_mm"}));
  EXPECT_THAT(ask({"section", book, "list"}).out, HasSubstr("Variants kept"));
}

TEST_F(SectionVariants, AreTakenOverAsOneStep) {
  const std::string book = book_with_plain();
  const Answer taken = ask({"section", book, "take", "plain", "--json"});
  ASSERT_EQ(taken.code, 0) << taken.err;
  EXPECT_EQ(taken.json().at("settings").size(), 2u);
  EXPECT_EQ(value_of(book, "section.joint"), "along_ray");
  EXPECT_EQ(value_of(book, "section.edge_mm"), 4);
  EXPECT_THAT(ask({"section", book, "take", "plain"}).out, HasSubstr("Nothing to change"));
  EXPECT_THAT(ask({"undo", book}).out, HasSubstr("take over variant 'plain'"));
  EXPECT_EQ(value_of(book, "section.joint"), "level");
  EXPECT_EQ(value_of(book, "section.edge_mm"), 5);
}

TEST_F(SectionVariants, AreReplacedRenamedAndDroppedAsSteps) {
  const std::string book = book_with_plain();
  const Answer refused = ask({"section", book, "keep", "plain"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("kept already"));
  ASSERT_EQ(ask({"section", book, "keep", "plain", "--replace"}).code, 0);
  EXPECT_EQ(ask({"section", book, "list", "--json"}).json().at("variants")[0].at("keys_that_differ").size(),
            0u);
  const Answer renamed = ask({"section", book, "rename", "plain", "level joints", "--json"});
  ASSERT_EQ(renamed.code, 0) << renamed.err;
  EXPECT_EQ(renamed.json().at("variants"), json({"level joints"}));
  const Answer dropped = ask({"section", book, "drop", "level joints", "--json"});
  ASSERT_EQ(dropped.code, 0) << dropped.err;
  EXPECT_EQ(dropped.json().at("variants"), json::array());
  EXPECT_THAT(ask({"undo", book}).out, HasSubstr("drop variant 'level joints'"));
  EXPECT_THAT(ask({"undo", book}).out, HasSubstr("rename variant 'plain' to 'level joints'"));
  EXPECT_THAT(ask({"undo", book}).out, HasSubstr("replace variant 'plain'"));
  EXPECT_THAT(ask({"section", book, "list"}).out, HasSubstr("plain"));
}

TEST_F(SectionVariants, ComparedWithThePresentAgreeWithTheProofOfEach) {
  const std::string book = book_with_plain();
  const auto present = ask({"prove", book, "--json"}).json();
  const Answer answer = ask({"section", book, "compare", "plain", "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto comparison = answer.json();
  EXPECT_EQ(comparison.at("first"), "plain");
  EXPECT_EQ(comparison.at("second"), "present");
  EXPECT_EQ(comparison.at("alike"), false);
  ASSERT_EQ(comparison.at("settings").size(), 2u);
  EXPECT_EQ(row_where(comparison.at("settings"), "key", "section.edge_mm").at("first"), 4);
  EXPECT_EQ(row_where(comparison.at("settings"), "key", "section.edge_mm").at("second"), 5);
  ASSERT_EQ(ask({"section", book, "take", "plain"}).code, 0);
  const auto plain = ask({"prove", book, "--json"}).json();
  for (const char* key : {"share_level", "share_escaped", "share_lost_in_lands", "worst_departure_deg",
                          "least_margin_deg", "share_of_source", "through"}) {
    const auto row = row_where(comparison.at("figures"), "key", key);
    EXPECT_EQ(row.at("first"), plain.at(key)) << key;
    EXPECT_EQ(row.at("second"), present.at(key)) << key;
  }
}

TEST_F(SectionVariants, ComparedTellTheGlassThatTheSolidsHold) {
  const std::string book = make_book({"--order", "6", "--panels", "6"});
  ASSERT_EQ(ask({"section", book, "keep", "six"}).code, 0);
  const auto totals = ask({"show", book, "--json"}).json().at("totals");
  const auto comparison = ask({"section", book, "compare", "--json"}).json();
  EXPECT_EQ(comparison.at("alike"), true);
  const auto volume = row_where(comparison.at("figures"), "key", "volume_mm3");
  EXPECT_NEAR(volume.at("first").get<double>() / totals.at("volume_mm3").get<double>(), 1, 1e-5);
  const auto mass = row_where(comparison.at("figures"), "key", "mass_g");
  EXPECT_NEAR(mass.at("second").get<double>() / totals.at("mass_g").get<double>(), 1, 1e-5);
}

TEST_F(SectionVariants, ComparedInWordsNameWhatDiffers) {
  const std::string book = book_with_plain();
  ASSERT_EQ(ask({"set", book, "section.upper_to_deg=60"}).code, 0);
  const Answer answer = ask({"section", book, "compare"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("section.joint"));
  EXPECT_THAT(answer.out, HasSubstr("4 mm"));
  EXPECT_THAT(answer.out, HasSubstr("Worst departure"));
  EXPECT_THAT(answer.out, HasSubstr("none")) << "the prisms that only the variant has";
  ASSERT_EQ(ask({"section", book, "keep", "low"}).code, 0);
  const Answer alike = ask({"section", book, "compare", "low", "present"});
  EXPECT_THAT(alike.out, HasSubstr("No setting differs"));
  const auto two = ask({"section", book, "compare", "low", "plain", "--json"}).json();
  EXPECT_EQ(two.at("first"), "low");
  EXPECT_EQ(two.at("second"), "plain");
}

TEST_F(SectionVariants, OutliveAnotherMaterialAndComeBackWithTheirs) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "material.index=1.4918"}).code, 0);
  ASSERT_EQ(ask({"section", book, "keep", "acrylic batch"}).code, 0);
  ASSERT_EQ(ask({"set", book, "material.name=crown"}).code, 0);
  EXPECT_EQ(value_of(book, "material.index"), nullptr);
  ASSERT_EQ(ask({"section", book, "take", "acrylic batch"}).code, 0);
  EXPECT_EQ(value_of(book, "material.name"), "acrylic");
  EXPECT_EQ(value_of(book, "material.index"), 1.4918);
}

}  // namespace
}  // namespace prismwright
