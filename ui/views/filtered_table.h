#pragma once

#include <QWidget>
#include <optional>

#include "ui/models/cell_table.h"

class QComboBox;
class QHBoxLayout;
class QLabel;
class QLineEdit;
class QTableView;
class QToolButton;

namespace prismwright {

/// A table of results with a line that filters it by words, choices that filter it by a column, a count of what
/// is shown, sorting by any head, and a button that saves the rows shown as CSV.
///
/// Object names: NAME (the table), NAME.filter, NAME.choice.COLUMN, NAME.count, NAME.save; the dialog is
/// NAME.saveTo.
class FilteredTable : public QWidget {
  Q_OBJECT

 public:
  FilteredTable(const QString& name, const QString& title, QWidget* parent);

  void setHint(const QString& words);
  /// A choice among the words of a column, "all" standing first as `every`.
  void addChoice(int column, const QString& every);
  /// Something of the page's own at the right of the line.
  void addBeside(QWidget* widget);

  /// The row that was chosen stays chosen where its marks are still there.
  void setSheet(CellSheet sheet);
  [[nodiscard]] const CellSheet& sheet() const { return table_->sheet(); }
  void setStale(bool stale);
  /// Why there is no row, in place of their count.
  void setReason(const QString& reason);

  /// Chooses the row without telling of it and brings it into sight; -1: none.
  void showLine(int line);
  [[nodiscard]] int lineOf(const QString& mark) const { return table_->lineOf(mark); }
  /// The filter lets this line through.
  [[nodiscard]] bool isShown(int line) const;
  /// Line of the sheet that is stood on; blank when none is.
  [[nodiscard]] std::optional<int> line() const;
  void setWords(const QString& words);
  /// Neither words nor choices hold anything back.
  void showAllRows();
  [[nodiscard]] QTableView* view() const { return view_; }

 signals:
  void chosen(int line);  ///< by hand
  void wanted(int line);  ///< double click or Return

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void save();
  void count();
  void refillChoices();
  void takeCurrent(const QModelIndex& current);

  QString name_;
  QString title_;
  CellTable* table_;
  CellFilter* order_;
  QTableView* view_;
  QLineEdit* filter_;
  QLabel* count_;
  QToolButton* save_;
  QHBoxLayout* head_;
  struct Choice {
    int column;
    QString every;
    QComboBox* box;
  };
  std::vector<Choice> choices_;
  QString reason_;
  bool following_ = false;
};

}  // namespace prismwright
