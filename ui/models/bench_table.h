#pragma once

#include <QAbstractTableModel>
#include <QHash>
#include <QSortFilterProxyModel>
#include <QStringList>

#include "ui/models/bench_maker.h"

namespace prismwright {

/// All prisms on the laser bench as a table: how the laser is aimed, where the spot should fall, what was read
/// and what mends it. Cells for the eye (Qt::DisplayRole), plain values to sort by (kSortRole).
class BenchTable : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column {
    mark,
    azimuth,
    elevation,
    laser_over,
    spot_up,
    spot_left,
    turn,
    read_up,
    read_left,
    off_now,
    verdict,
    mend,
    off_before,
    kColumns
  };
  static constexpr int kSortRole = Qt::UserRole;

  explicit BenchTable(QObject* parent = nullptr);

  /// Keeps the rows that are the same prisms in place, so that a selection in a view lives on.
  void show(const BenchMaker& maker, bool inches);
  [[nodiscard]] const BenchedPrism& row(int index) const { return rows_[static_cast<std::size_t>(index)]; }
  [[nodiscard]] QString markOf(int index) const { return QString::fromStdString(row(index).aim->mark); }
  /// Line of a mark, or -1.
  [[nodiscard]] int lineOf(const QString& of_mark) const { return lines_.value(of_mark, -1); }
  /// For a band with a focal point of its own the laser stands off the focus.
  [[nodiscard]] bool laserLeavesFocus() const;
  [[nodiscard]] double board_mm() const { return plan_ ? plan_->board_mm : 0; }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  [[nodiscard]] QString words(const BenchedPrism& prism, int column) const;
  [[nodiscard]] QString tip(const BenchedPrism& prism, int column) const;
  [[nodiscard]] QVariant sortValue(const BenchedPrism& prism, int column) const;

  std::shared_ptr<const BenchPlan> plan_;  ///< that the rows point into
  std::vector<BenchedPrism> rows_;
  QHash<QString, int> lines_;
  bool inches_ = false;
};

/// Keeps the rows whose mark holds every word of a filter text: "P03", "U", "p03 r".
class MarkFilter : public QSortFilterProxyModel {
  Q_OBJECT

 public:
  explicit MarkFilter(QObject* parent = nullptr);
  void setWords(const QString& text);

 protected:
  [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  QStringList words_;
};

/// One line for each of these rows in their order, with a head; lengths in mm, numbers that read back exactly.
QString bench_csv(const BenchTable& table, const std::vector<int>& rows);

}  // namespace prismwright
