#include <cmath>

#include "tests/journeys/whole_job.h"

namespace prismwright {
namespace {

class FirstOrderGroupFlashing : public WholeJob {};

TEST_F(FirstOrderGroupFlashing, FromTheOrderToSolidsAndARecord) {
  const std::string book = make_book(
      {"--order", "1", "--work", "bullseye", "--panels", "9", "--faces", "arc", "--character", "Fl(3) 20s"});
  ASSERT_EQ(ask({"set", book, "panels.widths_deg=42,36,42,42,36,42,42,36,42",
                 "panels.axis_shift_deg=9,0,-9,9,0,-9,9,0,-9"})
                .code,
            0);
  expect_proved(book, 0.2);

  ASSERT_EQ(ask({"bodies", book, "--out", at("solids"), "--only", "P02-C", "P02-R9*", "P02-U03"}).code, 0);
  expect_step_files("solids", {"P02-C.step", "P02-R9a.step", "P02-R9b.step", "P02-U03.step"});

  expect_no_clash(book);

  record(book, {"P01-*", "P02-*", "P03-*", "mastered", "--by", "print room"});
  EXPECT_EQ(count_of(book, "mastered"), static_cast<int>(marks_of(book).size()) / 3);
  const auto ledger = [&] { return ask({"works", book, "list", "--json"}).json().at("ledger"); };
  const auto recorded = ledger();
  ASSERT_EQ(ask({"undo", book}).code, 0) << "the panels";
  EXPECT_EQ(value_of(book, "panels.widths_deg")[0], 40);
  EXPECT_EQ(ledger(), recorded) << "undo must not touch the ledger";
  ASSERT_EQ(ask({"redo", book}).code, 0);
  EXPECT_EQ(value_of(book, "panels.widths_deg")[0], 42);
  EXPECT_EQ(count_of(book, "mastered"), static_cast<int>(marks_of(book).size()) / 3);
}

TEST_F(FirstOrderGroupFlashing, TheAxesMakeThreeGroupsOfThree) {
  const std::string sample =
      std::string(SOURCE_FOLDER) + "/sample-projects/first-order-group-flashing.lensbook";
  const auto lens = ask({"show", sample, "--json"}).json();
  const auto& panels = lens.at("panels");
  ASSERT_EQ(panels.size(), 9u);
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const double here = panels[i].at("axis_deg");
    const double next = panels[(i + 1) % 9].at("axis_deg");
    // In a turn of 60 s flashes follow by 5, 5 and 10 s.
    EXPECT_NEAR(std::fmod(next - here + 360, 360), i % 3 == 2 ? 60 : 30, 1e-9) << "panel " << i + 1;
  }
}

}  // namespace
}  // namespace prismwright
