#pragma once

#include <QWidget>

#include "ui/models/laser.h"
#include "ui/models/limit_drag.h"
#include "ui/views/still_section.h"

class QLabel;

namespace prismwright {

/// The section as drawn: glass, rays by fate, the level beam's strip, and the laser that is dragged round the
/// focus.
///
/// Pointer: the wheel enlarges about the pointer, a drag pans, a drag of the grip turns the laser, a click
/// selects the zone's prisms (Ctrl adds or takes away), a double click brings everything into sight, a drag of
/// the selected zone's limit resizes it (Escape puts it back), a right click asks for the menu of the zone.
/// Keys: arrows turn the laser by 0.1 deg (Shift: 1 deg), Page Up and Page Down step by zone, Home brings
/// everything into sight, + and - enlarge and reduce. While the present values give no section the last one
/// stays, faded, under the reason.
class SectionDrawing : public QWidget {
  Q_OBJECT

 public:
  SectionDrawing(Workbench* bench, Laser* laser, QWidget* parent = nullptr);

  [[nodiscard]] const SectionMap& map() const { return map_; }
  /// The zone whose glass is drawn there, or empty.
  [[nodiscard]] QString zoneAt(const QPointF& place) const;
  /// Place of the laser's grip; blank when it is out of sight.
  [[nodiscard]] std::optional<QPointF> grip() const;
  [[nodiscard]] const std::vector<RayPath>& fan() const { return picture_.rays(); }
  /// The limit of the leading selected zone, where it can be dragged and is in sight.
  [[nodiscard]] std::optional<LimitGrip> limitGrip() const;
  [[nodiscard]] LimitDrag* limits() const { return limits_; }
  /// Other sections laid over this one, the first in dashes, the second in dots.
  void setOverlays(const std::vector<SectionOverlay>& overlays);
  void fitAll();
  void zoom(double factor);  ///< about the middle of the drawing
  void zoomAt(const QPointF& place, double factor);

  [[nodiscard]] QSize sizeHint() const override { return {560, 640}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {300, 300}; }

 signals:
  void zoneMenuWanted(const QPoint& global_place);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;

 private:
  enum class Hand { free, pressed, pans, turns, limits };

  void follow();
  void showProblem();
  void select(const QString& zone, bool adds);
  void turnTowards(const QPointF& place);
  [[nodiscard]] QString tipAt(const QPointF& place) const;
  [[nodiscard]] QRectF room() const;  ///< what scales and strip leave
  [[nodiscard]] QRectF box() const;   ///< all that is to be seen, mm
  [[nodiscard]] double reach_mm() const;
  [[nodiscard]] bool overGrip(const QPointF& place) const;
  [[nodiscard]] bool overStrip(const QPointF& place) const;  ///< the strip of the level beam
  [[nodiscard]] bool overLimit(const QPointF& place) const;

  Workbench* bench_;
  Laser* laser_;
  LimitDrag* limits_;
  StillSection picture_;
  SectionMap map_;
  bool fitted_ = true;  ///< nobody has moved the view: it follows the size of the window
  Hand hand_ = Hand::free;
  QPointF press_;
  QPointF last_;
  QLabel* problem_ = nullptr;
};

}  // namespace prismwright
