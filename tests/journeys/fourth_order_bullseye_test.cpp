#include "tests/journeys/whole_job.h"

namespace prismwright {
namespace {

class FourthOrderBullseye : public WholeJob {};

TEST_F(FourthOrderBullseye, FromTheOrderToSolidsAndARecord) {
  const std::string book = make_book({"--order", "4", "--work", "bullseye", "--panels", "8", "--title",
                                      "Tallow Ness", "--client", "Ostrenny Harbour Board"});
  ASSERT_EQ(ask({"set", book, "material.index=1.4918"}).code, 0);
  expect_proved(book, 0.001);

  ASSERT_EQ(ask({"bodies", book, "--out", at("solids")}).code, 0);
  const std::vector<std::string> marks = marks_of(book);
  std::vector<std::string> files = {"lens.step"};
  for (const std::string& mark : marks) files.push_back(mark + ".step");
  expect_step_files("solids", files);
  expect_no_clash(book);

  for (const char* stage : {"mastered", "moulded", "cast", "annealed"})
    record(book, {"P01-*", stage, "--by", "bench 1"});
  record(book, {"P01-C", "P01-R1", "polished"});
  record(book, {"P01-U01", "scrapped", "--note", "bubble", "--back-to", "moulded"});
  const int of_panel = static_cast<int>(marks.size()) / 8;
  EXPECT_EQ(count_of(book, "annealed"), of_panel - 3);
  EXPECT_EQ(count_of(book, "polished"), 2);
  EXPECT_EQ(count_of(book, "scrapped"), 1);

  // A change of values and its undo go past the ledger; each call opens the book anew.
  ASSERT_EQ(ask({"set", book, "section.edge_mm=4.5"}).code, 0);
  ASSERT_EQ(ask({"undo", book}).code, 0);
  EXPECT_EQ(value_of(book, "section.edge_mm"), 4);
  EXPECT_EQ(value_of(book, "material.index"), 1.4918);
  EXPECT_EQ(count_of(book, "polished"), 2);
  ASSERT_EQ(ask({"redo", book}).code, 0);
  EXPECT_EQ(value_of(book, "section.edge_mm"), 4.5);
  expect_proved(book, 0.001);
}

TEST_F(FourthOrderBullseye, AnExportAfterAChangeReplacesWhatItWroteBefore) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"bodies", book, "--out", at("solids"), "--only", "P01-C"}).code, 0);
  const std::string before = bytes_of(at("solids/P01-C.step"));
  ASSERT_EQ(ask({"set", book, "section.edge_mm=6"}).code, 0);
  ASSERT_EQ(ask({"bodies", book, "--out", at("solids"), "--only", "P01-C"}).code, 0);
  EXPECT_NE(bytes_of(at("solids/P01-C.step")), before);
  expect_step_files("solids", {"P01-C.step"});
}

}  // namespace
}  // namespace prismwright
