#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "core/light/bench_reading.h"
#include "core/light/light_report.h"
#include "core/works/congruence.h"
#include "core/works/ledger.h"
#include "geometry/bodies.h"

namespace prismwright {

// Tables of a pack as CSV (RFC 4180, lines ended by LF), a line of column names before. Numbers are the
// shortest that read back exactly unless it is said otherwise; a casting's number of nought is left empty.

/// mark, panel, zone, kind, master, turned, volume_mm3 (to 0.001), mass_g (to 0.001), length_mm (to 0.001),
/// stage, serial
std::string prisms_csv(const LensPlan& plan, const LensBodies& bodies, std::span<const Master> masters,
                       const StageByMark& stages);
/// mark, kind, from_deg, to_deg, thickness_mm, section_thickness_mm, area_mm2, side_mm (reflecting ones)
std::string zones_csv(const Section& section);

/// panel, colour, peak_s, peak_cd, length_at_half_s, length_at_twentieth_s, effective_cd
std::string flashes_csv(const LightReport& report);
/// visibility_nmi, white_nmi, red_nmi, green_nmi, yellow_nmi
std::string ranges_csv(const LightReport& report);
/// fate, lm, share, error_lm
std::string flux_csv(const LightReport& report);

/// number, when_utc, mark, height_mm, aside_mm, board_mm, by, note
std::string bench_readings_csv(std::span<const BenchReading> readings);

/// Number of the casting that stands for a mark; 0: none.
long long casting_of(const StageByMark& stages, const std::string& mark);

}  // namespace prismwright
