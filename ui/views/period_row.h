#pragma once

#include <QWidget>
#include <memory>

#include "core/light/light_report.h"
#include "ui/models/workbench.h"

class QLabel;
class QPushButton;

namespace prismwright {

class NumberField;

/// A wanted period, and the button that sets the turn of the lens that gives it.
///
/// Object names: light.period (the field), light.period.set (the button), light.period.words.
class PeriodRow : public QWidget {
  Q_OBJECT

 public:
  explicit PeriodRow(Workbench* bench, QWidget* parent = nullptr);
  void setReport(std::shared_ptr<const LightReport> report);

 private:
  void take(double period_s);
  void setTurn();
  void follow();

  Workbench* bench_;
  std::shared_ptr<const LightReport> report_;
  double wanted_s_ = 0;
  NumberField* field_;
  QPushButton* set_;
  QLabel* words_;
};

}  // namespace prismwright
