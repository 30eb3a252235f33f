#include <gmock/gmock.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class WorksPapers : public WorksDeskTest {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "4"});
    for (const char* stage : {"mastered", "moulded", "cast"})
      ASSERT_EQ(works({"record", "P0*-C", stage}).code, 0) << stage;
  }
};

TEST_F(WorksPapers, LabelsFillSheetsOfTheAskedSize) {
  const Answer answer = works({"labels", "P0*-C", "--out", at("labels.pdf"), "--columns", "2", "--rows", "3"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_EQ(answer.out, "8 labels on 2 sheets: " + at("labels.pdf") + "\n");
  EXPECT_THAT(bytes_of(at("labels.pdf")), StartsWith("%PDF-"));
  const auto json = works({"labels", "3", "--out", at("one.pdf"), "--paper", "Letter", "--json"}).json();
  EXPECT_EQ(json.at("sheets"), 1);
}

TEST_F(WorksPapers, LabelsThatCannotBeReadAreRefusedAndNothingIsWritten) {
  const Answer answer = works({"labels", "P0*-C", "--out", at("labels.pdf"), "--rows", "40"});
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("40 rows of 3"));
  EXPECT_FALSE(std::filesystem::exists(at("labels.pdf")));
  EXPECT_EQ(works({"labels", "--out", at("labels.pdf"), "--paper", "A3"}).code, 2);
  EXPECT_EQ(works({"labels", "P01-C", "--out", at("missing/labels.pdf")}).code, 3);
}

TEST_F(WorksPapers, TravellersAreOneSheetAPrismOrOneATray) {
  const Answer each = works({"travellers", "P0*-C", "--out", at("each.pdf")});
  ASSERT_EQ(each.code, 0) << each.err;
  EXPECT_EQ(each.out, "8 travellers on 8 sheets: " + at("each.pdf") + "\n");
  const Answer tray =
      works({"travellers", "P0*-C", "P01-R1", "--tray", "--paper", "A4", "--out", at("tray.pdf")});
  ASSERT_EQ(tray.code, 0) << tray.err;
  EXPECT_EQ(tray.out, "1 traveller on 1 sheet: " + at("tray.pdf") + "\n");
  EXPECT_EQ(works({"travellers", "P77-C", "--out", at("none.pdf")}).code, 2);
}

}  // namespace
}  // namespace prismwright
