#include "app/batch/text_table.h"

#include <gtest/gtest.h>

#include <sstream>

namespace prismwright {
namespace {

std::string printed(const TextTable& table) {
  std::ostringstream out;
  table.print(out);
  return out.str();
}

TEST(TextTable, WordsStandLeftAndFiguresRight) {
  TextTable table({{"zone"}, {"from deg", true}, {"note"}});
  table.add({"C", "-9.5", "full turn"});
  table.add({"R10", "12.25", ""});
  EXPECT_EQ(printed(table),
            "  zone  from deg  note\n"
            "  C         -9.5  full turn\n"
            "  R10      12.25\n");
}

TEST(TextTable, LettersOfSeveralBytesCountAsOne) {
  TextTable table({{"by"}, {"prism"}});
  table.add({"Åsgård", "P01-C"});
  table.add({"bench", "P02-C"});
  EXPECT_EQ(printed(table),
            "  by      prism\n"
            "  Åsgård  P01-C\n"
            "  bench   P02-C\n");
}

TEST(TextTable, AFigureRoundedToZeroHasNoMinus) {
  TextTable table({{"mark"}, {"deg", true}});
  table.add({"-0", "-0.000"});
  table.add({"-", "-"});
  table.add({"R1", "-0.001"});
  table.add({"R2", "-0"});
  EXPECT_EQ(printed(table),
            "  mark     deg\n"
            "  -0     0.000\n"
            "  -          -\n"
            "  R1    -0.001\n"
            "  R2         0\n");
}

TEST(TextTable, ARowHasAsManyCellsAsThereAreColumns) {
  TextTable table({{"mark"}, {"deg", true}});
  table.add({"R1"});
  table.add({"R2", "-0.0", "-0.0"});
  EXPECT_EQ(printed(table),
            "  mark  deg\n"
            "  R1\n"
            "  R2    0.0\n");
}

}  // namespace
}  // namespace prismwright
