#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <optional>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// One line of the table of prisms. What is not known yet is blank.
struct PrismRow {
  QString mark;
  int panel = 1;
  QString zone;
  QString kind;
  std::optional<double> volume_mm3;
  std::optional<double> mass_g;
  std::optional<double> greatest_length_mm;
  std::optional<double> tightest_mm;
  std::optional<Verdict> verdict;
  Stage stage = Stage::drawn;
};

/// Every prism of the plan with what is known of its solid, its tightest clearance and its stage.
std::vector<PrismRow> prism_rows(const Workbench& bench);

/// All prisms of the lens as a table: cells for the eye (Qt::DisplayRole), plain values to sort by (kSortRole).
class PrismTable : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { mark, panel, zone, kind, volume, mass, length, tightest, stage, kColumns };
  static constexpr int kSortRole = Qt::UserRole;

  explicit PrismTable(QObject* parent = nullptr);

  /// Keeps the rows that are the same prisms in place, so that a selection in a view lives on.
  void setRows(std::vector<PrismRow> rows, bool inches);
  [[nodiscard]] const PrismRow& row(int index) const { return rows_[static_cast<std::size_t>(index)]; }
  /// Line of a mark, or -1.
  [[nodiscard]] int lineOf(const QString& mark) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  [[nodiscard]] QString words(const PrismRow& row, int column) const;
  [[nodiscard]] static QVariant sortValue(const PrismRow& row, int column);

  std::vector<PrismRow> rows_;
  QHash<QString, int> lines_;
  bool inches_ = false;
};

/// Keeps the rows in which every word of a filter text occurs, in whatever column.
class WordFilter : public QSortFilterProxyModel {
  Q_OBJECT

 public:
  explicit WordFilter(QObject* parent = nullptr);
  void setWords(const QString& text);

 protected:
  [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  QStringList words_;
};

}  // namespace prismwright
