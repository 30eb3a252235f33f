#pragma once

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/lens/choice_words.h"
#include "core/lens/quantities.h"

namespace prismwright {

/// How the table reaches a quantity inside LensValues. The functions give a reference into the values.
using NumberPlace = std::function<double&(LensValues&)>;
using BlankNumberPlace = std::function<std::optional<double>&(LensValues&)>;
using CountPlace = std::function<int&(LensValues&)>;
using TextPlace = std::function<std::string&(LensValues&)>;
using NumbersPlace = std::function<std::vector<double>&(LensValues&)>;
/// Values that are no plain member: read as text, written from text (already known to be a valid choice or
/// list).
struct SpecialPlace {
  std::function<std::string(const LensValues&)> read;
  std::function<Done(LensValues&, const std::string&)> write;
};

struct QuantityRow {
  Quantity quantity;
  std::variant<NumberPlace, BlankNumberPlace, CountPlace, TextPlace, NumbersPlace, SpecialPlace> place;
};

/// The one table of all quantities.
const std::vector<QuantityRow>& quantity_rows();

/// A choice held in an enum whose words stand in kChoiceWords.
template <class Choice>
SpecialPlace choice_place(std::function<Choice&(LensValues&)> member) {
  const auto read = [member](const LensValues& values) {
    return std::string(word_of(member(const_cast<LensValues&>(values))));
  };
  const auto write = [member](LensValues& values, const std::string& text) -> Done {
    for (const auto& [choice, word] : kChoiceWords<Choice>)
      if (word == text) member(values) = choice;
    return {};
  };
  return {read, write};
}
template <class Choice>
std::vector<std::string> choice_words() {
  std::vector<std::string> words;
  for (const auto& [choice, word] : kChoiceWords<Choice>) words.emplace_back(word);
  return words;
}

// Quantities of each form, for the table.
Quantity text_quantity(std::string key, const char* label, const char* meaning);
Quantity number_quantity(std::string key, const char* unit, double min, double max, const char* label,
                         const char* meaning);
Quantity blank_quantity(std::string key, const char* unit, double min, double max, const char* label,
                        const char* meaning);
Quantity choice_quantity(std::string key, std::vector<std::string> choices, const char* label,
                         const char* meaning);

/// Rows of the table on lands, bands, ribs and aim (quantity_bands.cpp).
void add_lands(std::vector<QuantityRow>& rows);
void add_bands(std::vector<QuantityRow>& rows);
void add_ribs_and_aim(std::vector<QuantityRow>& rows);

/// Rows on lamp, tint, rhythm, range and setting errors (quantity_light.cpp).
void add_tint(std::vector<QuantityRow>& rows);
void add_lamp(std::vector<QuantityRow>& rows);
void add_light(std::vector<QuantityRow>& rows);

/// Rows on the brass frame (quantity_frame.cpp).
void add_frame(std::vector<QuantityRow>& rows);

/// Rows on resin, masters, moulds, castings, inspection, time and money (quantity_works.cpp).
void add_works(std::vector<QuantityRow>& rows);

/// Special places for the panels: count, widths, axis shifts, blind ones (quantity_panels.cpp).
SpecialPlace panel_count_place();
SpecialPlace panel_widths_place();
SpecialPlace panel_shifts_place();
SpecialPlace blind_panels_place();
SpecialPlace screened_panels_place(Screen screen);

/// A list such as "139.7, 209.55 261" (commas, semicolons or spaces), each with an optional unit.
std::optional<std::vector<double>> read_numbers(const std::string& text, const std::string& unit);
std::string numbers_text(const std::vector<double>& numbers);

}  // namespace prismwright
