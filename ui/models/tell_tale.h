#pragma once

#include <QString>
#include <QStringList>
#include <array>

#include "ui/models/workbench.h"

namespace prismwright {

/// The pages of the rail, in the order of the job.
enum class Page { brief, section, lens, light, frame, works, despatch };
inline constexpr std::size_t kPages = 7;

/// One sign of the strip that is always in sight.
struct TellTale {
  enum class State { well, amiss, unknown };
  State state = State::unknown;
  QString words;         ///< short: "Level within 0.000 deg"
  QString why;           ///< a sentence for the tip: what is judged, and against what
  Page page;             ///< where the cause is to be seen
  QStringList culprits;  ///< prisms that it comes from, the leading one first; may be empty
};

/// Worst departure from level, light lost, tightest clearance, prisms glazed, in this order.
std::array<TellTale, 4> tell_tales_of(const Workbench& bench);

}  // namespace prismwright
