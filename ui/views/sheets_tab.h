#pragma once

#include <QWidget>

#include "ui/models/frame_maker.h"

class QLabel;
class QPushButton;

namespace prismwright {

class FilteredTable;
class NestPicture;

/// The sheets that the flat parts are cut from: a table, the picture of the one chosen, and the files of the
/// whole frame.
///
/// Object names: frame.sheets (the table; see FilteredTable), frame.nest (the picture), frame.sheets.told,
/// frame.export.
class SheetsTab : public QWidget {
  Q_OBJECT

 public:
  SheetsTab(Workbench* bench, QWidget* parent);

  void setResults(const FrameResults& results);
  void setStale(bool stale);
  /// Shows the sheet that holds the plate, and the plate on it.
  void showPart(const QString& mark);
  void showParts(const QStringList& marks);

 signals:
  void partChosen(const QString& mark);
  void exportWanted();

 private:
  void showSheet(int line);

  Workbench* bench_;
  FilteredTable* table_;
  NestPicture* picture_;
  QLabel* told_;
  QPushButton* export_;
  FrameResults results_;
  bool inches_ = false;
};

}  // namespace prismwright
