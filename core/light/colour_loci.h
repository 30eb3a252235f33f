#pragma once

#include <vector>

#include "core/light/eye.h"

namespace prismwright {

/// A point of a line in the chromaticity diagram, with what belongs to it.
struct LocusPoint {
  double value = 0;  ///< wavelength in nm, or temperature in K
  Chromaticity at;
};

/// The pure colours, every 5 nm from 380 to 780 nm, from the observer's table. A straight line from the last
/// to the first closes the diagram.
std::vector<LocusPoint> spectral_locus();

/// Black bodies between two temperatures, `count` of them (at least 2), evenly spaced by 1 / T, which is about
/// even along the line. Temperatures are held within 800 to 25000 K.
std::vector<LocusPoint> black_body_locus(double from_k, double to_k, int count);

}  // namespace prismwright
