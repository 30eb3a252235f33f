#include "core/works/ledger.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <set>

namespace prismwright {
namespace {

bool is_blank(const std::string& text) { return text.find_first_not_of(" \t\r\n") == std::string::npos; }

/// "mastered", "mastered and moulded", "mastered, moulded and cast": the stages between the two.
std::string stages_between(Stage from, Stage to) {
  std::string words;
  for (int i = static_cast<int>(from) + 1; i < static_cast<int>(to); ++i) {
    const bool last = i + 1 == static_cast<int>(to);
    if (!words.empty()) words += last ? " and " : ", ";
    words += name_of(static_cast<Stage>(i));
  }
  return words;
}

Problem skip_problem(const std::string& mark, Stage from, Stage to) {
  const bool one = static_cast<int>(to) - static_cast<int>(from) == 2;
  return request_problem(
      "skipped_stage", mark,
      fmt::format("{} is {}; {} skips {}. Write in a note why, or record {} first.", mark, name_of(from),
                  name_of(to), stages_between(from, to), one ? "that stage" : "those stages"));
}

Done check_restart(const std::string& mark, Stage back_to, const StepRequest& request) {
  if (request.to == back_to || !is_blank(request.note)) return {};
  return request_problem(
      "wrong_restart", mark,
      fmt::format("{} is scrapped and starts again from {}. Record {} first, or write in a note why it is {}.",
                  mark, name_of(back_to), name_of(back_to), name_of(request.to)));
}

Done check_move(const std::string& mark, Stage from, const StepRequest& request) {
  if (next_stage(from) == request.to || !is_blank(request.note)) return {};
  if (request.to > from) return skip_problem(mark, from, request.to);
  return request_problem("backward_stage", mark,
                         fmt::format("{} is {}; {} lies behind that. Write in a note why it goes back.", mark,
                                     name_of(from), name_of(request.to)));
}

Done check_scrap(const std::string& mark, Stage from, const StepRequest& request) {
  if (is_blank(request.note))
    return request_problem("scrap_without_note", mark,
                           fmt::format("Scrapping {} needs a note. Write what is wrong with it.", mark));
  if (!request.back_to || *request.back_to < from || (from == Stage::drawn && *request.back_to == from))
    return {};
  return request_problem("wrong_back_to", mark,
                         fmt::format("{} is {}, so it cannot start again from {}. Name a stage before {}.",
                                     mark, name_of(from), name_of(*request.back_to), name_of(from)));
}

Problem already_there(const std::string& mark, Stage stage) {
  const std::optional<Stage> next = next_stage(stage);
  return request_problem(
      "already_there", mark,
      next ? fmt::format("{} is {} already. Its next stage is {}.", mark, name_of(stage), name_of(*next))
           : fmt::format("{} is {} already. Leave it out.", mark, name_of(stage)));
}

Done check_step(const std::string& mark, const StageByMark& now, const StepRequest& request) {
  const Stage from = now.stage_of(mark);
  if (from == request.to) return already_there(mark, from);
  if (request.to == Stage::scrapped) return check_scrap(mark, from, request);
  if (from != Stage::scrapped) return check_move(mark, from, request);
  const auto restart = now.back_to.find(mark);
  return check_restart(mark, restart == now.back_to.end() ? Stage::moulded : restart->second, request);
}

Stage usual_restart(Stage from) {
  if (from > Stage::moulded) return Stage::moulded;
  return from == Stage::drawn ? Stage::drawn : static_cast<Stage>(static_cast<int>(from) - 1);
}

LedgerEntry make_line(const std::string& mark, Stage from, const StageByMark& now, const StepRequest& request) {
  LedgerEntry line;
  line.mark = mark;
  line.from = from;
  line.to = request.to;
  line.by = request.by;
  line.note = request.note;
  if (request.to == Stage::scrapped) line.back_to = request.back_to.value_or(usual_restart(from));
  if (request.to == Stage::cast) line.load = request.load;
  // A step up to cast makes a new casting; any later one, and scrapping, belongs to the casting there is.
  const auto casting = now.serial.find(mark);
  if (request.to > Stage::cast && casting != now.serial.end()) line.serial = casting->second;
  return line;
}

Done check_request(const StepRequest& request) {
  if (request.marks.empty())
    return request_problem("no_mark", "",
                           "No prism is named. Name at least one by its mark, for instance P01-C.");
  if (request.back_to && request.to != Stage::scrapped)
    return request_problem("back_to_without_scrap", std::string(name_of(*request.back_to)),
                           fmt::format("A stage to go back to belongs to scrapping, not to {}. Leave it out.",
                                       name_of(request.to)));
  return {};
}

}  // namespace

Stage StageByMark::stage_of(const std::string& mark) const {
  const auto found = find(mark);
  return found == end() ? Stage::drawn : found->second;
}

StageByMark stages_from(std::span<const LedgerEntry> ledger) {
  StageByMark now;
  for (const LedgerEntry& line : ledger) {
    now[line.mark] = line.to;
    now.back_to.erase(line.mark);
    if (line.to == Stage::scrapped) now.back_to[line.mark] = line.back_to.value_or(Stage::moulded);
    if (line.to >= Stage::cast && line.to != Stage::scrapped && line.serial != 0)
      now.serial[line.mark] = line.serial;
    else
      now.serial.erase(line.mark);
  }
  return now;
}

Outcome<std::vector<LedgerEntry>> plan_steps(const StepRequest& request, const StageByMark& now,
                                             std::span<const std::string> known_marks) {
  if (Done fit = check_request(request); !fit) return fit.problem();
  const std::set<std::string_view> known(known_marks.begin(), known_marks.end());
  std::set<std::string_view> seen;
  std::vector<LedgerEntry> lines;
  for (const std::string& mark : request.marks) {
    if (!seen.insert(mark).second) continue;
    if (!known.contains(mark))
      return request_problem(
          "unknown_mark", mark,
          fmt::format("{} is no prism of this lens. Take a mark from its list of prisms.", mark));
    if (Done fit = check_step(mark, now, request); !fit) return fit.problem();
    lines.push_back(make_line(mark, now.stage_of(mark), now, request));
  }
  return lines;
}

std::string zone_of_mark(std::string_view mark) {
  std::string_view zone = mark.substr(mark.find('-') + 1);  // npos + 1 is 0: no panel, the mark is the zone
  if (!zone.empty() && (zone.back() == 'a' || zone.back() == 'b')) zone.remove_suffix(1);
  return std::string(zone);
}

StageCounts count_stages(const StageByMark& now, std::span<const std::string> known_marks) {
  StageCounts counts;
  for (const std::string& mark : known_marks) {
    const auto stage = static_cast<std::size_t>(now.stage_of(mark));
    ++counts.all.at(stage);
    ++counts.by_zone[zone_of_mark(mark)].at(stage);
    ++counts.total;
  }
  return counts;
}

}  // namespace prismwright
