#pragma once

#include <QWidget>

#include "ui/models/laser.h"

class QLabel;
class QTableWidget;

namespace prismwright {

class NumberField;

/// What the laser tells: its elevation (typed here too), every face that its ray meets, numbered as on the
/// drawing, what becomes of it, and the spot on a board.
///
/// Object names: laser.elevation, laser.board (fields), laser.up, laser.down (steps by zone), laser.fate,
/// laser.sums, laser.spot (sentences), laser.meetings (table).
class LaserReadout : public QWidget {
  Q_OBJECT

 public:
  LaserReadout(Workbench* bench, Laser* laser, QWidget* parent = nullptr);

 private:
  void makeTop();
  void makeTable();
  void makeBoard();
  void follow();
  void fillTable();
  void put(int row, int column, const QString& text);
  void fillWords();
  void followUnits();

  Workbench* bench_;
  Laser* laser_;
  NumberField* elevation_ = nullptr;
  NumberField* board_ = nullptr;
  QLabel* fate_ = nullptr;
  QTableWidget* meetings_ = nullptr;
  QLabel* sums_ = nullptr;
  QLabel* spot_ = nullptr;
};

}  // namespace prismwright
