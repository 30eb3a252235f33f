#pragma once

#include <gmock/gmock.h>

#include <string>
#include <tuple>
#include <vector>

#include "core/works/works_log.h"

namespace prismwright {

// Everything that an entry says, for comparing; number and time are the book's.
inline auto words_of(const VesselLoad& e) {
  return std::tuple(e.resin, e.resin_lot, e.tint, e.resin_g, e.initiator_g, e.tint_g, e.by, e.note);
}
inline auto words_of(const Measurement& e) {
  return std::tuple(e.mark, e.serial, e.feature, e.measured, e.by, e.note);
}
inline auto words_of(const Decision& e) { return std::tuple(e.mark, e.serial, e.kind, e.by, e.note); }
inline auto words_of(const ShrinkReading& e) {
  return std::tuple(e.piece, e.direction, e.master_mm, e.casting_mm, e.resin, e.resin_lot, e.by, e.note);
}
inline auto words_of(const Photograph& e) {
  return std::tuple(e.mark, e.serial, e.name, e.media, e.bytes, e.by, e.note);
}
inline auto words_of(const Spending& e) { return std::tuple(e.step, e.hours, e.money, e.by, e.note); }

template <class Entry>
bool same_words(const std::vector<Entry>& some, const std::vector<Entry>& others, const char* table,
                testing::MatchResultListener& listener) {
  if (some.size() != others.size()) {
    listener << table << ": " << some.size() << " entries, not " << others.size() << "; ";
    return false;
  }
  bool same = true;
  for (std::size_t i = 0; i < some.size(); ++i) {
    const bool numbered = some[i].number == static_cast<long long>(i) + 1 && some[i].when_utc.size() == 20;
    if (numbered && words_of(some[i]) == words_of(others[i])) continue;
    listener << table << ": entry " << i + 1 << " says something else; ";
    same = false;
  }
  return same;
}

/// Every entry of the log says exactly what the other's says, is numbered from 1 and has a time.
MATCHER_P(SaysWhat, other, "says what the other log says") {
  auto& to = *result_listener;
  // Not joined by &&: every table that differs is to be named.
  const int same = same_words(arg.loads, other.loads, "loads", to) +
                   same_words(arg.measurements, other.measurements, "measurements", to) +
                   same_words(arg.decisions, other.decisions, "decisions", to) +
                   same_words(arg.shrink, other.shrink, "shrink", to) +
                   same_words(arg.photographs, other.photographs, "photographs", to) +
                   same_words(arg.spendings, other.spendings, "spendings", to);
  return same == 6;
}

}  // namespace prismwright
