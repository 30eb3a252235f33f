#pragma once

#include <QPainterPath>
#include <memory>

#include "core/frame/nest.h"
#include "ui/views/zoom_canvas.h"

namespace prismwright {

/// One sheet with the plates that are cut from it: outlines, holes, pockets and marks. A click chooses a plate.
/// Object name: frame.nest.
class NestPicture : public ZoomCanvas {
  Q_OBJECT

 public:
  explicit NestPicture(QWidget* parent);

  /// `flats` are those that the nest was made from. Null: nothing, for the reason given.
  void setSheet(const NestSheet* sheet, const std::vector<FlatPart>& flats, const QString& reason = {});
  void setChosen(const QStringList& marks);
  /// Mark of the plate at that place of the sheet, or empty.
  [[nodiscard]] QString markAt(const QPointF& place_mm) const;
  /// Middle of a plate in pixels of this widget; blank when it is not on this sheet.
  [[nodiscard]] std::optional<QPointF> placeOf(const QString& mark) const;

 signals:
  void chosen(const QString& mark);

 protected:
  [[nodiscard]] QRectF box() const override;
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Plate {
    QString mark;
    QPainterPath brass;  ///< outline less openings and holes
    QPainterPath pockets;
    QPointF middle;
  };
  void paintMark(QPainter& painter, const Plate& plate, const QTransform& to_pixels) const;

  std::vector<Plate> plates_;
  QSizeF size_;
  QString reason_;
  QStringList chosen_;
};

}  // namespace prismwright
