#include "tests/journeys/whole_job.h"

namespace prismwright {
namespace {

class SixthOrderBelt : public WholeJob {};

TEST_F(SixthOrderBelt, FromTheOrderToSolidsAndARecord) {
  const std::string book = make_book({"--order", "6", "--work", "belt", "--panels", "6", "--character", "F"});
  ASSERT_EQ(ask({"set", book, "panels.blind=4"}).code, 0);
  expect_proved(book, 0.001);

  const std::vector<std::string> marks = marks_of(book);
  for (const std::string& mark : marks) EXPECT_FALSE(mark.starts_with("P04-")) << "panel 4 is blind";
  ASSERT_EQ(ask({"bodies", book, "--out", at("solids"), "--step", "--stl"}).code, 0);
  for (const std::string& mark : marks) {
    EXPECT_TRUE(std::filesystem::exists(at("solids/" + mark + ".step")));
    // A binary STL holds 80 bytes, a count and 50 bytes for each facet.
    const auto bytes = std::filesystem::file_size(at("solids/" + mark + ".stl"));
    EXPECT_EQ((bytes - 84) % 50, 0u) << mark;
    EXPECT_GT(bytes, 84u + 50u * 12u) << mark;
  }
  expect_no_clash(book);

  for (const char* stage : {"mastered", "moulded", "cast", "annealed", "polished", "proved", "glazed"}) {
    record(book, {"P01-*", stage});
  }
  EXPECT_EQ(count_of(book, "glazed"), static_cast<int>(marks.size()) / 5);

  // With the blind panel opened again its prisms are there, drawn; undo takes them away again.
  ASSERT_EQ(ask({"set", book, "panels.blind="}).code, 0);
  EXPECT_EQ(marks_of(book).size(), marks.size() / 5 * 6);
  EXPECT_EQ(count_of(book, "glazed"), static_cast<int>(marks.size()) / 5);
  ASSERT_EQ(ask({"undo", book}).code, 0);
  EXPECT_EQ(marks_of(book), marks);
}

TEST_F(SixthOrderBelt, HistoricArcsDepartALittleAndNoMore) {
  const std::string book = make_book({"--order", "6", "--work", "belt", "--panels", "6", "--faces", "arc"});
  const auto proof = ask({"prove", book, "--json"}).json();
  EXPECT_GT(proof.at("worst_departure_deg").get<double>(), 0.05);
  EXPECT_LT(proof.at("worst_departure_deg").get<double>(), 0.3);
  EXPECT_EQ(proof.at("share_escaped"), 0);
}

}  // namespace
}  // namespace prismwright
