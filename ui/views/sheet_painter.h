#pragma once

#include <QTransform>

#include "core/drawing/drawing.h"

class QPainter;

namespace prismwright {

/// Paints one sheet of a drawing in the colours of the window: its paper, then pictures, strokes and words.
/// Pictures keep their own colours, tones are deepened on a dark sheet. `to_pixels` leads from millimetres of
/// paper, y up, to the painter's units; it must not turn. Lines keep their classes apart, however small the
/// sheet: each is at least a hair wide.
void paint_sheet(QPainter& painter, const Sheet& sheet, const QTransform& to_pixels);

}  // namespace prismwright
