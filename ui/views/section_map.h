#pragma once

#include <QPointF>
#include <QRectF>

#include "core/optics/section_plane.h"

namespace prismwright {

/// How the meridional plane lies on the screen: r to the right, z up, one scale for both.
class SectionMap {
 public:
  [[nodiscard]] double pixelsPerMm() const { return scale_; }
  [[nodiscard]] QPointF toView(SectionPoint p) const {
    return {origin_.x() + p.r * scale_, origin_.y() - p.z * scale_};
  }
  [[nodiscard]] SectionPoint toSection(QPointF p) const {
    return {(p.x() - origin_.x()) / scale_, (origin_.y() - p.y()) / scale_};
  }

  /// Brings a box of the section (x = r, y = z, mm; height upward) wholly into `view` pixels, centred.
  void fit(const QRectF& box_mm, const QRectF& view);
  /// Enlarges by `factor`; the point of the section under `place` stays where it is.
  void zoomAt(QPointF place, double factor);
  void pan(QPointF pixels) { origin_ += pixels; }
  /// Moves so that the section's point shows at `place`.
  void put(SectionPoint p, QPointF place);

  friend bool operator==(const SectionMap&, const SectionMap&) = default;

 private:
  QPointF origin_;  ///< where the focus shows
  double scale_ = 1;
};

}  // namespace prismwright
