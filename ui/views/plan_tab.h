#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace prismwright {

class BarsPicture;
class FilteredTable;
class RefusalLabel;

/// When the lens is finished and what it costs: bars, hours and money by step, estimate beside what was
/// entered; a line to enter hours and money.
///
/// Object names: works.bars, works.steps and works.costs (tables; see FilteredTable), works.plan.told,
/// works.spend.step, works.spend.hours, works.spend.money, works.spend.note, works.spend.record,
/// works.spend.refusal.
class PlanTab : public QWidget {
  Q_OBJECT

 public:
  PlanTab(WorksDesk* desk, QWidget* parent);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeSpending();
  void follow();
  void record();

  WorksDesk* desk_;
  QLabel* told_ = nullptr;
  BarsPicture* bars_ = nullptr;
  FilteredTable* steps_ = nullptr;
  FilteredTable* costs_ = nullptr;
  QComboBox* step_ = nullptr;
  QLineEdit* hours_ = nullptr;
  QLineEdit* money_ = nullptr;
  QLineEdit* note_ = nullptr;
  QPushButton* record_ = nullptr;
  RefusalLabel* refusal_ = nullptr;
};

}  // namespace prismwright
