#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "core/lens/quantities.h"

namespace prismwright {

/// Numbers as the maker sees them. Books, keys and code keep mm; only what is on screen changes to inches.

/// "mm" or "in".
QString length_unit(bool inches);
/// A length without its unit: `decimals` digits in mm, two more in inches.
QString length_number(double mm, bool inches, int decimals = 2);
/// A length with its unit: "0.42 mm", "0.0165 in".
QString length_text(double mm, bool inches, int decimals = 2);
/// A mass: "812 g", "14.6 kg".
QString mass_text(double g);

/// A refusal as the window says it: keys become the labels of their fields, and it ends in a full stop.
QString sentence_of(const Problem& problem);

/// The unit that a quantity is shown in.
QString shown_unit(const Quantity& quantity, bool inches);
/// A value text of the book as it is shown (lengths turned into inches where asked; lists member by member).
QString shown_value(const Quantity& quantity, const std::string& text, bool inches);
/// What was typed as a value text for with_assignments: a bare length typed while inches are shown becomes "...
/// in".
std::string typed_value(const Quantity& quantity, const QString& typed, bool inches);
/// "0.5 to 40 mm"; empty where a range says nothing (choices, texts).
QString range_words(const Quantity& quantity, bool inches);

/// "ring edge 4 -> 5 mm": what undo will say of the change from one value text to another.
QString change_words(const Quantity& quantity, const std::string& before, const std::string& after);
/// The same for everything that differs; more than two changes are counted, not listed.
QString change_words(const LensValues& before, const LensValues& after);

}  // namespace prismwright
