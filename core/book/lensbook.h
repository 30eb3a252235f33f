#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/lens_values.h"
#include "core/lens/section_variant.h"
#include "core/light/bench_reading.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

/// A lensbook: the SQLite project file of one lens.
///
/// Every edit is one transaction, on disk when the call returns; there is no saving. Undo and redo are SQLite
/// changesets kept in the file; they survive a restart and never touch the works ledger and the readings of the
/// bench. A second opening of a book that is already open for writing is read-only. Not thread-safe: one thread
/// uses one Lensbook.
class Lensbook {
 public:
  /// Makes a new book; refuses to overwrite a file.
  static Outcome<Lensbook> create(const std::string& path, const LensValues& values);

  enum class Access { read_write, read_only };
  /// Opens a book. Older versions are migrated, with a copy of the old file kept beside. Refuses, with a
  /// sentence, a file that is missing, not a lensbook, newer than this program, or damaged; such a file is
  /// never written to.
  static Outcome<Lensbook> open(const std::string& path, Access access = Access::read_write);

  Lensbook(Lensbook&&) noexcept;
  Lensbook& operator=(Lensbook&&) noexcept;
  ~Lensbook();

  [[nodiscard]] const std::string& path() const;
  [[nodiscard]] bool read_only() const;
  /// Why it is read-only, as a sentence; empty when it is not.
  [[nodiscard]] const std::string& read_only_reason() const;
  /// A sentence on a migration that opening made (with the path of the kept copy); empty when none.
  [[nodiscard]] const std::string& migration_note() const;

  /// The values as they stand (read once at opening and kept in step with every edit, undo and redo).
  [[nodiscard]] const LensValues& values() const;

  /// Writes new values as one step; `what` says what was done ("ring edge 4 -> 5 mm"). Values are checked
  /// (check_values). An edit that changes nothing is no step.
  Done edit(const LensValues& values, const std::string& what);

  /// The variants of the section that are kept in the book, the longest kept first. Taking one over is an edit
  /// like any other: with_variant (core/lens/section_variant.h) gives the values.
  [[nodiscard]] const std::vector<SectionVariant>& variants() const;
  /// The variant of that name, or a refusal that names those there are.
  [[nodiscard]] Outcome<SectionVariant> variant(std::string_view name) const;
  enum class SameName { refuse, replace };
  /// Keeps the section as it stands under a name, as one step. Refuses a name that cannot be (variant_name),
  /// and one that is taken unless it is to be replaced.
  Done keep_variant(std::string_view name, SameName same_name = SameName::refuse);
  Done drop_variant(std::string_view name);  ///< one step
  /// One step; the new name must be free.
  Done rename_variant(std::string_view name, std::string_view new_name);

  [[nodiscard]] std::optional<std::string> undo_text() const;  ///< what undo would take back
  [[nodiscard]] std::optional<std::string> redo_text() const;
  Outcome<std::string> undo();  ///< answers what it took back
  Outcome<std::string> redo();

  /// The whole works ledger, oldest first.
  [[nodiscard]] const std::vector<LedgerEntry>& ledger() const;
  /// What the works wrote down beside the ledger, oldest first; photographs without their bytes.
  [[nodiscard]] const WorksLog& works_log() const;
  /// Adds lines (from plan_steps) and other entries as one transaction; numbers, times and the serial numbers
  /// of new castings are given here. Lines of the ledger whose load is kNewLoad are cast in the first of the
  /// added loads.
  Done record(std::span<const LedgerEntry> entries, const WorksLog& more = {});
  static constexpr long long kNewLoad = -1;
  /// The bytes of a photograph kept in the book.
  [[nodiscard]] Outcome<std::string> photograph_bytes(long long number) const;

  /// All readings of the laser bench, oldest first.
  [[nodiscard]] const std::vector<BenchReading>& readings() const;
  /// Adds readings that fit (check_reading in core/light/bench_check.h) as one transaction; number and time are
  /// given here. None is ever changed or taken out.
  Done record_readings(std::span<const BenchReading> readings);

 private:
  struct Inside;
  explicit Lensbook(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
