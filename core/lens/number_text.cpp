#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>

#include "core/lens/quantities.h"

namespace prismwright {

namespace {

struct UnitFactor {
  std::string_view family;  ///< the unit of the quantity
  std::string_view typed;
  double times;  ///< typed value times this, over `over`, is in the quantity's unit: exact for whole inches
  double over = 1;
};

constexpr std::array kUnits = {
    UnitFactor{"m", "m", 1},
    UnitFactor{"m", "ft", 3048, 10000},
    UnitFactor{"m", "'", 3048, 10000},
    UnitFactor{"nm", "nm", 1},
    UnitFactor{"C", "C", 1},

    UnitFactor{"mm", "mm", 1},
    UnitFactor{"mm", "cm", 10},
    UnitFactor{"mm", "m", 1000},
    UnitFactor{"mm", "in", 254, 10},
    UnitFactor{"mm", "\"", 254, 10},
    UnitFactor{"mm", "inch", 254, 10},
    UnitFactor{"mm", "inches", 254, 10},
    UnitFactor{"mm", "ft", 3048, 10},
    UnitFactor{"mm", "'", 3048, 10},
    UnitFactor{"deg", "deg", 1},
    UnitFactor{"deg", "\u00b0", 1},
    UnitFactor{"deg", "rad", 57.29577951308232},
    UnitFactor{"deg", "min", 1, 60},
    UnitFactor{"K", "K", 1},
    UnitFactor{"K", "C", 1},
    UnitFactor{"g/cm3", "g/cm3", 1},
    UnitFactor{"g/cm3", "kg/m3", 1, 1000},
};

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Reads a plain number from the front of `text` and removes it.
std::optional<double> take_number(std::string_view& text) {
  std::string_view rest = text;
  if (!rest.empty() && rest.front() == '+') rest.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
  if (error != std::errc() || !std::isfinite(value)) return std::nullopt;
  text = rest.substr(static_cast<std::size_t>(end - rest.data()));
  return value;
}

/// Reads "3/8", "1 3/8", "12.5" from the front of `text` and removes it.
std::optional<double> take_mixed(std::string_view& text) {
  const bool negative = !text.empty() && text.front() == '-';
  auto value = take_number(text);
  if (!value) return std::nullopt;
  std::string_view rest = trimmed(text);
  const auto over = [&](double numerator) -> std::optional<double> {
    rest.remove_prefix(1);
    const auto denominator = take_number(rest);
    if (!denominator || *denominator <= 0) return std::nullopt;
    return numerator / *denominator;
  };
  if (!rest.empty() && rest.front() == '/') {
    value = over(*value);
    text = rest;
    return value;
  }
  std::string_view ahead = rest;
  if (const auto numerator = take_number(ahead); numerator && !ahead.empty() && ahead.front() == '/') {
    rest = ahead;
    const auto part = over(*numerator);
    if (!part) return std::nullopt;
    value = negative ? *value - *part : *value + *part;
    text = rest;
  }
  return value;
}

/// No number without end, such as a fraction or a unit may make; and a typed "-0" is zero.
std::optional<double> plain(double value) {
  if (!std::isfinite(value)) return std::nullopt;
  return value + 0.0;
}

}  // namespace

std::optional<double> read_number(std::string_view text, std::string_view unit) {
  text = trimmed(text);
  const auto value = take_mixed(text);
  if (!value) return std::nullopt;
  const std::string_view typed = trimmed(text);
  if (typed.empty()) return plain(*value);
  for (const UnitFactor& known : kUnits) {
    if (known.family == unit && known.typed == typed) return plain(*value * known.times / known.over);
  }
  return std::nullopt;
}

std::string number_text(double value) { return fmt::format("{}", value); }

}  // namespace prismwright
