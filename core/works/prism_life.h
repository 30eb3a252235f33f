#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/light/bench_reading.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

enum class LifeKind { stage, load, measurement, decision, bench, photograph };
std::string_view name_of(LifeKind kind);

/// One thing that happened to a prism or to one casting.
struct LifeEvent {
  std::string when_utc;
  std::string what;  ///< a sentence: "P03-U07 was cast: casting 12, in load 4."
  std::string by;    ///< may be empty
  std::string note;  ///< may be empty
  LifeKind kind = LifeKind::stage;
};

/// What a book holds of prisms; the spans must outlive the answers.
struct WorksRecord {
  std::span<const LedgerEntry> ledger;
  const WorksLog& log;
  std::span<const BenchReading> readings;
};

/// The whole life of a mark: its ledger lines, the loads that its castings were cast in, what was measured,
/// decided and read at the bench, and its photographs, in order of time; within one second in the order
/// of LifeKind, then of the book. Everything under the mark counts, castings that were scrapped too. A casting
/// that came as a spare brings along what happened to it under the spare's mark.
std::vector<LifeEvent> life_of_mark(const WorksRecord& record, const std::string& mark);

/// The life of one casting, under whatever marks it went. What names no serial number belongs to the casting
/// that stood for its mark at that time. Refuses a number that no line of the ledger names.
Outcome<std::vector<LifeEvent>> life_of_casting(const WorksRecord& record, long long serial);

/// when_utc, kind, what, by, note (RFC 4180)
std::string life_csv(std::span<const LifeEvent> life);

}  // namespace prismwright
