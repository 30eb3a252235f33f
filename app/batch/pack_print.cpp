#include "app/batch/pack_print.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/batch/text_table.h"

namespace prismwright {

namespace {

constexpr double kBytesPerMegabyte = 1e6;

const PackManifest* manifest_of(const LastPack* last) { return last ? &last->manifest : nullptr; }

const PackedPiece* packed_piece(const DespatchPiece& piece, const LastPack* last) {
  if (!last) return nullptr;
  const PackedPiece* found = find_packed(last->manifest, piece);
  return found && !found->files.empty() ? found : nullptr;
}

struct FileCount {
  std::size_t files = 0;
  std::uint64_t bytes = 0;
};

FileCount count_files(const PackManifest& manifest) {
  FileCount count;
  for (const PackedPiece& packed : manifest.pieces) {
    count.files += packed.files.size();
    for (const PackedFile& file : packed.files) count.bytes += file.bytes;
  }
  return count;
}

void print_lines(const char* heading, const std::vector<std::string>& lines, std::ostream& out) {
  if (lines.empty()) return;
  out << heading << '\n';
  for (const std::string& line : lines) out << "  " << line << '\n';
}

}  // namespace

Json pack_json(const PackReport& report, const std::vector<std::string>& remembered) {
  const FileCount count = count_files(report.manifest);
  Json json;
  json["folder"] = report.folder;
  json["date"] = report.manifest.date;
  json["revision"] = report.manifest.revision;
  json["number"] = report.manifest.number;
  json["files"] = count.files;
  json["bytes"] = count.bytes;
  json["made_anew"] = report.made_anew;
  json["kept"] = report.kept;
  json["changes"] = report.changes;
  json["withheld"] = report.withheld;
  json["notes"] = report.notes;
  json["remembered"] = remembered;
  json["well"] = report.well;
  return json;
}

void print_pack(const PackReport& report, const std::vector<std::string>& remembered, std::ostream& out) {
  const FileCount count = count_files(report.manifest);
  out << fmt::format("{} files, {:.1f} MB, revision {}: {} pieces made anew, {} kept from the last pack\n",
                     count.files, static_cast<double>(count.bytes) / kBytesPerMegabyte,
                     report.manifest.revision, report.made_anew, report.kept);
  print_lines("Changed since the last pack:", report.changes, out);
  print_lines("Remembered:", remembered, out);
  print_lines("Notes:", report.notes, out);
  print_lines("Withheld:", report.withheld, out);
  out << report.folder << '\n';
}

Json despatch_json(const std::vector<DespatchPiece>& pieces, const LastPack* last, const LensValues& values,
                   const std::vector<std::string>& remembered) {
  Json json;
  json["last_pack"] = last ? Json(last->folder) : Json();
  json["last_revision"] = last ? Json(last->manifest.revision) : Json();
  json["values_changed"] = last ? values_changed(last->manifest, values) : std::vector<std::string>{};
  json["remembered"] = remembered;
  json["pieces"] = Json::array();
  for (const DespatchPiece& piece : pieces) {
    const PackedPiece* packed = packed_piece(piece, last);
    json["pieces"].push_back({{"group", name_of(piece.group)},
                              {"name", piece.name},
                              {"words", piece.words},
                              {"state", name_of(state_of(piece, manifest_of(last)))},
                              {"withheld", piece.withheld},
                              {"last_revision", packed ? Json(packed->revision) : Json()},
                              {"last_date", packed ? Json(packed->date) : Json()},
                              {"key", piece.key}});
  }
  return json;
}

void print_despatch(const std::vector<DespatchPiece>& pieces, const LastPack* last, const LensValues& values,
                    const std::vector<std::string>& remembered, std::ostream& out) {
  TextTable table({{"group"}, {"piece"}, {"what"}, {"state"}, {"last made"}});
  std::array<int, 4> counts{};
  for (const DespatchPiece& piece : pieces) {
    const PackedPiece* packed = packed_piece(piece, last);
    const DespatchState state = state_of(piece, manifest_of(last));
    ++counts.at(static_cast<std::size_t>(state));
    table.add({name_of(piece.group), piece.name, piece.words, name_of(state),
               packed ? fmt::format("{}, {}", packed->revision, packed->date) : ""});
  }
  table.print(out);
  out << '\n';
  for (const auto state :
       {DespatchState::fresh, DespatchState::stale, DespatchState::unpacked, DespatchState::withheld})
    if (const int count = counts.at(static_cast<std::size_t>(state)); count > 0)
      out << fmt::format("{} {}\n", count, name_of(state));
  if (last) print_lines("Changed since the last pack:", values_changed(last->manifest, values), out);
  print_lines("Remembered:", remembered, out);
  for (const DespatchPiece& piece : pieces)
    if (!piece.withheld.empty()) out << "Withheld: " << piece.words << ": " << piece.withheld << '\n';
}

}  // namespace prismwright
