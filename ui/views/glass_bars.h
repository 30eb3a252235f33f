#pragma once

#include <QTableWidget>

#include "ui/models/workbench.h"

class QLabel;

namespace prismwright {

/// The glass of every zone in the whole lens: pieces, volume, mass and a bar to the greatest of them. Worked
/// out when it is looked at, and not for previews.
class GlassBars : public QTableWidget {
  Q_OBJECT

 public:
  /// The totals are told to `sums`.
  GlassBars(Workbench* bench, QLabel* sums, QWidget* parent = nullptr);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void follow();
  void fill();

  Workbench* bench_;
  QLabel* sums_;
  bool behind_ = true;  ///< the book has changed since the last filling
};

}  // namespace prismwright
