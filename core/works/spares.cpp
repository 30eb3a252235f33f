#include "core/works/spares.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <set>

namespace prismwright {
namespace {

/// The number of a spare mark; blank when the mark is none.
std::optional<int> spare_number(std::string_view mark) {
  const std::size_t dash = mark.find('-');
  if (dash == std::string_view::npos || dash < 3 || dash + 1 == mark.size() || mark.front() != 'S') return {};
  int number = 0;
  const char* const end = mark.data() + dash;
  const auto [after, trouble] = std::from_chars(mark.data() + 1, end, number);
  if (trouble != std::errc() || after != end || number < 1) return {};
  if (fmt::format("{:02}", number) != mark.substr(1, dash - 1)) return {};  // one way to write each
  return number;
}

/// Pieces of the lens and, for masters that are named by a panel, pieces with their panels.
std::set<std::string> pieces_of(std::span<const std::string> lens_marks) {
  std::set<std::string> pieces;
  for (const std::string& mark : lens_marks) {
    const std::string piece = piece_of_mark(mark);
    pieces.insert(fmt::format("{}-{}", piece, mark.substr(0, mark.find('-'))));
    pieces.insert(piece);
  }
  return pieces;
}

Problem spare_problem(std::string code, const std::string& where, std::string text) {
  return request_problem(std::move(code), where, std::move(text));
}

Done check_same_master(const std::string& mark, const std::string& spare, std::span<const Master> masters) {
  const Master* wanted = master_of_mark(masters, mark);
  if (!wanted)
    return spare_problem(
        "unknown_mark", mark,
        fmt::format("{} is no prism of this lens. Take a mark from its list of prisms.", mark));
  if (!is_spare_mark(spare))
    return spare_problem(
        "no_spare", spare,
        fmt::format("\"{}\" is no mark of a spare. They are written like S01-{}.", spare, wanted->name));
  if (master_of_spare(masters, spare) == wanted) return {};
  return spare_problem(
      "other_piece", spare,
      fmt::format("{} is a spare of another piece; {} is cast from {}. Take a spare of that, for "
                  "instance S01-{}.",
                  spare, mark, wanted->name, wanted->name));
}

Done check_sound(const std::string& spare, const StageByMark& now) {
  const Stage stage = now.stage_of(spare);
  const bool cast = stage >= Stage::cast && stage < Stage::glazed && now.serial.contains(spare);
  if (cast) return {};
  return spare_problem(
      "spare_not_cast", spare,
      stage >= Stage::glazed || stage < Stage::cast
          ? fmt::format("{} is {}; a spare is given from cast to proved. Take another spare, or "
                        "record it first.",
                        spare, name_of(stage))
          : fmt::format("{} has no serial number, so it cannot be told which casting it is. "
                        "Record its casting first.",
                        spare));
}

Done check_in_want(const std::string& mark, const StageByMark& now) {
  const Stage stage = now.stage_of(mark);
  if (stage < Stage::cast || stage == Stage::scrapped) return {};
  return spare_problem("has_casting", mark,
                       fmt::format("{} is {} and has a casting. Scrap that first if it is to have another.",
                                   mark, name_of(stage)));
}

std::string joined(std::string words, const std::string& note) {
  return note.empty() ? words : fmt::format("{}: {}", words, note);
}

LedgerEntry line_of(const std::string& mark, Stage from, Stage to, const std::string& by, std::string note,
                    long long serial) {
  LedgerEntry line;
  line.mark = mark;
  line.from = from;
  line.to = to;
  line.by = by;
  line.note = std::move(note);
  line.serial = serial;
  return line;
}

}  // namespace

bool is_spare_mark(std::string_view mark) { return spare_number(mark).has_value(); }

const Master* master_of_spare(std::span<const Master> masters, std::string_view spare) {
  const std::string piece = piece_of_mark(spare);
  if (const Master* named = find_master(masters, piece)) return named;
  const auto serves = [&](const Master& master) {
    return std::ranges::any_of(master.uses,
                               [&](const MasterUse& use) { return piece_of_mark(use.mark) == piece; });
  };
  const auto found = std::ranges::find_if(masters, serves);
  return found == masters.end() ? nullptr : &*found;
}

std::vector<std::string> spare_marks(std::span<const LedgerEntry> ledger) {
  std::set<std::string_view> seen;
  std::vector<std::string> marks;
  for (const LedgerEntry& line : ledger) {
    // Most lines are of prisms, P01-...: told by a letter.
    if (line.mark.starts_with('S') && is_spare_mark(line.mark) && seen.insert(line.mark).second)
      marks.push_back(line.mark);
  }
  return marks;
}

std::string next_spare_mark(std::string_view piece, std::span<const LedgerEntry> ledger) {
  int highest = 0;
  for (const std::string& mark : spare_marks(ledger))
    if (piece_of_mark(mark) == piece) highest = std::max(highest, *spare_number(mark));
  return fmt::format("S{:02}-{}", highest + 1, piece);
}

std::vector<std::string> workable_marks(std::span<const std::string> lens_marks,
                                        std::span<const LedgerEntry> ledger,
                                        std::span<const std::string> asked) {
  std::vector<std::string> marks(lens_marks.begin(), lens_marks.end());
  std::vector<std::string> spares = spare_marks(ledger);
  std::ranges::copy_if(asked, std::back_inserter(spares),
                       [](const std::string& mark) { return is_spare_mark(mark); });
  if (spares.empty()) return marks;
  const std::set<std::string> pieces = pieces_of(lens_marks);
  std::set<std::string> added;
  for (const std::string& spare : spares)
    if (pieces.contains(piece_of_mark(spare)) && added.insert(spare).second) marks.push_back(spare);
  return marks;
}

Outcome<std::vector<LedgerEntry>> give_spare(const std::string& mark, const std::string& spare,
                                             const std::string& by, const std::string& note,
                                             const StageByMark& now, std::span<const Master> masters) {
  if (Done fit = check_same_master(mark, spare, masters); !fit) return fit.problem();
  if (Done fit = check_sound(spare, now); !fit) return fit.problem();
  if (Done fit = check_in_want(mark, now); !fit) return fit.problem();
  const Stage stage = now.stage_of(spare);
  const long long serial = now.serial.at(spare);
  return std::vector<LedgerEntry>{
      line_of(mark, now.stage_of(mark), stage, by, joined(fmt::format("given the spare {}", spare), note),
              serial),
      line_of(spare, stage, Stage::drawn, by, joined(fmt::format("given to {}", mark), note), serial)};
}

}  // namespace prismwright
