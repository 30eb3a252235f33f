#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/light/setting_errors.h"

namespace prismwright {

/// A row of a table: what it speaks of, its cells as they are read, and the same as they are saved.
struct ErrorsRow {
  QString mark;  ///< of a prism, or a zone; blank: the whole panel
  QStringList shown;
  QStringList saved;
};

/// A table of results: heads with their units as they are read and as they are saved.
struct ErrorsTable {
  QStringList heads;
  QStringList tips;
  QStringList keys;
  std::vector<ErrorsRow> rows;
};

/// "tilt", "face angle".
QString error_words(ErrorKind kind);
/// What the trials say, sentence by sentence: peak, its elevation, its height, and what was drawn.
QStringList errors_words(const SettingErrors& errors);
/// Standard deviations that leave 90 %, the panel first and then zone by zone; "–" beyond the bound.
ErrorsTable tolerances_table(const SettingErrors& errors);
/// Turns of the beams of one panel's prisms by every error; "–" for a prism that sends no light its own way.
ErrorsTable turns_table(const SettingErrors& errors, int panel);

}  // namespace prismwright
