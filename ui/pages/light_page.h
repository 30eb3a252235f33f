#pragma once

#include <QWidget>
#include <functional>
#include <vector>

#include "ui/models/light_maker.h"
#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;
class QTabWidget;

namespace prismwright {

class BeamPlot;
class LightFigures;
class NumberField;

/// The light of the lens: its figures and the values that rule them at the left, plots of beam, flash, range
/// and of where the light goes at the right. It is worked out while the page is seen.
///
/// Object names: page.light (itself), light.panel, light.elevation, light.progress, light.stop, light.words,
/// light.reason, light.tabs; those of the views.
class LightPage : public QWidget {
  Q_OBJECT

 public:
  explicit LightPage(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] LightMaker* maker() const { return maker_; }

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  /// Hands a tab the light to be shown; null while there is none.
  using Taker = std::function<void(const std::shared_ptr<const LightReport>& report)>;

  QWidget* makeLeft();
  QWidget* makeRight();
  QWidget* makeHead();
  void addTab(QWidget* tab, const QString& title, Taker taker);
  void addFlashTab();
  void addRangeTab();
  void addColourTab();
  void addBudgetTab();
  void addBenchTab();
  void addErrorsTab();

  void askAnew();
  void followPanels();
  void showReport(const std::shared_ptr<const LightReport>& report);
  void follow();
  void followWords();
  void tellProgress(double share, const QString& what);
  void showSharper(const std::shared_ptr<const BeamMap>& beam);

  Workbench* bench_;
  LightMaker* maker_;
  LightFigures* figures_ = nullptr;
  QComboBox* panel_ = nullptr;
  NumberField* elevation_ = nullptr;
  QLabel* words_ = nullptr;
  QProgressBar* bar_ = nullptr;
  QPushButton* stop_ = nullptr;
  /// Of each tab that shows the light: the tab, or why there is no light.
  struct Shown {
    QStackedWidget* stack;
    QLabel* reason;
  };
  std::vector<Shown> stacks_;
  QTabWidget* tabs_ = nullptr;
  BeamPlot* beam_ = nullptr;
  std::vector<Taker> takers_;
  std::shared_ptr<const LightReport> shown_;
};

}  // namespace prismwright
