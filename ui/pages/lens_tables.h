#pragma once

#include <QTabWidget>
#include <optional>

#include "ui/models/clearance_table.h"
#include "ui/models/prism_table.h"
#include "ui/models/workbench.h"

class QLineEdit;
class QTableView;

namespace prismwright {

/// Prisms and clearances as tables; both share the one selection of the workbench.
///
/// Object names: lens.tables (itself), lens.prisms, lens.filter, lens.clearances.
class LensTables : public QTabWidget {
  Q_OBJECT

 public:
  explicit LensTables(Workbench* bench, QWidget* parent = nullptr);

  void refresh();
  void followSelection();

 signals:
  /// A clearance was chosen in its table; blank when it no longer is.
  void gapChosen(const std::optional<prismwright::Clearance>& gap);

 private:
  QTableView* makeTable(QAbstractItemModel* model, WordFilter* order, const char* name);
  void takePrisms();
  void takeClearance(const QModelIndex& current);

  Workbench* bench_;
  PrismTable* prisms_;
  WordFilter* prism_order_;
  QTableView* prism_view_;
  ClearanceTable* clearances_;
  WordFilter* clearance_order_;
  QTableView* clearance_view_;
  std::shared_ptr<const std::vector<Clearance>> shown_clearances_;
  bool shown_inches_ = false;
  bool following_ = false;  ///< a selection is being set from outside, or was sent from here
};

}  // namespace prismwright
