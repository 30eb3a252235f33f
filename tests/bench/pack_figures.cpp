#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <sys/resource.h>

#include "core/book/lensbook.h"
#include "core/lens/quantities.h"
#include "core/lens/section_edits.h"
#include "geometry/despatch/pack.h"
#include "tests/support/empty_folder.h"

// How long the pack of every sample takes, by its stages, how large it is, and what memory it asks for: first
// from nothing, then after one changed zone. Seconds by the clock, and in brackets of the processor.

using namespace prismwright;

namespace {

constexpr double kSmaller = 0.97;  ///< side of the changed zone

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

double processor_s() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

double peak_mib() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return static_cast<double>(used.ru_maxrss) / 1024;
}

/// Time by the first words of what the work says it is at: one stage follows the other.
class Stages {
 public:
  void at(std::string_view what) {
    const std::string stage = stage_of(what);
    if (!rows_.empty() && rows_.back().stage == stage) return;
    end_row();
    rows_.push_back({stage, 0, 0});
    clock_ = Clock::now();
    processor_ = processor_s();
  }
  void print() {
    end_row();
    std::vector<Row> sums;
    for (const Row& row : rows_) {
      auto known =
          std::find_if(sums.begin(), sums.end(), [&](const Row& sum) { return sum.stage == row.stage; });
      if (known == sums.end()) known = sums.insert(sums.end(), {row.stage, 0, 0});
      known->clock_s += row.clock_s;
      known->processor_s += row.processor_s;
    }
    for (const Row& sum : sums)
      if (sum.clock_s > 0.05)
        fmt::print("    {:28} {:7.2f} s ({:.2f})\n", sum.stage, sum.clock_s, sum.processor_s);
  }

 private:
  struct Row {
    std::string stage;
    double clock_s = 0;
    double processor_s = 0;
  };
  /// Pieces of one kind count together: "Prism P01-U07", "Master U07, 8 prisms".
  static std::string stage_of(std::string_view what) {
    if (what.starts_with("P0") || what.starts_with("P1")) return "solids and clearances";
    return std::string(what.substr(0, what.find_first_of(" ,:")));
  }
  void end_row() {
    if (rows_.empty()) return;
    rows_.back().clock_s = seconds_since(clock_);
    rows_.back().processor_s = processor_s() - processor_;
  }

  std::vector<Row> rows_;
  Clock::time_point clock_;
  double processor_ = 0;
};

std::uint64_t bytes_of(const PackManifest& manifest) {
  std::uint64_t bytes = 0;
  for (const PackedPiece& packed : manifest.pieces)
    for (const PackedFile& file : packed.files) bytes += file.bytes;
  return bytes;
}

bool pack(const std::string& words, const Lensbook& book, const LensValues& values, const std::string& folder) {
  auto plan = plan_lens(values);
  if (!plan) {
    fmt::print("  {}: {}\n", words, plan.problem().text);
    return false;
  }
  DespatchSource source;
  source.plan = std::make_shared<const LensPlan>(std::move(plan).value());
  source.book_name = "book";
  source.ledger = book.ledger();
  source.log = book.works_log();
  source.readings = book.readings();
  source.photograph = [&](long long number) { return book.photograph_bytes(number); };
  DespatchDesk desk(std::move(source),
                    {.date = "2026-01-02", .revision = {}, .paper = {}, .inches = false, .estimate = {}});
  Stages stages;
  const auto start = Clock::now();
  const double processor = processor_s();
  const auto report = write_pack(desk, {folder, {}}, [&](double, std::string_view what) {
    stages.at(what);
    return true;
  });
  if (!report) {
    fmt::print("  {}: {}\n", words, report.problem().text);
    return false;
  }
  fmt::print(
      "  {}: {:.1f} s ({:.1f}), {} pieces made, {} kept, {:.1f} MB, {} withheld, peak memory so far {:.0f} "
      "MiB\n",
      words, seconds_since(start), processor_s() - processor, report->made_anew, report->kept,
      static_cast<double>(bytes_of(report->manifest)) / 1e6, report->withheld.size(), peak_mib());
  stages.print();
  std::fflush(stdout);
  return true;
}

void figures(const std::string& name) {
  const auto book =
      Lensbook::open(std::string(PRISMWRIGHT_SAMPLES) + "/" + name + ".lensbook", Lensbook::Access::read_only);
  if (!book) {
    fmt::print("{}: {}\n", name, book.problem().text);
    return;
  }
  fmt::print("{}\n", name);
  const EmptyFolder folder;
  if (!pack("first pack", *book, book->values(), folder.path())) return;
  pack("nothing changed", *book, book->values(), folder.path());
  // The last zone of the lower stack: no other zone moves with it.
  const auto section = solve_section(book->values().section_input());
  const Zone& last = section->zones.back();
  const auto edit = resize_zone(book->values(), *section, last.mark, SizeBy::side_mm, kSmaller * last.side_mm);
  const auto changed = edit ? with_assignments(book->values(), edit->assignments) : edit.problem();
  if (!changed) {
    fmt::print("  {}\n", changed.problem().text);
    return;
  }
  pack("one zone changed", *book, *changed, folder.path());
}

}  // namespace

/// Names of samples, or all three.
int main(int count, char** words) {
  std::vector<std::string> names(words + 1, words + count);
  if (names.empty()) names = {"sixth-order-belt", "fourth-order-bullseye", "first-order-group-flashing"};
  for (const std::string& name : names) figures(name);
}
