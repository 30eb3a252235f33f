#pragma once

#include <optional>
#include <ostream>
#include <vector>

#include "app/batch/json_print.h"
#include "core/lens/facet_departure.h"
#include "core/lens/plan.h"
#include "core/lens/zone_glass.h"
#include "core/optics/colour_fan.h"
#include "core/optics/lamp_line.h"
#include "core/optics/proof.h"

namespace prismwright {

/// Everything that `prove` says of a section.
struct ProvedSection {
  LensPlan plan;
  Proof proof;
  std::optional<LampLineProof> lamp;   ///< when the lamp has a height or stands off the focal point
  std::vector<ZoneGlass> glass;        ///< in the section's order
  std::vector<ZoneColours> colours;    ///< in the section's order
  std::vector<FacetDeparture> facets;  ///< of the refracting zones, where panels have flat inner faces

  [[nodiscard]] const FacetDeparture* facet_of(const std::string& zone) const;
};

ProvedSection prove_section(LensPlan plan, int elevations);

Json proof_json(const ProvedSection& proved);
void print_proof(const ProvedSection& proved, std::ostream& out);

}  // namespace prismwright
