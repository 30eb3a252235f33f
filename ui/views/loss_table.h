#pragma once

#include <QTableWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// The light that does not leave level, by cause and place, the greatest loss first.
class LossTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit LossTable(Workbench* bench, QWidget* parent = nullptr);

 private:
  void follow();
  Workbench* bench_;
};

}  // namespace prismwright
