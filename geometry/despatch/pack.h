#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/despatch/despatch_desk.h"

namespace prismwright {

/// A file of a pack.
struct PackedFile {
  std::string path;  ///< in the pack, with '/' between folders
  std::uint64_t bytes = 0;
  std::string sha256;
};

/// A piece as it went out.
struct PackedPiece {
  DespatchPiece piece;
  std::string revision;  ///< at which it was last made anew
  std::string date;
  std::vector<PackedFile> files;
  /// Folder of the pack that holds the files, where they lie in an older one (see last_pack); empty: this one.
  std::string lies_in = {};
  /// What was told when it was made (a master printed in parts), told again of every pack that keeps it.
  std::vector<std::string> notes = {};
};

/// What a pack says of itself (manifest.json at its top; SHA256SUMS holds the same sums for `sha256sum -c`).
struct PackManifest {
  std::string book;   ///< DespatchSource::book_name
  std::string title;  ///< of the lens
  std::string date;
  std::string revision;
  int number = 1;                                           ///< of the packs of this book, rising
  std::vector<std::pair<std::string, std::string>> values;  ///< every quantity by key, as text
  /// What the start page says of the lens: caption and words. Those of the light are kept with its files.
  std::vector<std::pair<std::string, std::string>> figures = {};
  std::vector<std::pair<std::string, std::string>> light_figures = {};
  std::vector<PackedPiece> pieces;
  /// How the estimate was asked for, so that the next pack can ask for the same; blank in packs of before.
  std::optional<EstimateChoice> estimate = std::nullopt;
};
/// The piece of the same group and name, or null.
const PackedPiece* find_packed(const PackManifest& manifest, const DespatchPiece& piece);
/// Refused (file Problem): no manifest, one that is damaged (code "manifest") or of a newer program ("newer").
Outcome<PackManifest> read_manifest(const std::string& pack_folder);

/// The newest pack of this book in a folder of packs, with its path; blank when there is none. Groups that it
/// was not asked for stand in its manifest as they lie in the newest older pack that has them.
struct LastPack {
  std::string folder;
  PackManifest manifest;
};
std::optional<LastPack> last_pack(const std::string& packs_folder, const std::string& book);

/// How a piece stands to the last pack.
enum class DespatchState {
  fresh,     ///< goes out as it lies in the last pack
  stale,     ///< lies in the last pack, but what it comes from has changed since
  unpacked,  ///< was never packed
  withheld,  ///< a clash stands: it does not go out
};
const char* name_of(DespatchState state);
DespatchState state_of(const DespatchPiece& piece, const PackManifest* last);

/// A quantity that differs from the last pack, or a piece that came, went or was made anew.
std::vector<std::string> changes_since(const PackManifest& last, const PackManifest& now);
/// The quantities that differ, in words: "section.edge_mm 4 -> 5 mm".
std::vector<std::string> values_changed(const PackManifest& last, const LensValues& now);

/// The letter that follows: A, B, ..., Z, AA; numbers count on; other words get a number. "A" after none.
std::string next_revision(const std::string& last);

/// Refuses what is no day of the form 2026-03-31 (code "date").
Done check_pack_date(const std::string& date);

struct PackAsk {
  std::string packs_folder;           ///< in which the dated folder comes to lie; made where missing
  std::vector<DespatchGroup> groups;  ///< empty: all
};

/// What was packed.
struct PackReport {
  std::string folder;  ///< of the finished pack
  PackManifest manifest;
  int made_anew = 0;  ///< pieces
  int kept = 0;
  std::vector<std::string> changes;   ///< since the last pack; empty too where there was none
  std::vector<std::string> withheld;  ///< sentences
  std::vector<std::string> notes;
  bool well = true;  ///< nothing withheld
};

/// Writes a pack: BOOK-YYYY-MM-DD (-2, -3, ... where that is taken) in the packs' folder, with manifest, sums,
/// a start page (index.html) and changes.txt. Pieces whose key is the last pack's are copied from it once their
/// sums are found right. The pack is built beside and renamed when whole: on any refusal, a full disk or a
/// stop, nothing of it is left; what a killed run leaves is no pack, and is cleared away by the next. One run
/// at a time packs a book into a folder: a second one is refused (pack_lock.h).
Outcome<PackReport> write_pack(DespatchDesk& desk, const PackAsk& ask, const Progress& progress = {});

}  // namespace prismwright
