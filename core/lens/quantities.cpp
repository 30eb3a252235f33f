#include "core/lens/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/needed_gap.h"
#include "core/lens/orders.h"
#include "core/lens/quantity_table.h"
#include "core/optics/medium.h"

namespace prismwright {

namespace {

const QuantityRow* find_row(std::string_view key) {
  const auto& rows = quantity_rows();
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const QuantityRow& r) { return r.quantity.key == key; });
  return found == rows.end() ? nullptr : &*found;
}

/// Some keys bring others along: these are taken first, so that what is given beside them wins.
constexpr std::array<std::string_view, 4> kFirst = {"brief.order", "material.name", "brief.panels",
                                                    "panels.widths_deg"};

std::size_t turn_of(std::string_view key) {
  return static_cast<std::size_t>(std::find(kFirst.begin(), kFirst.end(), key) - kFirst.begin());
}

std::string bare(const std::string& text) {
  const auto first = text.find_first_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

Problem unreadable(const Quantity& q, const std::string& text) {
  std::string wanted = q.form == QuantityForm::number_list ? "numbers" : "a number";
  if (!q.unit.empty()) wanted += fmt::format(" in {}", q.unit);
  if (q.may_be_blank) wanted += ", or leave it blank";
  return request_problem("value.unreadable", q.key,
                         fmt::format("{} = '{}' cannot be read. Give {}", q.key, text, wanted));
}

Problem not_whole(const Quantity& q, const std::string& text) {
  return request_problem(
      "value.unreadable", q.key,
      fmt::format("{} = '{}' is no whole number. Give one from {:g} to {:g}", q.key, text, q.min, q.max));
}

Done write_choice(const QuantityRow& row, LensValues& values, std::string text) {
  const Quantity& q = row.quantity;
  if (q.key == "brief.order") {
    if (const Order* order = find_order(text)) text = order->key;
  }
  if (std::find(q.choices.begin(), q.choices.end(), text) == q.choices.end()) {
    return request_problem("value.choice", q.key,
                           fmt::format("{} = '{}' is not one of {}. Choose one of these", q.key, text,
                                       fmt::join(q.choices, ", ")));
  }
  return std::get<SpecialPlace>(row.place).write(values, text);
}

Done write_value(const QuantityRow& row, LensValues& values, const std::string& given) {
  const Quantity& q = row.quantity;
  const std::string text = bare(given);
  if (const auto* place = std::get_if<TextPlace>(&row.place)) {
    (*place)(values) = given;
    return {};
  }
  if (q.form == QuantityForm::choice) return write_choice(row, values, text);
  if (const auto* place = std::get_if<SpecialPlace>(&row.place)) return place->write(values, text);
  if (const auto* place = std::get_if<NumbersPlace>(&row.place)) {
    const auto numbers = read_numbers(text, q.unit);
    if (!numbers) return unreadable(q, given);
    (*place)(values) = *numbers;
    return {};
  }
  if (text.empty() && q.may_be_blank) {
    std::get<BlankNumberPlace>(row.place)(values).reset();
    return {};
  }
  const auto number = read_number(text, q.unit);
  if (!number) return unreadable(q, given);
  if (const auto* count = std::get_if<CountPlace>(&row.place)) {
    if (*number != std::floor(*number) || std::abs(*number) > 1e6) return not_whole(q, given);
    (*count)(values) = static_cast<int>(*number);
  } else if (const auto* place = std::get_if<NumberPlace>(&row.place)) {
    (*place)(values) = *number;
  } else {
    std::get<BlankNumberPlace>(row.place)(values) = *number;
  }
  return {};
}

}  // namespace

const std::vector<Quantity>& quantities() {
  static const std::vector<Quantity> all = [] {
    std::vector<Quantity> list;
    for (const QuantityRow& row : quantity_rows()) list.push_back(row.quantity);
    return list;
  }();
  return all;
}

const Quantity* find_quantity(std::string_view key) {
  const QuantityRow* row = find_row(key);
  return row ? &row->quantity : nullptr;
}

