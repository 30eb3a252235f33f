#pragma once

#include <QListWidget>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// Warnings and notes of the frame, a line for each kind of part that has it; hidden when there is none. A
/// click, or Return, leads to the part. Object name: frame.warnings.
class FrameWarnings : public QListWidget {
  Q_OBJECT

 public:
  explicit FrameWarnings(QWidget* parent);
  /// Null: none.
  void setFrame(const FramePlan* frame);

 signals:
  void partWanted(const QString& mark);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void lead(QListWidgetItem* item);
};

}  // namespace prismwright
