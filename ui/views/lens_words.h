#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <vector>

namespace prismwright {

/// Words that belong to a place of the picture and stand beside it, joined to it by a line.
struct PinnedWords {
  QPointF at;          ///< the place, in pixels
  QSizeF size;         ///< of the box of words, in pixels
  bool below = false;  ///< stands below its place where there is room, else above it
};

/// Boxes for those words, one each in their order: beside their places, whole inside `room`, clear of each
/// other and of what is `taken` already. Where there is no clear place, the one that covers least.
std::vector<QRectF> lay_out_words(const std::vector<PinnedWords>& words, const QRectF& room,
                                  std::vector<QRectF> taken);

}  // namespace prismwright
