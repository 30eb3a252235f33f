#include "tests/book/book_fixture.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

constexpr int kLines = 100'000;
constexpr int kPrisms = 320;

std::string mark_of(int prism) {
  return "P0" + std::to_string(1 + prism % 8) + "-U" + std::to_string(10 + prism / 8);
}

/// Round after round, every prism one stage on; after the last stage it is scrapped and starts again.
std::vector<LedgerEntry> many_lines() {
  std::vector<LedgerEntry> lines;
  StageByMark now;
  for (int i = 0; i < kLines; ++i) {
    const std::string mark = mark_of(i % kPrisms);
    const Stage from = now.stage_of(mark);
    LedgerEntry one =
        line(mark, from, from == Stage::scrapped ? Stage::mastered : Stage::scrapped, "round again");
    if (from < Stage::glazed) one = line(mark, from, *next_stage(from));
    now[mark] = one.to;
    lines.push_back(one);
  }
  return lines;
}

class LargeLedger : public BookTest {};

TEST_F(LargeLedger, OfAHundredThousandLinesIsKeptReadAndAddedTo) {
  const std::vector<LedgerEntry> lines = many_lines();
  well(well(Lensbook::create(file("lens.lensbook"), {})).record(lines));
  Lensbook book = well(Lensbook::open(file("lens.lensbook")));
  ASSERT_EQ(book.ledger().size(), lines.size());
  long long castings = 0;
  for (int i = 0; i < kLines; ++i) {
    const LedgerEntry& read = book.ledger()[static_cast<std::size_t>(i)];
    const LedgerEntry& told = lines[static_cast<std::size_t>(i)];
    ASSERT_EQ(read.number, i + 1);
    ASSERT_EQ(read.mark, told.mark);
    ASSERT_EQ(read.to, told.to);
    ASSERT_EQ(read.note, told.note);
    ASSERT_EQ(read.serial, told.to == Stage::cast ? ++castings : 0);
  }
  const StageByMark now = stages_from(book.ledger());
  for (int prism = 0; prism < kPrisms; ++prism) {
    const int last = (kLines - 1 - prism) / kPrisms * kPrisms + prism;
    EXPECT_EQ(now.stage_of(mark_of(prism)), lines[static_cast<std::size_t>(last)].to);
  }
  const LedgerEntry casting = line("P01-U10", Stage::moulded, Stage::cast);
  well(book.record({&casting, 1}));
  EXPECT_EQ(book.ledger().back().number, kLines + 1);
  EXPECT_EQ(book.ledger().back().serial, castings + 1);
}

TEST_F(LargeLedger, WithOneLetterAlteredInItsMiddleIsRefused) {
  well(well(Lensbook::create(file("lens.lensbook"), {})).record(many_lines()));
  std::string bytes = bytes_of(file("lens.lensbook"));
  const std::size_t at = bytes.find("E. Marsh", bytes.size() / 2);
  ASSERT_NE(at, std::string::npos);
  bytes[at] = 'F';
  write_bytes(file("lens.lensbook"), bytes);
  const auto refused = Lensbook::open(file("lens.lensbook"));
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("altered outside Prismwright"));
}

}  // namespace
}  // namespace prismwright
