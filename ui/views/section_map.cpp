#include "ui/views/section_map.h"

#include <algorithm>

namespace prismwright {
namespace {
// A pixel is never less than 0.005 mm nor more than 50 mm: beyond that there is nothing to see.
constexpr double kSmallestScale = 0.02;
constexpr double kLargestScale = 200;
}  // namespace

void SectionMap::fit(const QRectF& box_mm, const QRectF& view) {
  if (box_mm.width() <= 0 || box_mm.height() <= 0 || view.width() <= 0 || view.height() <= 0) return;
  const double wanted = std::min(view.width() / box_mm.width(), view.height() / box_mm.height());
  scale_ = std::clamp(wanted, kSmallestScale, kLargestScale);
  put({box_mm.center().x(), box_mm.center().y()}, view.center());
}

void SectionMap::zoomAt(QPointF place, double factor) {
  const SectionPoint under = toSection(place);
  scale_ = std::clamp(scale_ * factor, kSmallestScale, kLargestScale);
  put(under, place);
}

void SectionMap::put(SectionPoint p, QPointF place) {
  origin_ = {place.x() - p.r * scale_, place.y() + p.z * scale_};
}

}  // namespace prismwright
