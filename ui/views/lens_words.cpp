#include "ui/views/lens_words.h"

#include <algorithm>
#include <limits>

namespace prismwright {
namespace {

constexpr double kAside = 24;    // from the place to the near side of the box
constexpr double kUpright = 16;  // from the place to the box above or below it
constexpr double kBreath = 4;    // between boxes
constexpr int kRows = 8;         // how many boxes further away are tried

double covered(const QRectF& box, const std::vector<QRectF>& taken) {
  double area = 0;
  for (const QRectF& other : taken) {
    const QRectF both = box.intersected(other.adjusted(-kBreath, -kBreath, kBreath, kBreath));
    if (both.isValid()) area += both.width() * both.height();
  }
  return area;
}

QRectF inside(QRectF box, const QRectF& room) {
  box.moveLeft(std::clamp(box.left(), room.left(), std::max(room.left(), room.right() - box.width())));
  box.moveTop(std::clamp(box.top(), room.top(), std::max(room.top(), room.bottom() - box.height())));
  return box;
}

/// The box of these words to the right or left of their place, `row` boxes further up or down than the nearest.
QRectF candidate(const PinnedWords& words, bool right, bool below, int row) {
  QRectF box(QPointF(), words.size);
  const double further = row * (words.size.height() + kBreath);
  box.moveLeft(right ? words.at.x() + kAside : words.at.x() - kAside - words.size.width());
  if (below) {
    box.moveTop(words.at.y() + kUpright + further);
  } else {
    box.moveBottom(words.at.y() - kUpright - further);
  }
  return box;
}

QRectF best_box(const PinnedWords& words, const QRectF& room, const std::vector<QRectF>& taken) {
  QRectF best;
  double least = std::numeric_limits<double>::max();
  for (int row = 0; row < kRows; ++row) {
    for (const bool below : {words.below, !words.below}) {
      for (const bool right : {true, false}) {
        const QRectF box = inside(candidate(words, right, below, row), room);
        const double area = covered(box, taken);
        if (area >= least) continue;
        best = box;
        least = area;
        if (area == 0) return best;
      }
    }
  }
  return best;
}

}  // namespace

std::vector<QRectF> lay_out_words(const std::vector<PinnedWords>& words, const QRectF& room,
                                  std::vector<QRectF> taken) {
  // The places themselves stay in sight.
  for (const PinnedWords& each : words) taken.emplace_back(each.at - QPointF(1, 1), QSizeF(2, 2));
  std::vector<QRectF> boxes;
  for (const PinnedWords& each : words) {
    boxes.push_back(best_box(each, room, taken));
    taken.push_back(boxes.back());
  }
  return boxes;
}

}  // namespace prismwright
