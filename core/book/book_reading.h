#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/book/book_problems.h"
#include "core/book/steps.h"
#include "core/lens/lens_values.h"
#include "core/lens/section_variant.h"
#include "core/light/bench_reading.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

/// All that a book says, read at one moment.
struct BookContents {
  int version = 0;  ///< of the file; the contents are those of kBookVersion
  LensValues values;
  std::vector<SectionVariant> variants;
  std::vector<LedgerEntry> ledger;
  long long last_serial = 0;  ///< highest serial number in the ledger
  std::vector<BenchReading> readings;
  WorksLog works_log;
  StepTexts steps;
};

/// Reads and checks a whole book without writing to it or beside it.
///
/// Checked are header, schema to the letter, SQLite's integrity check, the content seal and the values
/// (check_values). An older version is migrated in memory. A book with the journal of a killed process is read
/// from a copy, in the system's folder for passing files, on which the journal has been rolled back.
Outcome<BookContents> read_book(const BookName& book);

/// What the open database says. Throws BookDamage or SQLite::Exception.
BookContents contents_of(SQLite::Database& db);

}  // namespace prismwright
