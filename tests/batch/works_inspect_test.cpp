#include <gmock/gmock.h>

#include <fmt/format.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class WorksInspect : public WorksDeskTest {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "4"});
    for (const char* stage : {"mastered", "moulded", "cast"})
      ASSERT_EQ(works({"record", "P01-U05", stage}).code, 0) << stage;
  }
  /// What the drawing says of a feature.
  double drawn(const std::string& key) {
    return row_where(works({"inspect", "list", "P01-U05", "--json"}).json().at("features"), "feature", key)
        .at("drawn");
  }
  /// A reading of the first width, so far off.
  std::string reading(double off) {
    const auto features = works({"inspect", "list", "P01-U05", "--json"}).json().at("features");
    key_ = features[0].at("feature");
    return fmt::format("{}={:.4f}", key_, features[0].at("drawn").get<double>() + off);
  }

  std::string key_;
};

TEST_F(WorksInspect, AReadingWithinItsToleranceIsWellAndOneOutsideIsNot) {
  const Answer within = works({"inspect", "record", "P01-U05", reading(0.05), "--by", "bench 2"});
  EXPECT_EQ(within.code, 0) << within.err;
  EXPECT_THAT(within.out, HasSubstr("+0.050 mm off, within"));
  const Answer out = works({"inspect", "record", "1", reading(-0.3)});
  EXPECT_EQ(out.code, 1) << out.err;
  EXPECT_THAT(out.out, HasSubstr("-0.300 mm off, out"));
  const Answer verdicts = works({"inspect", "verdicts", "--json", "--csv", at("all.csv")});
  EXPECT_EQ(verdicts.code, 1);
  const auto json = verdicts.json();
  EXPECT_EQ(json.at("out"), 1);
  EXPECT_EQ(json.at("measured"), 1);
  EXPECT_THAT(bytes_of(at("all.csv")), HasSubstr("P01-U05"));
}

TEST_F(WorksInspect, APrismOutOfToleranceMayBeAcceptedShimmedOrScrappedWithAReason) {
  ASSERT_EQ(works({"inspect", "record", "P01-U05", reading(-0.3)}).code, 1);
  EXPECT_EQ(works({"inspect", "decide", "P01-U05", "accept"}).code, 2) << "without a reason";
  EXPECT_EQ(works({"inspect", "decide", "P01-U05", "polish", "--note", "why"}).code, 2);
  ASSERT_EQ(works({"inspect", "decide", "P01-U05", "shim", "--note", "0.2 mm under its foot"}).code, 0);
  EXPECT_EQ(works({"inspect", "verdicts"}).code, 0) << "settled";
  ASSERT_EQ(works({"inspect", "decide", "P01-U05", "scrap", "--note", "chipped at last"}).code, 0);
  const auto list = works({"list", "--json"}).json();
  EXPECT_EQ(row_where(list.at("prisms"), "mark", "P01-U05").at("stage"), "scrapped");
  EXPECT_EQ(list.at("ledger").back().at("note"), "chipped at last");
}

TEST_F(WorksInspect, ASlipOfThePenIsRefusedAndKeepsAllBack) {
  const std::string good = reading(0.01);
  EXPECT_EQ(works({"inspect", "record", "P01-U05", good, key_ + "=3000"}).code, 2);
  EXPECT_EQ(works({"inspect", "record", "P01-U05", good, "width"}).code, 2);
  EXPECT_EQ(works({"inspect", "record", "P01-U05", good, "width.Q-X=3"}).code, 2);
  EXPECT_EQ(works({"inspect", "list", "P01-U05", "--json"}).json().at("within"), 0) << "nothing was taken";
}

TEST_F(WorksInspect, APhotographIsKeptListedAndSavedByteForByte) {
  const std::string png = "\x89PNG\r\n\x1a\n" + std::string(5000, 'x');
  std::ofstream(at("foot.png"), std::ios::binary) << png;
  const Answer added = works({"photo", "add", "P01-U05", at("foot.png"), "--note", "a bubble"});
  ASSERT_EQ(added.code, 0) << added.err;
  const auto list = works({"photo", "list", "P01-U05", "--json", "--csv", at("photos.csv")}).json();
  EXPECT_THAT(bytes_of(at("photos.csv")),
              testing::StartsWith("number,when_utc,mark,serial,name,media,by,note\n1,"));
  ASSERT_EQ(list.size(), 1u);
  EXPECT_EQ(list[0].at("serial"), 1);
  EXPECT_EQ(list[0].at("name"), "foot.png");
  ASSERT_EQ(works({"photo", "save", "1", "--out", at("again.png")}).code, 0);
  EXPECT_EQ(bytes_of(at("again.png")), png);
  std::ofstream(at("note.txt")) << "no picture";
  EXPECT_EQ(works({"photo", "add", "P01-U05", at("note.txt")}).code, 2);
  EXPECT_EQ(works({"photo", "add", "P01-U05", at("none.png")}).code, 3);
  EXPECT_NE(works({"photo", "save", "9", "--out", at("x.png")}).code, 0);
}

}  // namespace
}  // namespace prismwright
