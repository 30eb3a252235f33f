#pragma once

#include <ostream>
#include <vector>

#include "app/batch/json_print.h"
#include "geometry/despatch/pack.h"

namespace prismwright {

/// What `pack` answers. `remembered`: what was asked for as it was for the last pack, in sentences.
Json pack_json(const PackReport& report, const std::vector<std::string>& remembered);
void print_pack(const PackReport& report, const std::vector<std::string>& remembered, std::ostream& out);

/// What would go out, and how it stands to the last pack (null: there is none).
Json despatch_json(const std::vector<DespatchPiece>& pieces, const LastPack* last, const LensValues& values,
                   const std::vector<std::string>& remembered);
void print_despatch(const std::vector<DespatchPiece>& pieces, const LastPack* last, const LensValues& values,
                    const std::vector<std::string>& remembered, std::ostream& out);

}  // namespace prismwright
