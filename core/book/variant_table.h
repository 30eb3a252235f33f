#pragma once

#include <string>
#include <vector>

#include "core/book/sqlite_api.h"
#include "core/lens/section_variant.h"

namespace prismwright {

// The variants of the section in the book: a value table, so that keeping and dropping one is a step that can
// be taken back. The functions that write want the caller's transaction.

/// All variants, the longest kept first. Throws BookDamage when one cannot be read.
std::vector<SectionVariant> read_variants(SQLite::Database& db);
/// Keeps a variant, in place of the one of the same name if there is one.
void write_variant(SQLite::Database& db, const SectionVariant& variant);
void delete_variant(SQLite::Database& db, const std::string& name);
void rename_variant_row(SQLite::Database& db, const std::string& name, const std::string& new_name);

}  // namespace prismwright
