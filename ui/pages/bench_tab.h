#pragma once

#include <QWidget>

#include "ui/models/bench_maker.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QSplitter;
class QStackedWidget;
class QToolButton;

namespace prismwright {

class BenchTable;
class BenchView;
class BoardPlot;
class MarkFilter;
class NumberField;

/// The bench check of the page Light: how the laser is aimed at every prism, where its spot should fall, what
/// was read there and what mends it, with a picture of the board. Shares the one selection of the workbench.
///
/// Object names: bench (itself), bench.caution, bench.within, bench.filter, bench.record, bench.save (its
/// dialog bench.saveTo), bench.summary, bench.words, bench.table, bench.reason; editor.light.board_mm;
/// light.board.
class BenchTab : public QWidget {
  Q_OBJECT

 public:
  explicit BenchTab(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] BenchMaker* maker() const { return maker_; }

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeHead();
  QWidget* makeSayings();
  QWidget* makeBody();
  void follow();
  void followSaying();
  void followSelection();
  void takeSelection();
  void recordReading();
  void saveTable();

  Workbench* bench_;
  BenchMaker* maker_;
  BenchTable* rows_;
  MarkFilter* order_;
  BenchView* view_ = nullptr;
  BoardPlot* board_ = nullptr;
  NumberField* within_ = nullptr;
  QLineEdit* filter_ = nullptr;
  QPushButton* record_ = nullptr;
  QToolButton* save_ = nullptr;
  QLabel* summary_ = nullptr;
  QLabel* words_ = nullptr;
  QLabel* reason_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  QSplitter* halves_ = nullptr;
  int sized_for_ = 0;       ///< rows that the columns have been given their widths by, minus when in inches
  bool following_ = false;  ///< a selection is being set from outside, or was sent from here
};

}  // namespace prismwright
