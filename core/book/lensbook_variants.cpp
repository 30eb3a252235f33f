#include <fmt/format.h>

#include <algorithm>

#include "core/book/lensbook_inside.h"
#include "core/book/utc_clock.h"
#include "core/book/variant_table.h"

namespace prismwright {
namespace {

const SectionVariant* find_variant(const std::vector<SectionVariant>& variants, std::string_view name) {
  const auto found =
      std::find_if(variants.begin(), variants.end(), [&](const auto& each) { return each.name == name; });
  return found == variants.end() ? nullptr : &*found;
}

Problem unknown_variant(const std::vector<SectionVariant>& variants, std::string_view name) {
  std::string known;
  for (const SectionVariant& variant : variants)
    known += fmt::format("{}'{}'", known.empty() ? "" : ", ", variant.name);
  return request_problem(
      "variant.unknown", std::string(name),
      known.empty()
          ? fmt::format("there is no variant '{}': none is kept in this book yet. Keep one first", name)
          : fmt::format("there is no variant '{}'. Kept are {}. Name one of these", name, known));
}

Problem name_taken(const std::string& name) {
  return request_problem(
      "variant.taken", name,
      fmt::format("a variant '{}' is kept already and was left as it is. Give another name, or "
                  "drop that one first",
                  name));
}

}  // namespace

const std::vector<SectionVariant>& Lensbook::variants() const { return inside_->contents.variants; }

Outcome<SectionVariant> Lensbook::variant(std::string_view name) const {
  if (const SectionVariant* found = find_variant(variants(), name)) return *found;
  return unknown_variant(variants(), name);
}

Done Lensbook::keep_variant(std::string_view name, SameName same_name) {
  const Outcome<std::string> fit = variant_name(name);
  if (!fit) return fit.problem();
  const bool taken = find_variant(variants(), *fit) != nullptr;
  if (taken && same_name == SameName::refuse) return name_taken(*fit);
  const SectionVariant kept{*fit, now_utc(), section_texts(values())};
  return inside_->variant_step(fmt::format("{} variant '{}'", taken ? "replace" : "keep", *fit),
                               [&](SQLite::Database& db) { write_variant(db, kept); });
}

Done Lensbook::drop_variant(std::string_view name) {
  const Outcome<SectionVariant> found = variant(name);
  if (!found) return found.problem();
  return inside_->variant_step(fmt::format("drop variant '{}'", found->name),
                               [&](SQLite::Database& db) { delete_variant(db, found->name); });
}

Done Lensbook::rename_variant(std::string_view name, std::string_view new_name) {
  const Outcome<SectionVariant> found = variant(name);
  if (!found) return found.problem();
  const Outcome<std::string> fit = variant_name(new_name);
  if (!fit) return fit.problem();
  if (*fit == found->name) return {};
  if (find_variant(variants(), *fit) != nullptr) return name_taken(*fit);
  return inside_->variant_step(fmt::format("rename variant '{}' to '{}'", found->name, *fit),
                               [&](SQLite::Database& db) { rename_variant_row(db, found->name, *fit); });
}

}  // namespace prismwright
