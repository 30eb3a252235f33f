#include "core/drawing/lengths.h"

#include <fmt/format.h>

#include "core/base/inches.h"

namespace prismwright {

namespace {

std::string without_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace

std::string decimals(double value, int count) {
  std::string text = fmt::format("{:.{}f}", value, count);
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string shortest(double value) { return without_zeros(decimals(value, 4)); }

std::string degrees_words(double deg) { return decimals(deg, 3); }

std::string LengthWords::exact(double mm) const {
  return inches ? decimals(mm / kInch_mm, 5) : decimals(mm, 3);
}

std::string LengthWords::plain(double mm) const {
  return without_zeros(inches ? decimals(mm / kInch_mm, 3) : decimals(mm, 2));
}

}  // namespace prismwright
