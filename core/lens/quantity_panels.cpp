#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/lens/quantity_table.h"

namespace prismwright {

namespace {

constexpr int kMostPanels = 32;

Problem unreadable(const char* key, const std::string& text, const char* wanted) {
  return request_problem("value.unreadable", key,
                         fmt::format("{} = '{}' cannot be read. Give {}", key, text, wanted));
}

Problem wrong_length(const char* key, std::size_t given, std::size_t panels) {
  return request_problem("panels.length", key,
                         fmt::format("{} has {} {} for {} panels. Give one for each panel", key, given,
                                     given == 1 ? "value" : "values", panels));
}

std::string joined(const LensValues& values, double (*pick)(const Panel&)) {
  std::vector<double> numbers;
  for (const Panel& panel : values.panels) numbers.push_back(pick(panel));
  return numbers_text(numbers);
}

}  // namespace

std::optional<std::vector<double>> read_numbers(const std::string& text, const std::string& unit) {
  std::vector<double> numbers;
  const bool by_comma = text.find_first_of(",;") != std::string::npos;
  const char* separators = by_comma ? ",;" : " \t";
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find_first_of(separators, at), text.size());
    const std::string part = text.substr(at, end - at);
    at = end + 1;
    if (part.find_first_not_of(" \t") == std::string::npos) continue;
    const auto number = read_number(part, unit);
    if (!number) return std::nullopt;
    numbers.push_back(*number);
  }
  return numbers;
}

std::string numbers_text(const std::vector<double>& numbers) {
  std::string text;
  for (const double number : numbers) text += (text.empty() ? "" : ", ") + number_text(number);
  return text;
}

SpecialPlace panel_count_place() {
  return {[](const LensValues& v) { return fmt::format("{}", v.panels.size()); },
          [](LensValues& v, const std::string& text) -> Done {
            const auto count = read_number(text, "");
            if (!count || *count != std::floor(*count))
              return unreadable("brief.panels", text, "a whole number");
            if (*count < 2 || *count > kMostPanels) {
              return request_problem(
                  "value.range", "brief.panels",
                  fmt::format(
                      "brief.panels is {:g}; it must lie between 2 and {}. Choose a count inside that range",
                      *count, kMostPanels));
            }
            if (static_cast<std::size_t>(*count) != v.panels.size())
              v.panels = equal_panels(static_cast<int>(*count));
            return {};
          }};
}

SpecialPlace panel_widths_place() {
  return {[](const LensValues& v) { return joined(v, [](const Panel& p) { return p.width_deg; }); },
          [](LensValues& v, const std::string& text) -> Done {
            const auto widths = read_numbers(text, "deg");
            if (!widths || widths->empty())
              return unreadable("panels.widths_deg", text, "one width in degrees for each panel");
            if (widths->size() < 2 || widths->size() > kMostPanels) {
              return request_problem(
                  "value.range", "panels.widths_deg",
                  fmt::format("panels.widths_deg has {} {}; a lens has 2 to {} panels. Give as many widths",
                              widths->size(), widths->size() == 1 ? "width" : "widths", kMostPanels));
            }
            if (widths->size() != v.panels.size()) v.panels = equal_panels(static_cast<int>(widths->size()));
            for (std::size_t i = 0; i < widths->size(); ++i) v.panels[i].width_deg = (*widths)[i];
            return {};
          }};
}

SpecialPlace panel_shifts_place() {
  return {[](const LensValues& v) { return joined(v, [](const Panel& p) { return p.axis_shift_deg; }); },
          [](LensValues& v, const std::string& text) -> Done {
            const auto shifts = read_numbers(text, "deg");
            if (!shifts)
              return unreadable("panels.axis_shift_deg", text, "one shift in degrees for each panel");
            if (!shifts->empty() && shifts->size() != v.panels.size()) {
              return wrong_length("panels.axis_shift_deg", shifts->size(), v.panels.size());
            }
            for (std::size_t i = 0; i < v.panels.size(); ++i)
              v.panels[i].axis_shift_deg = shifts->empty() ? 0 : (*shifts)[i];
            return {};
          }};
}

namespace {

/// Numbers of the panels for which `is` holds, and back: `set` is told of every panel whether it is named.
SpecialPlace named_panels_place(const char* key, bool (*is)(const Panel&, Screen),
                                void (*set)(Panel&, bool, Screen), Screen screen = Screen::none) {
  return {[=](const LensValues& v) {
            std::vector<double> named;
            for (std::size_t i = 0; i < v.panels.size(); ++i) {
              if (is(v.panels[i], screen)) named.push_back(static_cast<double>(i + 1));
            }
            return numbers_text(named);
          },
          [=](LensValues& v, const std::string& text) -> Done {
            const auto numbers = read_numbers(text, "");
            if (!numbers) return unreadable(key, text, "numbers of panels");
            std::vector<bool> named(v.panels.size(), false);
            for (const double number : *numbers) {
              if (number != std::floor(number) || number < 1 || number > static_cast<double>(v.panels.size())) {
                return request_problem(
                    "panels.unknown", key,
                    fmt::format("{} names panel {:g}, but the lens has panels 1 to {}. Name panels that it has",
                                key, number, v.panels.size()));
              }
              named[static_cast<std::size_t>(number) - 1] = true;
            }
            for (std::size_t i = 0; i < v.panels.size(); ++i) set(v.panels[i], named[i], screen);
            return {};
          }};
}

}  // namespace

SpecialPlace blind_panels_place() {
  return named_panels_place(
      "panels.blind", [](const Panel& p, Screen) { return p.blind; },
      [](Panel& p, bool named, Screen) { p.blind = named; });
}

SpecialPlace screened_panels_place(Screen screen) {
  const char* key = screen == Screen::red     ? "panels.red"
                    : screen == Screen::green ? "panels.green"
                                              : "panels.yellow";
  return named_panels_place(
      key, [](const Panel& p, Screen s) { return p.screen == s; },
      [](Panel& p, bool named, Screen s) {
        if (named)
          p.screen = s;
        else if (p.screen == s)
          p.screen = Screen::none;
      },
      screen);
}

}  // namespace prismwright
