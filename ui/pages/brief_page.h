#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

class QLabel;
class QPushButton;
class QSpinBox;
class QTableView;

namespace prismwright {

class PanelsModel;
class PanelsPlan;

/// What was ordered: the form, the panels with their plan, and the main figures of the lens that follows from
/// them.
///
/// Object names: field.KEY (see QuantityEditor), panels (table), panels.count, panels.equal, panels.putBack,
/// panels.sum, panelsPlan, figure.NAME.
class BriefPage : public QWidget {
  Q_OBJECT

 public:
  explicit BriefPage(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeForm();
  QWidget* makePanels();
  QWidget* makeFigures();
  void followPanels();
  void followFigures();

  Workbench* bench_;
  PanelsModel* model_;
  QTableView* table_ = nullptr;
  PanelsPlan* plan_ = nullptr;
  QSpinBox* count_ = nullptr;
  QPushButton* equal_ = nullptr;
  QPushButton* put_back_ = nullptr;
  QLabel* sum_ = nullptr;
};

}  // namespace prismwright
