#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QLabel;
class QPushButton;

namespace prismwright {

class FilteredTable;
class VesselPicture;

/// Castings planned into fillings of the pressure vessel: a table, the load chosen as it stands in the vessel,
/// its cure and annealing hour by hour; under it the loads that were made.
///
/// Object names: works.loads and works.madeLoads (tables; see FilteredTable), works.vessel, works.loads.told,
/// works.loads.cure, works.loads.cautions, works.card, works.castLoad.
class LoadsTab : public QWidget {
  Q_OBJECT

 public:
  LoadsTab(WorksDesk* desk, QWidget* parent);

 signals:
  void cardWanted(std::size_t load);
  void castWanted(std::size_t load);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeTables();
  QWidget* makePicture();
  void follow();
  void showLoad(int line);

  WorksDesk* desk_;
  FilteredTable* table_ = nullptr;
  FilteredTable* made_ = nullptr;
  VesselPicture* picture_ = nullptr;
  QLabel* told_ = nullptr;
  QLabel* cure_ = nullptr;
  QPushButton* card_ = nullptr;
  QPushButton* cast_ = nullptr;
};

}  // namespace prismwright
