#include "app/batch/books.h"

#include <fmt/format.h>

#include "core/lens/quantities.h"

namespace prismwright {

namespace {

std::string shown(const std::string& text) { return text.empty() ? "blank" : text; }

std::string step_words(const Quantity& quantity, const LensValues& before, const LensValues& after) {
  return fmt::format("{} {} -> {}{}{}", quantity.label, shown(value_text(before, quantity.key)),
                     shown(value_text(after, quantity.key)), quantity.unit.empty() ? "" : " ", quantity.unit);
}

}  // namespace

Outcome<Lensbook> open_to_read(const std::string& path, Voice& voice) {
  auto book = Lensbook::open(path, Lensbook::Access::read_only);
  if (book && !book->migration_note().empty()) voice.err << book->migration_note() << '\n';
  return book;
}

Outcome<Lensbook> open_to_change(const std::string& path, Voice& voice) {
  auto book = Lensbook::open(path, Lensbook::Access::read_write);
  if (!book) return book;
  if (book->read_only()) return file_problem("read_only", path, book->read_only_reason());
  if (!book->migration_note().empty()) voice.err << book->migration_note() << '\n';
  return book;
}

CLI::Option* add_book_argument(CLI::App& command, std::string& path) {
  return command.add_option("FILE", path, "the lensbook")->required();
}

std::string edit_words(const LensValues& before, const LensValues& after) {
  std::string words;
  for (const std::string& key : changed_keys(before, after)) {
    if (!words.empty()) words += ", ";
    words += step_words(*find_quantity(key), before, after);
  }
  return words;
}

}  // namespace prismwright
