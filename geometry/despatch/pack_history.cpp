#include <algorithm>
#include <filesystem>
#include <set>

#include "geometry/despatch/pack.h"
#include "geometry/despatch/pack_manifest.h"

namespace prismwright {

namespace fs = std::filesystem;

namespace {

/// Packs of a book, the newest first. What is damaged or of another book is passed over.
std::vector<LastPack> packs_of(const std::string& packs_folder, const std::string& book) {
  std::vector<LastPack> packs;
  std::error_code error;
  fs::directory_iterator entry(packs_folder, error);
  for (; !error && entry != fs::directory_iterator(); entry.increment(error)) {
    const fs::path& folder = entry->path();
    if (folder.filename().string().starts_with(".")) continue;
    auto manifest = read_manifest(folder.string());
    if (manifest && manifest->book == book) packs.push_back({folder.string(), std::move(*manifest)});
  }
  std::ranges::sort(packs, [](const LastPack& a, const LastPack& b) {
    return std::tie(a.manifest.number, a.manifest.date, a.folder) >
           std::tie(b.manifest.number, b.manifest.date, b.folder);
  });
  return packs;
}

std::set<DespatchGroup> groups_of(const PackManifest& manifest) {
  std::set<DespatchGroup> groups;
  for (const PackedPiece& packed : manifest.pieces) groups.insert(packed.piece.group);
  return groups;
}

}  // namespace

std::optional<LastPack> last_pack(const std::string& packs_folder, const std::string& book) {
  std::vector<LastPack> packs = packs_of(packs_folder, book);
  if (packs.empty()) return std::nullopt;
  LastPack last = std::move(packs.front());
  // Figures of the light go with the pack that its files come from.
  if (!groups_of(last.manifest).contains(DespatchGroup::light)) last.manifest.light_figures.clear();
  for (std::size_t i = 1; i < packs.size(); ++i) {
    const auto known = groups_of(last.manifest);
    if (!known.contains(DespatchGroup::light) && groups_of(packs[i].manifest).contains(DespatchGroup::light))
      last.manifest.light_figures = packs[i].manifest.light_figures;
    for (PackedPiece& packed : packs[i].manifest.pieces) {
      if (known.contains(packed.piece.group)) continue;
      packed.lies_in = packs[i].folder;
      last.manifest.pieces.push_back(std::move(packed));
    }
  }
  return last;
}

}  // namespace prismwright
