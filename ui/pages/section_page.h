#pragma once

#include <QWidget>

#include "ui/models/laser.h"
#include "ui/models/zone_table.h"

class QLabel;
class QSplitter;
class QTabWidget;
class QTableView;

namespace prismwright {

class SectionDrawing;
class SectionForm;
class SectionComparer;
class ZoneActions;

/// The section drawn, lit by the laser, and taken apart into zones and totals. On a wide window the settings
/// stand in a column of their own, on a narrow one behind the table.
class SectionPage : public QWidget {
  Q_OBJECT

 public:
  explicit SectionPage(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] Laser* laser() const { return laser_; }
  [[nodiscard]] SectionDrawing* drawing() const { return drawing_; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeDrawingSide();
  QWidget* makeFigureSide();
  void makeTable();
  QWidget* makeZones();
  QWidget* makeSettingsSide();
  void placeSettings(bool beside);
  void showNotes();
  void selectionToTable();
  void tableToSelection();

  Workbench* bench_;
  Laser* laser_;
  ZoneTable* zones_;
  ZoneActions* actions_;
  SectionDrawing* drawing_ = nullptr;
  QTableView* table_ = nullptr;
  SectionForm* form_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  QSplitter* sides_ = nullptr;
  SectionComparer* comparer_ = nullptr;
  QLabel* notes_ = nullptr;
  QWidget* settings_side_ = nullptr;
  bool settings_placed_ = false;
  bool following_ = false;  ///< the table is being brought in line with the shared selection
};

}  // namespace prismwright
