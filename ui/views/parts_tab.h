#pragma once

#include <QWidget>

#include "ui/models/parts_table.h"

class QLabel;

namespace prismwright {

class FilteredTable;
class PartDrawing;

/// The parts list of the frame, and beside it the drawing of the part that is chosen.
///
/// Object names: frame.parts (the table; see FilteredTable), frame.parts.total; those of
/// PartDrawing.
class PartsTab : public QWidget {
  Q_OBJECT

 public:
  PartsTab(Workbench* bench, QWidget* parent);

  void setMade(const std::shared_ptr<const MadeLens>& made, const std::vector<PartsLine>& lines);
  void setStale(bool stale);
  /// Chooses the row that holds the mark without telling of it.
  void showPart(const QString& mark);

 signals:
  void chosen(const QStringList& marks);
  void wanted(const QStringList& marks);  ///< to be seen in 3D

 private:
  void showLine(int line);

  Workbench* bench_;
  FilteredTable* table_;
  PartDrawing* drawing_;
  std::shared_ptr<const MadeLens> made_;
  std::vector<PartsLine> lines_;
  QLabel* total_;
};

}  // namespace prismwright
