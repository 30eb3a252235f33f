#pragma once

#include <QAbstractTableModel>
#include <QStringList>
#include <vector>

#include "ui/models/prism_table.h"

namespace prismwright {

/// A cell: as it is read, what it sorts by, and as it is saved.
struct Cell {
  QString shown;
  QVariant sorts;
  QString saved;
};
/// A number as it is read, with what it is saved and sorted by in full.
Cell number_cell(const QString& shown, double value);
Cell word_cell(const QString& words);
/// A cell without a number: a dash that sorts behind all numbers and is saved blank.
Cell blank_cell();
/// Mark and word of a verdict; the worst sorts first.
Cell verdict_cell(Verdict verdict);

struct CellHead {
  QString words;  ///< with its unit under it; blank: not shown, but saved and found by the filter
  QString key;    ///< head of the saved column, with its unit: "gap_mm"
  QString tip;
  bool number = false;
};

/// A row speaks of one or several parts or prisms.
struct CellRow {
  QStringList marks;
  std::vector<Cell> cells;
  bool amiss = false;  ///< what is wrong stands out
};

/// A table of results in words.
struct CellSheet {
  std::vector<CellHead> heads;
  std::vector<CellRow> rows;
};

/// The sheet as a model: words (Qt::DisplayRole), plain values to sort by (PrismTable::kSortRole).
class CellTable : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit CellTable(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

  void setSheet(CellSheet sheet);
  [[nodiscard]] const CellSheet& sheet() const { return sheet_; }
  [[nodiscard]] const CellRow& row(int line) const { return sheet_.rows[static_cast<std::size_t>(line)]; }
  /// The first row that speaks of this mark, or -1.
  [[nodiscard]] int lineOf(const QString& mark) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  CellSheet sheet_;
};

/// Keeps the rows that hold every word typed and every choice made in a column.
class CellFilter : public WordFilter {
  Q_OBJECT

 public:
  explicit CellFilter(QObject* parent = nullptr) : WordFilter(parent) {}
  /// Only rows whose cell in this column reads so; blank: all.
  void setChoice(int column, const QString& shown);

 protected:
  [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  QHash<int, QString> choices_;
};

}  // namespace prismwright
