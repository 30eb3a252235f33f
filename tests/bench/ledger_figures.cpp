// Prints what a ledger of 100 000 lines costs: opening, recording to disk, working out where each prism stands.
//   cmake --preset bench && cmake --build --preset bench --target prismwright_ledger_figures
//   build/bench/tests/bench/prismwright_ledger_figures [folder on the disk to measure]
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <functional>

#include "core/book/lensbook.h"
#include "core/works/spares.h"

namespace prismwright {
namespace {

constexpr int kLines = 100'000;
constexpr int kPrisms = 320;

struct Cost {
  double wall_ms = 0;
  double cpu_ms = 0;  ///< of this process: what is left of it on a busy machine
};

Cost cost_of(const std::function<void()>& act) {
  const auto start = std::chrono::steady_clock::now();
  const std::clock_t cpu = std::clock();
  act();
  const std::chrono::duration<double, std::milli> wall = std::chrono::steady_clock::now() - start;
  return {wall.count(), 1000.0 * static_cast<double>(std::clock() - cpu) / CLOCKS_PER_SEC};
}

/// Runs an act some times and prints medians and the slowest.
void print_costs(const char* what, int times, const std::function<void()>& act) {
  std::vector<double> wall;
  std::vector<double> cpu;
  for (int i = 0; i < times; ++i) {
    const Cost cost = cost_of(act);
    wall.push_back(cost.wall_ms);
    cpu.push_back(cost.cpu_ms);
  }
  std::ranges::sort(wall);
  std::ranges::sort(cpu);
  fmt::print("{:<34} median {:8.2f} ms ({:.2f} ms of it at work), slowest {:.2f} ms, {} times\n", what,
             wall[wall.size() / 2], cpu[cpu.size() / 2], wall.back(), times);
  std::fflush(stdout);
}

std::vector<LedgerEntry> many_lines() {
  std::vector<LedgerEntry> lines(kLines);
  for (int i = 0; i < kLines; ++i) {
    LedgerEntry& line = lines[static_cast<std::size_t>(i)];
    const int prism = i % kPrisms;
    line.mark = fmt::format("P{:02}-U{:02}", 1 + prism % 8, 1 + prism / 8);
    line.from = static_cast<Stage>(i / kPrisms % 7);
    line.to = *next_stage(line.from);
    line.by = "E. Marsh";
    if (i % 5 == 0) line.note = "from the second print, in the new mould";
  }
  return lines;
}

/// A tray of twelve prisms with its load and a small photograph, or one line alone.
void record_tray(Lensbook& book, std::size_t lines, bool with_log) {
  const std::vector<LedgerEntry> tray(book.ledger().end() - static_cast<std::ptrdiff_t>(lines),
                                      book.ledger().end());
  WorksLog log;
  if (with_log) {
    log.loads = {{0, "", "clear syrup", "lot 7", "", 800, 4, 0, "", ""}};
    log.photographs = {{0, "", "P01-U01", 0, "tray.jpg", "image/jpeg", "\xFF\xD8\xFF", "", ""}};
    log.photographs[0].bytes.resize(200'000, 'x');
  }
  const Done done = book.record(tray, log);
  if (!done) fmt::print("{}\n", done.problem().text);
}

/// What the disk itself takes to have one page written for good.
void print_disk(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT, 0600);
  const std::string page(4096, 'x');
  print_costs("the disk alone: one page, synced", 40, [&] {
    if (::pwrite(file, page.data(), page.size(), 0) < 0 || ::fdatasync(file) < 0) fmt::print("no disk\n");
  });
  ::close(file);
  std::filesystem::remove(path);
}

int print_figures(const std::filesystem::path& folder) {
  const std::string path = (folder / fmt::format("figures-{}.lensbook", ::getpid())).string();
  print_disk(path + ".page");
  {
    auto made = Lensbook::create(path, {});
    if (!made) return fmt::print("{}\n", made.problem().text), 1;
    print_costs("record 100 000 lines at once", 1, [&] { static_cast<void>(made->record(many_lines()).ok()); });
  }
  print_costs("open for writing", 7, [&] { static_cast<void>(Lensbook::open(path).ok()); });
  print_costs("open read-only", 7,
              [&] { static_cast<void>(Lensbook::open(path, Lensbook::Access::read_only).ok()); });
  auto book = Lensbook::open(path);
  if (!book) return fmt::print("{}\n", book.problem().text), 1;
  print_costs("record one line", 40, [&] { record_tray(*book, 1, false); });
  print_costs("record a tray, load, photograph", 40, [&] { record_tray(*book, 12, true); });
  StageByMark now;
  print_costs("stages_from", 20, [&] { now = stages_from(book->ledger()); });
  std::vector<std::string> marks;
  for (const auto& [mark, stage] : now) marks.push_back(mark);
  print_costs("count_stages", 20, [&] { static_cast<void>(count_stages(now, marks).total); });
  print_costs("workable_marks", 20, [&] { static_cast<void>(workable_marks(marks, book->ledger()).size()); });
  fmt::print("{} lines, {} prisms, file {:.1f} MB\n", book->ledger().size(), marks.size(),
             static_cast<double>(std::filesystem::file_size(path)) / 1e6);
  std::filesystem::remove(path);
  return 0;
}

}  // namespace
}  // namespace prismwright

int main(int count, char** words) {
  return prismwright::print_figures(count > 1 ? std::filesystem::path(words[1])
                                              : std::filesystem::temp_directory_path());
}