std::string value_text(const LensValues& values, std::string_view key) {
  const QuantityRow* row = find_row(key);
  if (!row) return {};
  auto& open = const_cast<LensValues&>(values);  // places serve reading and writing; nothing is written here
  struct Reader {
    LensValues& values;
    std::string operator()(const NumberPlace& place) const { return number_text(place(values)); }
    std::string operator()(const BlankNumberPlace& place) const {
      const auto& number = place(values);
      return number ? number_text(*number) : "";
    }
    std::string operator()(const CountPlace& place) const { return fmt::format("{}", place(values)); }
    std::string operator()(const TextPlace& place) const { return place(values); }
    std::string operator()(const NumbersPlace& place) const { return numbers_text(place(values)); }
    std::string operator()(const SpecialPlace& place) const { return place.read(values); }
  };
  return std::visit(Reader{open}, row->place);
}

Outcome<LensValues> with_checked_assignments(const LensValues& values,
                                             std::span<const Assignment> assignments) {
  std::vector<const Assignment*> turns;
  for (const Assignment& assignment : assignments) {
    if (!find_row(assignment.first)) {
      return request_problem(
          "key.unknown", assignment.first,
          fmt::format("there is no quantity '{}'. The keys verb lists all of them", assignment.first));
    }
    turns.push_back(&assignment);
  }
  std::stable_sort(turns.begin(), turns.end(), [](const Assignment* a, const Assignment* b) {
    return turn_of(a->first) < turn_of(b->first);
  });
  LensValues next = values;
  for (const Assignment* assignment : turns) {
    const Done written = write_value(*find_row(assignment->first), next, assignment->second);
    if (!written) return written.problem();
  }
  if (const Done checked = check_values(next); !checked) return checked.problem();
  return next;
}

Outcome<LensValues> with_assignments(const LensValues& values, std::span<const Assignment> assignments) {
  auto next = with_checked_assignments(values, assignments);
  if (!next) return next;
  if (const Done built = check_buildable(*next); !built) return built.problem();
  return next;
}

std::vector<std::string> changed_keys(const LensValues& before, const LensValues& after) {
  std::vector<std::string> keys;
  for (const Quantity& q : quantities()) {
    if (value_text(before, q.key) != value_text(after, q.key)) keys.push_back(q.key);
  }
  return keys;
}

namespace {

// Outermost ends of prisms stand at 1.067 focal distances and a belt's centre is 0.322 of one high, in every
// order with the starting division.
constexpr double kOutermost = 1.07;
constexpr double kBeltCentre = 0.325;
// Deeper end gaps would leave a prism less than half of its pocket to rest in.
constexpr double kMostEndGap_mm = 1.5;

double to_tenths_above(double gap_mm) { return std::ceil(10 * gap_mm - 1e-9) / 10; }

// The greater a lens, the more its prisms grow: the longest and the highest get the room that they need.
void give_room_to_grow(LensValues& values, int panels) {
  FrameSettings& frame = values.frame;
  const double half_width = kPi / std::max(panels, 2);
  const bool belt = values.brief.work == Work::belt || panels <= 2;
  const double outermost_mm = kOutermost * values.brief.focal_mm;
  const double length_mm = 2 * outermost_mm * (belt ? std::sin(half_width) : std::tan(half_width));
  const double end_mm = needed_at_end_mm(length_mm, values.material.name, frame);
  frame.end_gap_mm = std::clamp(to_tenths_above(end_mm), frame.end_gap_mm, kMostEndGap_mm);
  if (values.brief.work != Work::belt) return;
  const double centre_mm = kBeltCentre * values.brief.focal_mm;
  const double side_mm = needed_at_side_mm(centre_mm, values.material.name, frame);
  frame.setting_gap_mm = std::max(frame.setting_gap_mm, to_tenths_above(side_mm));
}

}  // namespace

LensValues starting_values(std::string_view order_key, Work work, int panels) {
  LensValues values;
  values.brief.order = "";
  const Order* order = find_order(order_key);
  const std::string key(order ? order->key : "4");
  // An order known to the table cannot be refused here.
  (void)std::get<SpecialPlace>(find_row("brief.order")->place).write(values, key);
  values.brief.work = work;
  values.panels = equal_panels(panels);
  give_room_to_grow(values, panels);
  // A light to begin with: a short upright lamp in the focus, and a flash every five seconds.
  values.lamp.height_mm = 12;
  if (work == Work::bullseye) values.light.turn_s = 5.0 * panels;
  return values;
}

}  // namespace prismwright
