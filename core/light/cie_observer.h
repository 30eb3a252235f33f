#pragma once

#include <span>

namespace prismwright {

/// One row of the colour matching functions.
struct ObserverRow {
  double nm = 0;
  double x = 0;
  double y = 0;  ///< also the eye's luminous efficiency by day, 1 at 555 nm
  double z = 0;
};

/// The CIE 1931 standard observer of 2 degrees: 81 rows from 380 to 780 nm in steps of 5 nm, as the CIE
/// publishes them. Source: the general-purpose package yorick-data, file cie.i (BSD licence), which took them
/// from the CIE's own table.
std::span<const ObserverRow> observer_table();

}  // namespace prismwright
