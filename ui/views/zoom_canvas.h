#pragma once

#include <QTransform>
#include <QWidget>

namespace prismwright {

/// Something flat in millimetres, y up, that is enlarged and moved: the wheel enlarges at the pointer, a drag
/// pans, a double click brings everything into sight. Keys: arrows pan, + and - enlarge and reduce, Home brings
/// everything into sight.
class ZoomCanvas : public QWidget {
  Q_OBJECT

 public:
  explicit ZoomCanvas(QWidget* parent);

  void fitAll();
  void zoom(double factor);  ///< about the middle
  void zoomAt(const QPointF& place, double factor);
  [[nodiscard]] QTransform toPixels() const;
  /// Place in mm under a pixel.
  [[nodiscard]] QPointF placeAt(const QPointF& pixel) const;
  [[nodiscard]] double pixelsPerMm() const;

 signals:
  void clicked(const QPointF& place_mm);

 protected:
  /// All that is to be seen, mm; empty: nothing.
  [[nodiscard]] virtual QRectF box() const = 0;
  /// Room in pixels that is kept free round the box when all is in sight.
  [[nodiscard]] virtual double margin() const { return 8; }
  /// Another thing is shown: brings it into sight unless `keeps_view`.
  void boxChanged(bool keeps_view);

  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  [[nodiscard]] double fitting() const;

  double enlarged_ = 1;  ///< over the scale at which all is in sight
  QPointF middle_;       ///< of the picture, mm
  bool moved_ = false;
  bool panning_ = false;
  QPointF last_;
  QPointF pressed_;
};

}  // namespace prismwright
