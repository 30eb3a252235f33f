#pragma once

#include <span>
#include <string>

#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

// Every table of the record as CSV (RFC 4180, lines ended by LF), oldest first, a line of column names before.
// Numbers are the shortest that read back exactly; a serial number or load of nought is left empty.

/// number, when_utc, mark, from, to, by, note, back_to, serial, load
std::string ledger_csv(std::span<const LedgerEntry> ledger);
/// number, when_utc, resin, resin_lot, tint, resin_g, initiator_g, tint_g, by, note
std::string vessel_loads_csv(std::span<const VesselLoad> loads);
/// number, when_utc, mark, serial, feature, measured, by, note; measured in the feature's unit
std::string measurements_csv(std::span<const Measurement> measurements);
/// number, when_utc, mark, serial, kind, by, note
std::string decisions_csv(std::span<const Decision> decisions);
/// number, when_utc, piece, direction, master_mm, casting_mm, resin, resin_lot, by, note
std::string shrink_readings_csv(std::span<const ShrinkReading> readings);
/// number, when_utc, mark, serial, name, media, by, note; without the bytes
std::string photographs_csv(std::span<const Photograph> photographs);
/// number, when_utc, step, hours, money, by, note; money in works.currency
std::string spendings_csv(std::span<const Spending> spendings);

}  // namespace prismwright
