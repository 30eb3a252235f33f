#pragma once

#include <QTableWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// The colour fan: departure of the middle ray of every zone from its aim at F, d and C light, with the spread
/// over the zone in the tip. Worked out when it is looked at.
class ColourTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit ColourTable(Workbench* bench, QWidget* parent = nullptr);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void follow();
  void fill();

  Workbench* bench_;
  bool behind_ = true;  ///< the book has changed since the last filling
};

}  // namespace prismwright
