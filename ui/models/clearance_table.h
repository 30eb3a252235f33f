#pragma once

#include <QAbstractTableModel>
#include <memory>
#include <vector>

#include "geometry/clearances.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// All clearances as a table for the page Frame, tightest first; row i speaks of `order[i]`-th of them. The
/// nearest points are saved and not shown.
struct ClearanceSheet {
  CellSheet sheet;
  std::vector<std::size_t> order;
};
ClearanceSheet clearance_sheet(const std::vector<Clearance>& clearances, bool inches);

/// Every measured pair of neighbours with its gap, the needed gap and the verdict; tightest first.
class ClearanceTable : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { pair, gap, needed, verdict, kColumns };

  explicit ClearanceTable(QObject* parent = nullptr);

  /// Clashes first, by their overlap; then by what is left over the needed gap.
  void setClearances(std::shared_ptr<const std::vector<Clearance>> clearances, bool inches);
  [[nodiscard]] const Clearance& clearance(int line) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  [[nodiscard]] QVariant sortValue(int line, int column) const;

  std::shared_ptr<const std::vector<Clearance>> clearances_;
  std::vector<std::size_t> order_;
  bool inches_ = false;
};

}  // namespace prismwright
