#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QHBoxLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace prismwright {

class FilteredTable;
class RefusalLabel;

/// Measurements against the drawing: every prism with how it stands at the left; at the right what is to be
/// measured on the selected one, a field for what was read, and what is done with one out of tolerance.
///
/// Object names: works.inspected and works.features (tables; see FilteredTable), works.inspect.told,
/// works.inspect.prism, works.inspect.how, works.inspect.reading, works.inspect.by, works.inspect.record,
/// works.inspect.accept, works.inspect.shim, works.inspect.scrap, works.inspect.refusal.
class InspectionTab : public QWidget {
  Q_OBJECT

 public:
  InspectionTab(WorksDesk* desk, QWidget* parent);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeFeatures();
  QPushButton* addDecision(QHBoxLayout* row, const QString& words, const char* name, DecisionKind kind);
  void follow();
  void followSelection();
  void showFeature();
  void record();
  void decide(DecisionKind kind);
  [[nodiscard]] const InspectedPrism* prism() const;
  [[nodiscard]] const CheckedFeature* feature() const;

  WorksDesk* desk_;
  FilteredTable* prisms_ = nullptr;
  FilteredTable* features_ = nullptr;
  QLabel* told_ = nullptr;
  QLabel* prism_ = nullptr;
  QLabel* how_ = nullptr;
  QLineEdit* reading_ = nullptr;
  QLineEdit* by_ = nullptr;
  QPushButton* record_ = nullptr;
  RefusalLabel* refusal_ = nullptr;
  std::vector<QPushButton*> decisions_;
};

}  // namespace prismwright
