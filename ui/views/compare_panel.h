#pragma once

#include <QWidget>

#include "ui/models/section_comparer.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QListWidgetItem;
class QPushButton;

namespace prismwright {

class ComparisonTable;

/// Variants of the section by name, and any two of them side by side. Double click or F2 on a name renames it;
/// dropping asks nothing: undo brings it back.
///
/// Object names: variants (list), variant.name, variant.keep, variant.take, variant.drop, compare.first,
/// compare.second, compare.words, compare.table.
class ComparePanel : public QWidget {
  Q_OBJECT

 public:
  ComparePanel(Workbench* bench, SectionComparer* comparer, QWidget* parent = nullptr);

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeVariants();
  QWidget* makeComparison();
  void keep();
  void rename(QListWidgetItem* item);
  [[nodiscard]] QString chosen() const;
  void followNames();
  void followComparison();
  void followChoice();

  Workbench* bench_;
  SectionComparer* comparer_;
  QListWidget* list_;
  QLineEdit* name_;
  QPushButton* keep_;
  QPushButton* take_;
  QPushButton* drop_;
  QComboBox* first_;
  QComboBox* second_;
  QLabel* words_;
  ComparisonTable* table_;
};

}  // namespace prismwright
