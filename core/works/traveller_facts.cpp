#include "core/works/traveller_facts.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/works/congruence.h"
#include "core/works/prism_size.h"
#include "core/works/section_corners.h"

namespace prismwright {

namespace {

constexpr std::size_t kDayLetters = 10;

std::string day_of(const std::string& when_utc) { return when_utc.substr(0, kDayLetters); }

std::string with_hand(std::string words, const std::string& by, const std::string& note) {
  if (!by.empty()) words += ", " + by;
  if (!note.empty()) words += ": " + note;
  return words;
}

TravellerPiece piece_of(const LensPlan& plan, const PlannedPrism& prism, const Master& master) {
  const PrismSize size = prism_size(prism, plan.values.material.density_g_cm3);
  TravellerPiece piece;
  piece.name = master.name;
  piece.words = fmt::format("{}, {:.1f} mm long, {:.1f} mm thick, {:.0f} g", name_of(prism.kind),
                            size.length_mm, size.thickest_mm, size.mass_g);
  piece.profile = prism.profile;
  piece.corners = lettered_corners(prism.profile);
  piece.features = features_of(prism, plan.values.works);
  return piece;
}

const VesselLoad* find_load(const WorksLog& log, long long number) {
  const auto found = std::ranges::find(log.loads, number, &VesselLoad::number);
  return found == log.loads.end() ? nullptr : &*found;
}

std::string load_words(const VesselLoad& load) {
  std::string words = fmt::format("load {}", load.number);
  if (!load.resin.empty()) words += ", " + load.resin;
  if (!load.resin_lot.empty()) words += ", lot " + load.resin_lot;
  if (!load.tint.empty()) words += ", tint " + load.tint;
  return words;
}

/// A line of the record with the time by which it is put in order.
struct RecordLine {
  std::string when_utc;
  std::string words;
};

void add_ledger_lines(const PaperFacts& facts, const std::string& mark, std::vector<RecordLine>& lines) {
  for (const LedgerEntry& line : facts.ledger) {
    if (line.mark != mark) continue;
    if (line.to == Stage::scrapped) lines.push_back({line.when_utc, with_hand("scrapped", line.by, line.note)});
    if (line.to != Stage::cast) continue;
    std::string words = line.serial == 0 ? "cast" : fmt::format("no. {} cast", line.serial);
    if (const VesselLoad* load = find_load(facts.log, line.load)) words += ", " + load_words(*load);
    lines.push_back({line.when_utc, words});
  }
}

void add_log_lines(const PaperFacts& facts, const std::string& mark, long long serial,
                   std::vector<RecordLine>& lines) {
  const auto stands = [&](const auto& entry) {
    return entry.mark == mark && (entry.serial == serial || entry.serial == 0);
  };
  for (const Measurement& entry : facts.log.measurements) {
    if (stands(entry))
      lines.push_back(
          {entry.when_utc, with_hand(entry.feature + " " + shortest(entry.measured), entry.by, entry.note)});
  }
  for (const Decision& entry : facts.log.decisions) {
    const char* word = entry.kind == DecisionKind::accept ? "accepted"
                       : entry.kind == DecisionKind::shim ? "to be shimmed"
                                                          : "to be scrapped";
    if (stands(entry)) lines.push_back({entry.when_utc, with_hand(word, entry.by, entry.note)});
  }
  for (const Photograph& entry : facts.log.photographs) {
    if (stands(entry))
      lines.push_back({entry.when_utc, with_hand("photograph " + entry.name, entry.by, entry.note)});
  }
}

std::vector<std::string> record_of(const PaperFacts& facts, const std::string& mark, long long serial) {
  std::vector<RecordLine> lines;
  add_ledger_lines(facts, mark, lines);
  add_log_lines(facts, mark, serial, lines);
  std::ranges::stable_sort(lines, {}, &RecordLine::when_utc);
  std::vector<std::string> words;
  for (const RecordLine& line : lines) words.push_back(day_of(line.when_utc) + " " + line.words);
  return words;
}

std::size_t piece_index(std::vector<TravellerPiece>& pieces, const LensPlan& plan, const Master& master) {
  const auto found = std::ranges::find(pieces, master.name, &TravellerPiece::name);
  if (found != pieces.end()) return static_cast<std::size_t>(found - pieces.begin());
  pieces.push_back(piece_of(plan, plan.prisms[master.prism], master));
  return pieces.size() - 1;
}

long long serial_of(const StageByMark& now, const std::string& mark) {
  const auto found = now.serial.find(mark);
  return found == now.serial.end() ? 0 : found->second;
}

}  // namespace

std::map<Stage, TravellerStamp> stages_reached(std::span<const LedgerEntry> ledger, const std::string& mark) {
  std::map<Stage, TravellerStamp> reached;
  for (const LedgerEntry& line : ledger) {
    if (line.mark != mark) continue;
    const Stage stands = line.to == Stage::scrapped ? line.back_to.value_or(Stage::moulded) : line.to;
    reached.erase(reached.upper_bound(stands), reached.end());
    if (line.to != Stage::scrapped) reached[line.to] = {day_of(line.when_utc), line.by, line.note};
  }
  return reached;
}

Outcome<Traveller> traveller_of(const PaperFacts& facts, const std::vector<std::string>& marks) {
  const std::vector<Master> masters = masters_of(facts.plan);
  const StageByMark now = stages_from(facts.ledger);
  Traveller traveller;
  traveller.title = facts.plan.values.brief.title;
  traveller.date = facts.date;
  for (const std::string& mark : marks) {
    const Master* master = master_of_mark(masters, mark);
    if (!master)
      return request_problem(
          "unknown_mark", mark,
          fmt::format("{} is no prism of this lens. Take a mark from its list of prisms.", mark));
    const std::size_t piece = piece_index(traveller.pieces, facts.plan, *master);
    const long long serial = serial_of(now, mark);
    traveller.castings.push_back(
        {mark, serial, piece, stages_reached(facts.ledger, mark), record_of(facts, mark, serial)});
  }
  return traveller;
}

std::vector<PrismLabel> labels_of(const PaperFacts& facts, const std::vector<std::string>& marks) {
  const StageByMark now = stages_from(facts.ledger);
  std::map<std::string, const LedgerEntry*> cast;
  for (const LedgerEntry& line : facts.ledger) {
    if (line.to == Stage::cast) cast[line.mark] = &line;
  }
  std::vector<PrismLabel> labels;
  for (const std::string& mark : marks) {
    PrismLabel label{mark, serial_of(now, mark), {facts.plan.values.brief.title}};
    if (const auto found = cast.find(mark); label.serial != 0 && found != cast.end()) {
      label.lines.push_back("cast " + day_of(found->second->when_utc));
      if (const VesselLoad* load = find_load(facts.log, found->second->load))
        label.lines.push_back(load_words(*load));
    }
    labels.push_back(std::move(label));
  }
  return labels;
}

}  // namespace prismwright
