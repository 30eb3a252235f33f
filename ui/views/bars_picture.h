#pragma once

#include <QWidget>

#include "core/works/work_plan.h"

namespace prismwright {

/// The plan as bars: a row for each step with something left, days from left to right.
/// Object name: works.bars.
class BarsPicture : public QWidget {
  Q_OBJECT

 public:
  explicit BarsPicture(QWidget* parent);
  void setPlan(const WorkPlan* plan);
  [[nodiscard]] QSize sizeHint() const override;
  /// Place of a step's bar in this widget; empty when it has none (for tests and tips).
  [[nodiscard]] QRectF barOf(WorkStep step) const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;

 private:
  [[nodiscard]] double pixelOf(double day) const;
  void paintDays(class QPainter& painter) const;

  WorkPlan plan_;
};

}  // namespace prismwright
