#include "core/book/variant_table.h"

#include <fmt/format.h>

#include "core/book/value_cells.h"

namespace prismwright {
namespace {

/// A text as a JSON string, by SQLite's own rules.
std::string quoted(SQLite::Statement& quote, const std::string& text) {
  quote.reset();
  quote.bind(1, text);
  quote.executeStep();
  return quote.getColumn(0).getString();
}

std::string json_of(SQLite::Database& db, const std::vector<Assignment>& texts) {
  SQLite::Statement quote(db, "SELECT json_quote(?)");
  std::string json;
  for (const auto& [key, text] : texts)
    json += fmt::format("{}{}:{}", json.empty() ? "" : ",\n", quoted(quote, key), quoted(quote, text));
  return '{' + json + '}';
}

std::vector<Assignment> texts_of(SQLite::Database& db, const std::string& name, const std::string& json) {
  SQLite::Statement check(db, "SELECT CASE WHEN json_valid(?1) THEN json_type(?1) END");
  check.bind(1, json);
  if (!check.executeStep() || check.getColumn(0).getString() != "object")
    throw BookDamage(fmt::format("variant '{}' cannot be read", name));
  std::vector<Assignment> texts;
  SQLite::Statement each(db, "SELECT key, value, type FROM json_each(?)");
  each.bind(1, json);
  while (each.executeStep()) {
    if (each.getColumn(2).getString() != "text")
      throw BookDamage(fmt::format("variant '{}' holds what is no text", name));
    texts.emplace_back(each.getColumn(0).getString(), each.getColumn(1).getString());
  }
  return texts;
}

}  // namespace

std::vector<SectionVariant> read_variants(SQLite::Database& db) {
  std::vector<SectionVariant> variants;
  SQLite::Statement query(db, "SELECT name, when_utc, texts FROM variant ORDER BY when_utc, name");
  while (query.executeStep()) {
    SectionVariant& variant = variants.emplace_back();
    take(query.getColumn(0), variant.name);
    take(query.getColumn(1), variant.when_utc);
    variant.texts = texts_of(db, variant.name, query.getColumn(2).getString());
  }
  return variants;
}

void write_variant(SQLite::Database& db, const SectionVariant& variant) {
  SQLite::Statement write(
      db,
      "INSERT INTO variant (name, when_utc, texts) VALUES (?, ?, ?) "
      "ON CONFLICT (name) DO UPDATE SET when_utc = excluded.when_utc, texts = excluded.texts");
  write.bind(1, variant.name);
  write.bind(2, variant.when_utc);
  write.bind(3, json_of(db, variant.texts));
  write.exec();
}

void delete_variant(SQLite::Database& db, const std::string& name) {
  SQLite::Statement drop(db, "DELETE FROM variant WHERE name = ?");
  drop.bind(1, name);
  drop.exec();
}

void rename_variant_row(SQLite::Database& db, const std::string& name, const std::string& new_name) {
  SQLite::Statement rename(db, "UPDATE variant SET name = ? WHERE name = ?");
  rename.bind(1, new_name);
  rename.bind(2, name);
  rename.exec();
}

}  // namespace prismwright
