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
  for (const auto& entry : fs::directory_iterator(packs_folder, error)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(".") || !fs::exists(entry.path() / kManifestName, error)) continue;
    auto manifest = read_manifest(entry.path().string());
    if (manifest && manifest->book == book) packs.push_back({entry.path().string(), std::move(*manifest)});
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
  for (std::size_t i = 1; i < packs.size(); ++i) {
    const auto known = groups_of(last.manifest);
    for (PackedPiece& packed : packs[i].manifest.pieces) {
      if (known.contains(packed.piece.group)) continue;
      packed.lies_in = packs[i].folder;
      last.manifest.pieces.push_back(std::move(packed));
    }
    if (last.manifest.light_figures.empty()) last.manifest.light_figures = packs[i].manifest.light_figures;
  }
  return last;
}

}  // namespace prismwright
