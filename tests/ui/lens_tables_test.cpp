#include <gtest/gtest.h>

#include "ui/models/clearance_table.h"
#include "ui/models/prism_table.h"

namespace prismwright {
namespace {

PrismRow row_of(const char* mark, int panel, double gap_mm, Verdict verdict, Stage stage) {
  PrismRow row;
  row.mark = mark;
  row.panel = panel;
  row.zone = row.mark.mid(4);
  row.kind = QStringLiteral("upper reflecting");
  row.volume_mm3 = 123456;
  row.mass_g = 146.9;
  row.greatest_length_mm = 254;
  row.tightest_mm = gap_mm;
  row.verdict = verdict;
  row.stage = stage;
  return row;
}

class ThreePrisms : public testing::Test {
 protected:
  void SetUp() override {
    table.setRows({row_of("P01-U01", 1, 0.42, Verdict::clear, Stage::cast),
                   row_of("P02-U01", 2, 0.1, Verdict::tight, Stage::drawn),
                   row_of("P10-U02", 10, 0.0, Verdict::clash, Stage::glazed)},
                  false);
    order.setSourceModel(&table);
  }
  [[nodiscard]] QString cell(int line, PrismTable::Column column) const {
    return table.index(line, column).data().toString();
  }
  [[nodiscard]] QString ordered(int line) const {
    return order.index(line, PrismTable::mark).data().toString();
  }

  PrismTable table;
  WordFilter order;
};

TEST_F(ThreePrisms, CellsSpeakTheMakersUnits) {
  EXPECT_EQ(cell(0, PrismTable::volume), "123.5") << "cubic centimetres";
  EXPECT_EQ(cell(0, PrismTable::mass), "147");
  EXPECT_EQ(cell(0, PrismTable::length), "254.0");
  EXPECT_TRUE(cell(1, PrismTable::tightest).startsWith("0.10"));
  EXPECT_TRUE(cell(1, PrismTable::tightest).contains("tight")) << "the verdict stands as a word";
}

TEST_F(ThreePrisms, LengthsTurnToInches) {
  table.setRows({row_of("P01-U01", 1, 25.4, Verdict::clear, Stage::cast)}, true);
  EXPECT_DOUBLE_EQ(cell(0, PrismTable::length).toDouble(), 10);
  EXPECT_TRUE(table.headerData(PrismTable::length, Qt::Horizontal, Qt::DisplayRole).toString().endsWith("in"));
}

TEST_F(ThreePrisms, UnknownFiguresAreDashesAndSortLast) {
  PrismRow blank;
  blank.mark = "P03-U01";
  table.setRows({blank, row_of("P01-U01", 1, 0.42, Verdict::clear, Stage::cast)}, false);
  EXPECT_EQ(cell(0, PrismTable::volume), QString::fromUtf8("–"));
  order.sort(PrismTable::volume, Qt::AscendingOrder);
  EXPECT_EQ(ordered(0), "P01-U01");
}

TEST_F(ThreePrisms, SortsByNumberNotByLetter) {
  order.sort(PrismTable::panel, Qt::DescendingOrder);
  EXPECT_EQ(ordered(0), "P10-U02");
  order.sort(PrismTable::tightest, Qt::AscendingOrder);
  EXPECT_EQ(ordered(0), "P10-U02") << "the clash";
  EXPECT_EQ(ordered(1), "P02-U01");
  order.sort(PrismTable::stage, Qt::AscendingOrder);
  EXPECT_EQ(ordered(0), "P02-U01") << "drawn comes before cast";
}

TEST_F(ThreePrisms, EveryWordOfTheFilterMustOccur) {
  order.setWords("u01 TIGHT");
  ASSERT_EQ(order.rowCount(), 1);
  EXPECT_EQ(ordered(0), "P02-U01");
  order.setWords("reflecting");
  EXPECT_EQ(order.rowCount(), 3);
  order.setWords("nothing such");
  EXPECT_EQ(order.rowCount(), 0);
}

TEST_F(ThreePrisms, NewFiguresForTheSamePrismsKeepTheLines) {
  const QPersistentModelIndex kept = table.index(1, 0);
  table.setRows({row_of("P01-U01", 1, 1, Verdict::clear, Stage::cast),
                 row_of("P02-U01", 2, 1, Verdict::clear, Stage::cast),
                 row_of("P10-U02", 10, 1, Verdict::clear, Stage::cast)},
                false);
  EXPECT_TRUE(kept.isValid());
  EXPECT_EQ(table.lineOf("P10-U02"), 2);
  EXPECT_EQ(table.lineOf("P99-C"), -1);
}

TEST(Clearances, WorstFirst) {
  auto measured = std::make_shared<std::vector<Clearance>>();
  const auto add = [&](const char* second, double gap, double needed, double overlap, Verdict verdict) {
    Clearance c;
    c.first = "P01-C";
    c.second = second;
    c.gap_mm = gap;
    c.needed_mm = needed;
    c.overlap_mm3 = overlap;
    c.verdict = verdict;
    measured->push_back(c);
  };
  add("clear by much", 3, 0.2, 0, Verdict::clear);
  add("small clash", 0, 0.2, 1, Verdict::clash);
  add("tight", 0.1, 0.2, 0, Verdict::tight);
  add("great clash", 0, 0.2, 50, Verdict::clash);
  add("clear by little", 0.3, 0.2, 0, Verdict::clear);
  ClearanceTable table;
  table.setClearances(measured, false);
  ASSERT_EQ(table.rowCount(), 5);
  const char* expected[] = {"great clash", "small clash", "tight", "clear by little", "clear by much"};
  for (int line = 0; line < 5; ++line) EXPECT_EQ(table.clearance(line).second, expected[line]);
  EXPECT_EQ(table.index(2, ClearanceTable::gap).data().toString(), "0.10");
  EXPECT_TRUE(table.index(2, ClearanceTable::verdict).data().toString().contains("tight"));
}

}  // namespace
}  // namespace prismwright
