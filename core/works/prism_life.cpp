#include "core/works/prism_life.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string_view>
#include <tuple>

#include "core/base/csv_cell.h"
#include "core/works/spares.h"

namespace prismwright {
namespace {

std::string casting_words(long long serial) { return serial == 0 ? "" : fmt::format(", casting {}", serial); }

std::string words_of(const LedgerEntry& line) {
  if (gives_away(line))
    return fmt::format("Casting {} left {}, which is {} again.", line.serial, line.mark, name_of(line.to));
  std::string words = fmt::format("{} went from {} to {}", line.mark, name_of(line.from), name_of(line.to));
  words += casting_words(line.serial);
  if (line.load != 0) words += fmt::format(", in load {}", line.load);
  if (line.back_to) words += fmt::format("; it starts again from {}", name_of(*line.back_to));
  return words + ".";
}

std::string words_of(const VesselLoad& load) {
  std::string words = fmt::format("Load {} was filled: {}", load.number, load.resin);
  if (!load.resin_lot.empty()) words += fmt::format(", lot {}", load.resin_lot);
  words += load.tint.empty() ? std::string(", no tint") : fmt::format(", tint {}", load.tint);
  if (load.resin_g > 0)
    words += fmt::format("; {:g} g resin, {:g} g initiator, {:g} g tint", load.resin_g, load.initiator_g,
                         load.tint_g);
  return words + ".";
}

std::string words_of(const Measurement& one) {
  return fmt::format("{}{}: {} was measured as {:g}.", one.mark, casting_words(one.serial), one.feature,
                     one.measured);
}

std::string words_of(const Decision& one) {
  constexpr auto did = [](DecisionKind kind) {
    if (kind == DecisionKind::accept) return "accepted as it is";
    return kind == DecisionKind::shim ? "to be set with a shim" : "to be scrapped";
  };
  return fmt::format("{}{}: {}.", one.mark, casting_words(one.serial), did(one.kind));
}

std::string words_of(const BenchReading& one) {
  return fmt::format("{}: its spot stood {:g} mm high and {:g} mm to the left on a board at {:g} mm.", one.mark,
                     one.height_mm, one.aside_mm, one.board_mm);
}

std::string words_of(const Photograph& one) {
  return fmt::format("{}{}: photograph {}, {}.", one.mark, casting_words(one.serial), one.number, one.name);
}

struct Told {
  LifeEvent event;
  long long number = 0;
};

/// Gathers what belongs to a life and lays it in order.
class LifeBook {
 public:
  explicit LifeBook(const WorksRecord& record) : record_(record) {}

  /// Takes the loads that the wanted lines name, and every entry that is wanted: wanted(mark, serial, when).
  template <class WantedLine, class Wanted>
  std::vector<LifeEvent> told(const WantedLine& wanted_line, const Wanted& wanted) {
    std::set<long long> loads;
    for (const LedgerEntry& line : record_.ledger) {
      if (!wanted_line(line)) continue;
      add(LifeKind::stage, line);
      if (line.load != 0) loads.insert(line.load);
    }
    for (const VesselLoad& load : record_.log.loads)
      if (loads.contains(load.number)) add(LifeKind::load, load);
    add_all(LifeKind::measurement, record_.log.measurements, wanted);
    add_all(LifeKind::decision, record_.log.decisions, wanted);
    add_all(LifeKind::photograph, record_.log.photographs, wanted);
    for (const BenchReading& one : record_.readings)
      if (wanted(one.mark, 0, one.when_utc)) add(LifeKind::bench, one);
    return in_order();
  }

 private:
  template <class Entry>
  void add(LifeKind kind, const Entry& entry) {
    told_.push_back({{entry.when_utc, words_of(entry), entry.by, entry.note, kind}, entry.number});
  }
  template <class Entry, class Wanted>
  void add_all(LifeKind kind, const std::vector<Entry>& entries, const Wanted& wanted) {
    for (const Entry& one : entries)
      if (wanted(one.mark, one.serial, one.when_utc)) add(kind, one);
  }
  std::vector<LifeEvent> in_order() {
    std::ranges::stable_sort(told_, {}, [](const Told& one) {
      return std::tuple(std::string_view(one.event.when_utc), one.event.kind, one.number);
    });
    std::vector<LifeEvent> life;
    for (Told& one : told_) life.push_back(std::move(one.event));
    return life;
  }

  const WorksRecord& record_;
  std::vector<Told> told_;
};

/// Which casting stood for a mark at a time.
class Standing {
 public:
  explicit Standing(std::span<const LedgerEntry> ledger) {
    for (const LedgerEntry& line : ledger) {
      const bool stands = line.to >= Stage::cast && line.to != Stage::scrapped;
      by_mark_[line.mark].push_back({line.when_utc, stands ? line.serial : 0});
    }
  }
  [[nodiscard]] long long at(const std::string& mark, const std::string& when_utc) const {
    const auto found = by_mark_.find(mark);
    if (found == by_mark_.end()) return 0;
    long long serial = 0;
    for (const Since& since : found->second) {
      if (since.when_utc > when_utc) break;  // ISO 8601 in UTC sorts as text
      serial = since.serial;
    }
    return serial;
  }

 private:
  struct Since {
    std::string when_utc;
    long long serial = 0;
  };
  std::map<std::string, std::vector<Since>> by_mark_;
};

}  // namespace

std::string_view name_of(LifeKind kind) {
  switch (kind) {
    case LifeKind::stage:
      return "stage";
    case LifeKind::load:
      return "load";
    case LifeKind::measurement:
      return "measurement";
    case LifeKind::decision:
      return "decision";
    case LifeKind::bench:
      return "bench";
    case LifeKind::photograph:
      return "photograph";
  }
  return "";
}

std::vector<LifeEvent> life_of_mark(const WorksRecord& record, const std::string& mark) {
  std::set<long long> brought;  // castings that came under another mark
  for (const LedgerEntry& line : record.ledger)
    if (line.mark == mark && line.serial != 0 && !gives_away(line)) brought.insert(line.serial);
  const auto of_spare = [&](const std::string& its_mark, long long serial) {
    return is_spare_mark(its_mark) && brought.contains(serial);
  };
  return LifeBook(record).told(
      [&](const LedgerEntry& line) { return line.mark == mark || of_spare(line.mark, line.serial); },
      [&](const std::string& its_mark, long long serial, const std::string&) {
        return its_mark == mark || of_spare(its_mark, serial);
      });
}

Outcome<std::vector<LifeEvent>> life_of_casting(const WorksRecord& record, long long serial) {
  const auto of_it = [&](const LedgerEntry& line) { return line.serial == serial; };
  if (serial < 1 || std::ranges::none_of(record.ledger, of_it))
    return request_problem(
        "unknown_serial", std::to_string(serial),
        fmt::format("No casting has the serial number {}. Take a number from the ledger.", serial));
  const Standing standing(record.ledger);
  return LifeBook(record).told(of_it,
                               [&](const std::string& mark, long long its_serial, const std::string& when) {
                                 return (its_serial != 0 ? its_serial : standing.at(mark, when)) == serial;
                               });
}

std::string life_csv(std::span<const LifeEvent> life) {
  std::string text = "when_utc,kind,what,by,note\n";
  for (const LifeEvent& event : life)
    text += fmt::format("{},{},{},{},{}\n", event.when_utc, name_of(event.kind), csv_cell(event.what),
                        csv_cell(event.by), csv_cell(event.note));
  return text;
}

}  // namespace prismwright
