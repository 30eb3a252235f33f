#pragma once

#include <QIcon>
#include <QString>

class QApplication;

namespace prismwright {

/// Gives the application its palette, style sheet, type and sign. Once, before the first window.
void dress(QApplication& application);

/// One of the program's own line drawings by its name ("lens", "mould"), in the ink of the theme in use; null
/// when there is none of that name.
QIcon drawn_icon(const QString& name);

/// A round mark of 18 px for a tell-tale: tick (well), cross (amiss), open ring (not known yet).
enum class MarkKind { well, amiss, unknown };
QIcon state_mark(MarkKind kind);

}  // namespace prismwright
