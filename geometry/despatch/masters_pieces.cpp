#include <filesystem>

#include <fmt/format.h>

#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"
#include "geometry/despatch/step_key.h"
#include "geometry/works_exports.h"

namespace prismwright {

namespace {

/// Raised when masters, their meshes or their sheets come to be made otherwise.
constexpr int kMasterFormat = 1;

/// Everything that a master, the way it lies in the printer and its sheet come from: of the works'
/// settings those on resin, shrinkage, stock and printer.
std::string master_key(LensShop& shop, const Master& master) {
  PieceKey key = step_key("master");
  key << kMasterFormat << master.name;
  const PlannedPrism& prism = shop.plan().prisms[master.prism];
  add_placed(key, prism);
  key << prism.panel << prism.zone << prism.kind;
  for (const MasterUse& use : master.uses) key << use.mark << use.turned;
  add_values(
      key, shop.values(),
      {"works.resin", "works.resin_batch", "works.shrink_length_percent", "works.shrink_depth_percent",
       "works.shrink_height_percent", "works.stock_mm", "works.stock_faces", "works.print_width_mm",
       "works.print_depth_mm", "works.print_height_mm", "works.layer_mm", "works.key_mm", "works.key_gap_mm"});
  key << shop.values().brief.title << shop.choice().paper.value_or(Paper::a4) << shop.choice().inches;
  return key.text();
}

/// The sheet and table of one master under its own name.
Done name_sheets(std::vector<std::string>& paths, const std::string& master) {
  for (std::string& path : paths) {
    const std::filesystem::path file(path);
    if (file.stem() != "masters") continue;
    const auto own = file.parent_path() / (master + "-measures" + file.extension().string());
    std::error_code error;
    std::filesystem::rename(file, own, error);
    if (error)
      return file_problem("write", own.string(),
                          fmt::format("{} could not be written ({}).", own.string(), error.message()));
    path = own.string();
  }
  return {};
}

Outcome<std::vector<std::string>> write_master(LensShop& shop, const std::string& name,
                                               const std::string& folder, const Progress& progress) {
  MastersExportChoice choice;
  choice.only = {name};
  choice.paper = shop.choice().paper.value_or(Paper::a4);
  choice.inches = shop.choice().inches;
  choice.date = shop.choice().date;
  const auto own = (std::filesystem::path(folder) / "masters" / name).string();
  auto files = export_masters(shop.plan(), shop.masters(), own, choice, progress);
  if (!files) return files.problem();
  if (!files->well)
    return request_problem(
        "master", name, files->notes.empty() ? name + ": its master could not be made." : files->notes.back());
  for (const std::string& note : files->notes) shop.notes.push_back(note);
  if (const Done named = name_sheets(files->paths, name); !named) return named.problem();
  PieceFiles written(folder);
  written.take(files->paths);
  return written.paths();
}

std::string words_of(const Master& master) {
  return fmt::format("Master {}, {}", master.name,
                     master.uses.size() == 1 ? "one prism" : fmt::format("{} prisms", master.uses.size()));
}

}  // namespace

ReadyPieces master_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  for (const Master& master : shop.masters()) {
    std::vector<std::string> marks;
    for (const MasterUse& use : master.uses) marks.push_back(use.mark);
    DespatchPiece piece{DespatchGroup::masters,   master.name, words_of(master),
                        master_key(shop, master), false,       shop.clashes().why(marks)};
    const auto write = [&shop, name = master.name](const std::string& folder, const Progress& progress) {
      return write_master(shop, name, folder, progress);
    };
    pieces.push_back({std::move(piece), write});
  }
  return pieces;
}

}  // namespace prismwright
