#pragma once

#include <QWidget>

#include "ui/models/frame_maker.h"

class QLabel;

namespace prismwright {

class FilteredTable;

/// How every panel is put together, step by step, what cannot go in marked; beside it how the panels become the
/// whole frame.
///
/// Object names: frame.fit (the table; see FilteredTable), frame.fit.order, frame.fit.told.
class FitTab : public QWidget {
  Q_OBJECT

 public:
  FitTab(Workbench* bench, QWidget* parent);

  void setResults(const FrameResults& results);
  void setStale(bool stale);

 signals:
  void chosen(const QStringList& marks);
  void wanted(const QStringList& marks);  ///< to be seen in 3D

 private:
  void choose(int line);

  Workbench* bench_;
  FilteredTable* table_;
  QLabel* told_;
  QLabel* order_;
  FrameResults results_;
  bool inches_ = false;
};

}  // namespace prismwright
