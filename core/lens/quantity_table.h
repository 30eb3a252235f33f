#pragma once

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/lens/quantities.h"

namespace prismwright {

/// How the table reaches a quantity inside LensValues. The functions give a reference into the values.
using NumberPlace = std::function<double&(LensValues&)>;
using BlankNumberPlace = std::function<std::optional<double>&(LensValues&)>;
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
  std::variant<NumberPlace, BlankNumberPlace, TextPlace, NumbersPlace, SpecialPlace> place;
};

/// The one table of all quantities.
const std::vector<QuantityRow>& quantity_rows();

/// Special places for the panels: count, widths, axis shifts, blind ones (quantity_panels.cpp).
SpecialPlace panel_count_place();
SpecialPlace panel_widths_place();
SpecialPlace panel_shifts_place();
SpecialPlace blind_panels_place();

/// A list such as "139.7, 209.55 261" (commas, semicolons or spaces), each with an optional unit.
std::optional<std::vector<double>> read_numbers(const std::string& text, const std::string& unit);
std::string numbers_text(const std::vector<double>& numbers);

}  // namespace prismwright
