#pragma once

#include <QString>

#include "core/light/bench_check.h"

namespace prismwright {

/// The laser bench in words, for the window.

/// "0.109 deg too high, 0.020 deg to the left".
QString error_words(const BenchMend& mend);
/// "The beam goes 0.109 deg too high: shim the inner edge 0.03 mm."
QString mend_sentence(const BenchMend& mend);
/// "12 of 248 prisms read, 9 within 0.05 deg; worst P03-U05 at 0.210 deg; rms 0.310 deg before, 0.060 deg now."
QString summary_words(const BenchSummary& summary, double within_deg);
/// "416.0 mm up, 3.0 mm to the right": a place on the board or a spot beside its place.
QString place_words(const BoardPlace& place, bool inches);
/// The caution as the window says it.
QString laser_caution();

}  // namespace prismwright
