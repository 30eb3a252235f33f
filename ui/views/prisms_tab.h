#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QPushButton;
class QTableView;

namespace prismwright {

class CountsModel;
class LedgerModel;
class LegendStrip;
class PanelChart;

/// What has been made: the panel chart by stage or by shared master, counts by zone, the ledger, and the one
/// button that records a step for a whole tray.
///
/// Object names: panelChart, works.chart.colour ("by stage", "by master"), counts (table), ledger (table),
/// ledger.onlySelection, works.record, works.selected.
class PrismsTab : public QWidget {
  Q_OBJECT

 public:
  explicit PrismsTab(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeChart();
  QWidget* makeCounts();
  QWidget* makeLedger();
  void followSelection();
  void record();

  Workbench* bench_;
  PanelChart* chart_ = nullptr;
  QComboBox* colour_ = nullptr;
  LegendStrip* legend_ = nullptr;
  CountsModel* counts_;
  LedgerModel* ledger_;
  QLabel* selected_ = nullptr;
  QPushButton* record_ = nullptr;
};

}  // namespace prismwright
