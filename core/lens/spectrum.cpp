#include "core/lens/spectrum.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace prismwright {

namespace {

Problem refused(const std::string& code, const std::string& where, std::string text) {
  return request_problem("spectrum." + code, where, where.empty() ? std::move(text) : where + ": " + text);
}

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

std::optional<double> whole_number(std::string_view text) {
  text = trimmed(text);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::optional<SpectrumPoint> read_point(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  const auto nm = whole_number(text.substr(0, colon));
  const auto value = whole_number(text.substr(colon + 1));
  if (!nm || !value) return std::nullopt;
  return SpectrumPoint{*nm, *value};
}

std::string point_text(const SpectrumPoint& point) { return fmt::format("{}:{}", point.nm, point.value); }

/// Straight between points; the end values beyond the ends.
double held(const std::vector<SpectrumPoint>& points, double nm) {
  const auto next = std::upper_bound(points.begin(), points.end(), nm,
                                     [](double at, const SpectrumPoint& point) { return at < point.nm; });
  if (next == points.begin()) return points.front().value;
  if (next == points.end()) return points.back().value;
  const SpectrumPoint& last = *(next - 1);
  return last.value + (next->value - last.value) * (nm - last.nm) / (next->nm - last.nm);
}

/// Whether an emission holds light that the eye sees: a point with light in sight, or a slope that reaches in.
bool is_seen(const std::vector<SpectrumPoint>& points) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const bool shines = points[i].value > 0 || points[i + 1].value > 0;
    if (shines && points[i].nm < kEyeTo_nm && points[i + 1].nm > kEyeFrom_nm) return true;
  }
  return false;
}

Done check_point(const SpectrumPoint& point, SpectrumKind kind, const std::string& where) {
  if (!(point.nm >= kLeastPoint_nm && point.nm <= kGreatestPoint_nm))
    return refused("wavelength", where,
                   fmt::format("A point stands at {} nm, outside {} to {} nm; give wavelengths in nm.",
                               point.nm, kLeastPoint_nm, kGreatestPoint_nm));
  if (!(point.value >= 0) || std::isinf(point.value))
    return refused("value", where,
                   fmt::format("The value at {} nm is {}, less than 0 or no number; give 0 or more.", point.nm,
                               point.value));
  if (kind == SpectrumKind::transmittance && point.value > 1)
    return refused(
        "value", where,
        fmt::format("The transmittance at {} nm is {}, more than 1; give shares from 0 to 1, 0.8 for "
                    "80 %.",
                    point.nm, point.value));
  return {};
}

Done check_points(const std::vector<SpectrumPoint>& points, SpectrumKind kind, const std::string& where) {
  const std::size_t least = kind == SpectrumKind::emission ? 2 : 1;
  if (points.size() < least)
    return refused("count", where,
                   fmt::format("The spectrum has {} points where at least {} are needed; give points such as "
                               "400:0.10, 500:0.8.",
                               points.size(), least));
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (const Done checked = check_point(points[i], kind, where); !checked) return checked;
    if (i > 0 && points[i].nm <= points[i - 1].nm)
      return refused("order", where,
                     fmt::format("The point at {} nm follows one at {} nm, but wavelengths must rise; put the "
                                 "points in order, one for each wavelength.",
                                 points[i].nm, points[i - 1].nm));
  }
  if (kind == SpectrumKind::emission && !is_seen(points))
    return refused(
        "dark", where,
        fmt::format("The spectrum from {} to {} nm gives no light between {} and {} nm, where the eye "
                    "sees; give points with values over 0 there.",
                    points.front().nm, points.back().nm, kEyeFrom_nm, kEyeTo_nm));
  return {};
}

}  // namespace

Outcome<Spectrum> Spectrum::from_points(std::vector<SpectrumPoint> points, SpectrumKind kind,
                                        const std::string& where) {
  if (const Done checked = check_points(points, kind, where); !checked) return checked.problem();
  return Spectrum(std::move(points), kind);
}

Outcome<Spectrum> Spectrum::from_text(std::string_view text, SpectrumKind kind, const std::string& where) {
  std::vector<SpectrumPoint> points;
  while (!text.empty()) {
    const auto end = text.find_first_of(",;\n");
    const std::string_view word = trimmed(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    if (word.empty()) continue;
    const auto point = read_point(word);
    if (!point)
      return refused(
          "text", where,
          fmt::format("\"{}\" is not a point of a spectrum, which is a wavelength in nm, a colon and a "
                      "value; write points such as 400:0.10, 500:0.8.",
                      word));
    points.push_back(*point);
  }
  return from_points(std::move(points), kind, where);
}

Spectrum Spectrum::flat(double transmittance) {
  return {{{0.5 * (kEyeFrom_nm + kEyeTo_nm), transmittance}}, SpectrumKind::transmittance};
}

std::string Spectrum::text() const {
  std::string text;
  for (const SpectrumPoint& point : points_) text += (text.empty() ? "" : ", ") + point_text(point);
  return text;
}

double Spectrum::at(double nm) const {
  const bool beyond = nm < points_.front().nm || nm > points_.back().nm;
  if (beyond && kind_ == SpectrumKind::emission) return 0;
  return held(points_, nm);
}

}  // namespace prismwright
