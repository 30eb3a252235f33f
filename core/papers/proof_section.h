#pragma once

#include "core/drawing/lengths.h"
#include "core/lens/plan.h"
#include "core/optics/proof.h"
#include "core/papers/document_pages.h"

namespace prismwright {

/// The point-source proof: what was traced, how far rays leave from their aim, where the light goes, and every
/// zone in a table.
void write_proof(DocumentPages& pages, const LensPlan& plan, const Proof& proof, const LengthWords& lengths);

/// "12.345 %"
std::string percent_words(double share, int digits);

}  // namespace prismwright
