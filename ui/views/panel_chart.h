#pragma once

#include <QHash>
#include <QPainterPath>
#include <QWidget>

#include "ui/models/colouring.h"

namespace prismwright {

/// The lens unrolled: panels left to right as seen from outside, zones by height, true proportions.
/// A click selects a prism, Ctrl adds, a drag over empty space draws a box that selects many.
class PanelChart : public QWidget {
  Q_OBJECT

 public:
  explicit PanelChart(Workbench* bench, QWidget* parent = nullptr);

  void setColouring(Colouring colouring);
  [[nodiscard]] Colouring colouring() const { return colouring_; }
  /// Place of a prism's middle in the widget (for tests and tips); null point when it is not drawn.
  [[nodiscard]] QPointF placeOf(const QString& mark) const;
  /// The mark drawn at that place, or empty.
  [[nodiscard]] QString markAt(const QPointF& place) const;

  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;

 private:
  void rebuild();
  Workbench* bench_;
  Colouring colouring_ = Colouring::stage;
  QHash<QString, QPainterPath> outlines_;
  QRectF box_;
  QPointF press_;
};

}  // namespace prismwright
