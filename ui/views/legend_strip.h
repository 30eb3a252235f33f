#pragma once

#include <QWidget>

#include "ui/models/colouring.h"

namespace prismwright {

/// The legend of a colouring in one line (two where the room is short): swatch with sign, words, and for stages
/// how many prisms stand there.
class LegendStrip : public QWidget {
  Q_OBJECT

 public:
  LegendStrip(Workbench* bench, Colouring colouring, QWidget* parent = nullptr);
  void setColouring(Colouring colouring);
  [[nodiscard]] QSize sizeHint() const override { return {600, 28}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Workbench* bench_;
  Colouring colouring_;
};

}  // namespace prismwright
