#include "ui/models/typed_number.h"

#include "ui/models/shown_numbers.h"

namespace prismwright {

std::optional<double> typed_number(const QString& typed, const std::string& unit, bool inches) {
  Quantity quantity;
  quantity.unit = unit;
  return read_number(typed_value(quantity, typed, inches), unit);
}

}  // namespace prismwright
