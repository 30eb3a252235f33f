#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

class QLabel;

namespace prismwright {

class FateBar;

/// What becomes of the light of a lamp of the chosen height: a bar by fate beside the words of its greatest
/// parts. Worked out when it is looked at.
///
/// Object names: proof.lamp (the bar), proof.lamp.words.
class LampLightPanel : public QWidget {
  Q_OBJECT

 public:
  explicit LampLightPanel(Workbench* bench, QWidget* parent = nullptr);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void follow();
  void fill();

  Workbench* bench_;
  FateBar* bar_;
  QLabel* words_;
  bool behind_ = true;  ///< the book has changed since the last filling
};

}  // namespace prismwright
