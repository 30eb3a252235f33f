#include <array>

#include "geometry/despatch/despatch_desk.h"

namespace prismwright {

namespace {

struct GroupWords {
  const char* name;
  const char* words;
};

/// In the order of DespatchGroup.
constexpr std::array<GroupWords, kDespatchGroups> kGroups = {{{"prisms", "Prism solids"},
                                                              {"panels", "Panel solids"},
                                                              {"lens", "The whole lens as solids"},
                                                              {"frame", "Frame solids"},
                                                              {"cutting", "Cut files of the frame"},
                                                              {"masters", "Masters"},
                                                              {"drawings", "Drawings"},
                                                              {"lists", "Lists"},
                                                              {"light", "Light"},
                                                              {"record", "Works record"},
                                                              {"dossier", "Owner's dossier"},
                                                              {"estimate", "Estimate"},
                                                              {"pictures", "Pictures"}}};

}  // namespace

const char* name_of(DespatchGroup group) { return kGroups.at(static_cast<std::size_t>(group)).name; }

const char* words_of(DespatchGroup group) { return kGroups.at(static_cast<std::size_t>(group)).words; }

std::optional<DespatchGroup> find_despatch_group(std::string_view name) {
  for (std::size_t i = 0; i < kGroups.size(); ++i)
    if (name == kGroups.at(i).name) return static_cast<DespatchGroup>(i);
  return std::nullopt;
}

}  // namespace prismwright
