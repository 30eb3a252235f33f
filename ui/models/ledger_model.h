#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// The works ledger as a table, newest line first; on demand only the lines of the selected prisms.
class LedgerModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { number, when, prism, casting, from, to, load, by, note, columns };

  explicit LedgerModel(Workbench* bench, QObject* parent = nullptr);
  void setOnlySelection(bool only);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  void read();
  Workbench* bench_;
  bool only_selection_ = false;
  std::vector<LedgerEntry> lines_;
};

}  // namespace prismwright
