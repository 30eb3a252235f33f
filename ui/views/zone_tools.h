#pragma once

#include <QToolButton>
#include <QWidget>

namespace prismwright {

class ZoneActions;

/// The row of tools above the zone table. Object names of its buttons: tool.zone.lock, tool.zone.split,
/// tool.zone.remove, tool.zone.add.
class ZoneTools : public QWidget {
  Q_OBJECT

 public:
  explicit ZoneTools(ZoneActions* actions, QWidget* parent = nullptr);
  void allowDrawing(bool allowed) { drawing_->setEnabled(allowed); }

 signals:
  void drawingWanted();  ///< "Save drawing…" was pressed (tool.drawing)

 private:
  QToolButton* drawing_;
};

}  // namespace prismwright
