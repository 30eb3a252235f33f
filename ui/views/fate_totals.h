#pragma once

#include <QWidget>

#include "ui/models/workbench.h"
#include "ui/views/fate_bar.h"

class QLabel;

namespace prismwright {

/// What becomes of the light: a bar of shares by fate, the same as a key of lines with words and figures (it is
/// the legend of the drawing too), and the sums of the proof in one sentence.
///
/// Object names: totals.key, totals.sums.
class FateTotals : public QWidget {
  Q_OBJECT

 public:
  explicit FateTotals(Workbench* bench, QWidget* parent = nullptr);

 private:
  void follow();

  Workbench* bench_;
  FateBar* bar_;
  FateKey* key_;
  QLabel* sums_;
};

}  // namespace prismwright
