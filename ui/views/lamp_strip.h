#pragma once

#include <QWidget>

#include "ui/models/laser.h"

namespace prismwright {

/// The light of the focus by elevation, beside the drawing: who takes it, and what becomes of it. The pointer
/// reads it off, a click turns the laser there, and the laser's place is marked.
///
/// Object name: section.lampStrip.
class LampStripView : public QWidget {
  Q_OBJECT

 public:
  LampStripView(Workbench* bench, Laser* laser, QWidget* parent = nullptr);

  /// What the strip shows at that height: "U03 takes 41.20 to 44.86 deg: level".
  [[nodiscard]] QString wordsAt(double y) const;
  [[nodiscard]] double yOf(double elevation_deg) const;
  [[nodiscard]] double elevationAt(double y) const;
  [[nodiscard]] QSize sizeHint() const override { return {54, 400}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {54, 100}; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  void follow();
  void followLaser();
  void paintScale(QPainter& painter) const;
  void paintStrips(QPainter& painter) const;
  void paintNames(QPainter& painter) const;
  [[nodiscard]] QRectF bar() const;
  [[nodiscard]] QRect arrowRect() const;

  Workbench* bench_;
  Laser* laser_;
  std::shared_ptr<const Proof> proof_;
  double least_deg_ = -90;  ///< at the foot of the bar
  double most_deg_ = 90;    ///< at its head
  QRect arrow_;             ///< where the laser's arrow was painted last
};

}  // namespace prismwright
