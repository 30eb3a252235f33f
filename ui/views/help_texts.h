#pragma once

class QWidget;

namespace prismwright {

/// What to mind when glass, lasers, pressure and resin are about. The sentences defer to local code.
void show_cautions(QWidget* parent);
/// What the program is, its version and licence.
void show_about(QWidget* parent);

}  // namespace prismwright
