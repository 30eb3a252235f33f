#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/lens_values.h"

namespace prismwright {

enum class QuantityForm { number, count, choice, flag_list, number_list, text };

/// One quantity of the lens: it describes itself to the form, the batch program, the reports and the book.
struct Quantity {
  std::string key;  ///< "section.edge_mm": stable, the same in the book, the batch program and the window
  QuantityForm form = QuantityForm::number;
  std::string unit;  ///< "mm", "deg", "K", "g/cm3", or empty
  double min = 0;    ///< numbers, counts and list members
  double max = 0;
  bool may_be_blank = false;
  std::vector<std::string> choices;  ///< choice only
  std::string label;                 ///< short, for forms: "Edge thickness"
  std::string meaning;               ///< one sentence, with the default's reason or source
};

/// All quantities, in the order of the pages.
const std::vector<Quantity>& quantities();
/// The quantity of that key, or null.
const Quantity* find_quantity(std::string_view key);

/// The value as text that reads back exactly; empty when blank. The key must exist.
std::string value_text(const LensValues& values, std::string_view key);

using Assignment = std::pair<std::string, std::string>;  ///< key, text

/// New values with all assignments taken, or the first Problem; all or none are taken.
///
/// Texts may carry a unit: "3/8 in", "12.5 mm", "0.5 deg". A new brief.order brings its own focal distance,
/// edge and chord unless they are given too; a new material.name brings its own index and density likewise.
/// The result has passed check_values and check_buildable.
Outcome<LensValues> with_assignments(const LensValues& values, std::span<const Assignment> assignments);

/// The same without check_buildable, for a caller who solves the section next anyway.
Outcome<LensValues> with_checked_assignments(const LensValues& values, std::span<const Assignment> assignments);

/// Refuses values outside their range and values that contradict each other (widths that do not add to
/// 360 deg, a pocket deeper than the rib, margins that do not rise).
Done check_values(const LensValues& values);

/// Refuses values from which no section can be worked out, with the zone and the reason. Kept apart from
/// check_values so that a book made by an older program always opens, whatever a later one thinks of its
/// section.
Done check_buildable(const LensValues& values);

/// The values that differ between two states, as keys in table order.
std::vector<std::string> changed_keys(const LensValues& before, const LensValues& after);

/// The values a new lensbook of an order starts from. End and setting gaps give acrylic prisms of the standard
/// divisions room to grow, to the next tenth of a mm, as far as an end gap of 1.5 mm.
LensValues starting_values(std::string_view order_key, Work work, int panels);

/// A length, angle or plain number typed by a person, in the quantity's own unit ("3/8 in" for mm gives 9.525).
std::optional<double> read_number(std::string_view text, std::string_view unit);
/// Shortest text that reads back to exactly this number.
std::string number_text(double value);

}  // namespace prismwright
