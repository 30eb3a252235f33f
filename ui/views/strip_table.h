#pragma once

#include <QTableWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// The dark strips of the level beam, from the top down: where each lies and how high it is.
class StripTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit StripTable(Workbench* bench, QWidget* parent = nullptr);

 private:
  void follow();
  Workbench* bench_;
};

}  // namespace prismwright
