#pragma once

#include <QWidget>

#include "ui/models/panels_model.h"

namespace prismwright {

/// The panels seen from above, each with its number and the way its beam goes; panel 1 looks to the right.
/// Shows what the panel table shows, held edits included: then a gap or an overlap is seen where the widths do
/// not close.
class PanelsPlan : public QWidget {
  Q_OBJECT

 public:
  PanelsPlan(Workbench* bench, PanelsModel* model, QWidget* parent = nullptr);
  void setMarked(int panel);  ///< number of the panel to bring out; 0 for none
  [[nodiscard]] QSize sizeHint() const override { return {300, 300}; }

 signals:
  void panelClicked(int panel);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  [[nodiscard]] class QPainterPath panelPath(const PanelPlace& place, double inner, double outer) const;
  [[nodiscard]] double outerRadius() const;
  Workbench* bench_;
  PanelsModel* model_;
  int marked_ = 0;
};

}  // namespace prismwright
