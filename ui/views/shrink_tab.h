#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace prismwright {

class FilteredTable;
class RefusalLabel;

/// What readings of masters and castings say of shrinkage; a line to enter a reading, and a button that lets
/// the next masters use what was learned.
///
/// Object names: works.shrink (table; see FilteredTable), works.shrink.told, works.shrink.master,
/// works.shrink.direction, works.shrink.masterLength, works.shrink.castingLength, works.shrink.record,
/// works.shrink.take, works.shrink.refusal.
class ShrinkTab : public QWidget {
  Q_OBJECT

 public:
  ShrinkTab(WorksDesk* desk, QWidget* parent);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeReading();
  void follow();
  void record();
  void take();
  /// The fit of the resin and lot in use; null where nothing was measured of it.
  [[nodiscard]] const ShrinkFit* inUse() const;

  WorksDesk* desk_;
  QLabel* told_ = nullptr;
  FilteredTable* table_ = nullptr;
  QComboBox* master_ = nullptr;
  QComboBox* direction_ = nullptr;
  QLineEdit* master_mm_ = nullptr;
  QLineEdit* casting_mm_ = nullptr;
  QPushButton* record_ = nullptr;
  QPushButton* take_ = nullptr;
  RefusalLabel* refusal_ = nullptr;
};

}  // namespace prismwright
