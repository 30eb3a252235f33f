#pragma once

#include <QAbstractTableModel>
#include <string>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// Prisms by zone and stage: the first row counts the whole lens, the others one zone each, from the top of the
/// lens down.
class CountsModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit CountsModel(Workbench* bench, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  /// Prisms that a cell counts (column 0: the whole row), in the order of the plan.
  [[nodiscard]] QStringList marksOf(const QModelIndex& index) const;

 private:
  void read();
  [[nodiscard]] Stage stageOf(const std::string& mark) const;
  Workbench* bench_;
  std::vector<std::string> zones_;
  StageCounts counts_;
};

}  // namespace prismwright
