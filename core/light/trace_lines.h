#pragma once

#include <functional>
#include <vector>

#include "core/light/lamp_spectrum.h"

namespace prismwright {

/// One of a few wavelengths that stand for a whole light, so that a lens is traced a few times and not at
/// every nm.
struct TraceLine {
  double nm = 0;    ///< mean wavelength of its part of the light, weighed by luminous flux
  double flux = 0;  ///< luminous flux of the part
  Xyz xyz;          ///< tristimulus values of the part; xyz.y is the flux
  double left = 1;  ///< share of the flux that comes through what stands in the way
};

inline constexpr int kMostTraceLines = 12;

/// Cuts the light by wavelength into `count` parts (1 to 12, else the nearer of the two) of equal luminous
/// flux. Flux, xyz and the flux's mean wavelength of the whole light are kept exactly. A single line gives one;
/// a dark light gives none. Measured with illuminant A: the mean of 1 / nm^2, on which an index leans, is met
/// within 0.33 % by three parts, 0.17 % by five and 0.06 % by twelve. `through`: share that comes through what
/// stands in the way at each wavelength; not given: all.
std::vector<TraceLine> trace_lines(const LampSpectrum& light, int count,
                                   const std::function<double(double nm)>& through = {});

}  // namespace prismwright
