#pragma once

#include <string>

#include "core/drawing/house_words.h"
#include "core/lens/plan.h"
#include "core/light/light_report.h"
#include "core/optics/proof.h"

namespace prismwright {

/// The light report on paper: proof of the section zone by zone, lamp, beam (level and upright cuts drawn with
/// axes and units), flux budget, flashes and character against the brief, effective intensities and ranges,
/// colours, sun at the focus with its caution, warnings.
Drawing light_paper(const LensPlan& plan, const Proof& proof, const LightReport& light,
                    const HouseWords& words);

/// The beam's map as CSV: azimuth_deg, elevation_deg, intensity_cd.
std::string beam_csv(const BeamMap& beam);

}  // namespace prismwright
