#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QLabel;
class QPushButton;

namespace prismwright {

class FilteredTable;

/// What is to be made: masters, moulds and castings in a table, what comes next under it, and the files of
/// masters and moulds.
///
/// Object names: works.make (the table; see FilteredTable), works.make.told, works.make.next,
/// works.exportMasters, works.exportMoulds, works.recordSpare.
class MakeTab : public QWidget {
  Q_OBJECT

 public:
  MakeTab(WorksDesk* desk, QWidget* parent);

 signals:
  void mastersWanted(const QStringList& masters);  ///< files of these; empty: of all
  void mouldsWanted(const QStringList& masters);
  void spareWanted(const QString& master);  ///< a step is to be recorded for spares of it

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void follow();
  void followSelection();
  [[nodiscard]] QStringList chosenMasters() const;

  WorksDesk* desk_;
  FilteredTable* table_;
  QLabel* told_;
  QLabel* next_;
  QPushButton* masters_;
  QPushButton* moulds_;
  QPushButton* spare_;
};

}  // namespace prismwright
