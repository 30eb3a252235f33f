#include "core/papers/money.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace prismwright {

namespace {

constexpr double kMost = 9e13;

}  // namespace

Money Money::printed(double value) {
  if (!std::isfinite(value)) return {};
  const std::string text = fmt::format("{:.2f}", std::clamp(value, -kMost, kMost));
  return hundredths(std::llround(100 * std::strtod(text.c_str(), nullptr)));
}

Money Money::hundredths(long long count) {
  Money money;
  money.hundredths_ = count;
  return money;
}

std::string Money::words() const {
  const long long whole = std::abs(hundredths_);
  return fmt::format("{}{}.{:02}", hundredths_ < 0 ? "-" : "", whole / 100, whole % 100);
}

Money Money::share_percent(double percent) const {
  return hundredths(std::llround(static_cast<double>(hundredths_) * percent / 100));
}

}  // namespace prismwright
