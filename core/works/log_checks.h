#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "core/base/outcome.h"
#include "core/works/works_log.h"

namespace prismwright {

// What an entry must say before the book takes it. Lensbook::record checks every entry with these; whether the
// lens has the mark is for the caller, who knows the lens. All refuse a negative serial number and numbers that
// are not finite.

/// The largest photograph that the book takes: 20 MB. Our own choice: a camera's largest JPEG is about that.
inline constexpr std::size_t kMostPhotograph_bytes = 20'000'000;
/// Shrinkage of a casting on its master that is no slip of the rule: cast acrylic loses up to about a fifth of
/// its volume, 7 % of each length (handbooks, from memory); the rest is room for other resins.
inline constexpr double kLeastShrink_percent = -5;
inline constexpr double kMostShrink_percent = 20;

/// Refuses a load without a resin, masses below nought or above a tonne, and more initiator or tint than resin.
Done check_load(const VesselLoad& load);
/// Refuses one without mark or feature, or beyond 100 000 of its unit.
Done check_measurement(const Measurement& measurement);
/// Refuses one without mark or reason.
Done check_decision(const Decision& decision);
/// Refuses one without piece, lengths that are not above nought and up to 5 m, and a shrinkage beyond the
/// limits above.
Done check_shrink_reading(const ShrinkReading& reading);
/// Refuses one without mark or name, without bytes, with more than kMostPhotograph_bytes, and bytes that are
/// not of the kind that `media` names (media_of).
Done check_photograph(const Photograph& photograph);
/// Refuses one without step, without hours and money, beyond 100 000 hours or ten million, and one below nought
/// (which takes an earlier one back) without a note.
Done check_spending(const Spending& spending);

/// All of them; the first that does not fit.
Done check_log(const WorksLog& log);

/// "image/jpeg" or "image/png" by the bytes that every such file begins with (ISO/IEC 10918-1: FF D8, then the
/// FF of the next marker; ISO/IEC 15948: 89 50 4E 47 0D 0A 1A 0A); empty for anything else.
std::string media_of(std::string_view bytes);

}  // namespace prismwright
