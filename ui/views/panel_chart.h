#pragma once

#include <QHash>
#include <QPainterPath>
#include <QWidget>
#include <vector>

#include "ui/models/chart_outlines.h"
#include "ui/models/colouring.h"

namespace prismwright {

/// The lens unrolled: panels left to right as seen from outside, zones by height, true proportions.
/// A click selects a prism, Ctrl adds, a drag draws a box that selects many. Arrow keys go to the next prism,
/// Ctrl+A takes all, Escape none. Many panels stand in two or three rows where that shows them larger.
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
  struct Slot {
    QPointF axis;  ///< where the panel's axis pierces the chart
    QRectF frame;
  };
  void readPlan();
  void rebuild();
  void paintPanel(class QPainter& painter, std::size_t which) const;
  void paintPiece(QPainter& painter, const ChartPiece& piece) const;
  void paintSign(QPainter& painter, const QString& mark, const PrismLook& look) const;
  bool paintWords(QPainter& painter, const QString& mark, const PrismLook& look, const QString& words) const;
  void paintSelected(QPainter& painter) const;
  [[nodiscard]] QStringList marksIn(const QRectF& box) const;
  [[nodiscard]] QString neighbour(const QString& mark, int key) const;

  Workbench* bench_;
  Colouring colouring_ = Colouring::stage;
  std::vector<ChartPanel> panels_;
  std::vector<Slot> slots_;
  double scale_ = 1;  ///< pixels per mm
  QHash<QString, QPainterPath> outlines_;
  QHash<QString, QPointF> anchors_;
  QRectF box_;
  QPointF press_;
};

}  // namespace prismwright
