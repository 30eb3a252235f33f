#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

namespace prismwright {

class LensControls;
class LensTables;
class LensView;
class PanelChart;

/// The lens in three dimensions, with the tables of its prisms and clearances and the panel chart beside it.
/// One selection runs through all of them.
class LensPage : public QWidget {
  Q_OBJECT

 public:
  explicit LensPage(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] LensView* view() const { return view_; }

 private:
  QWidget* makeLeft();
  QWidget* makeRight();
  void listen();
  void takeMade();
  void takeLooks();
  void takeSelection();
  void pick(const QString& mark, bool add);
  void tellProgress(double share, const QString& what);
  void tellFinished(bool done, const QString& message);

  Workbench* bench_;
  LensView* view_ = nullptr;
  LensControls* controls_ = nullptr;
  LensTables* tables_ = nullptr;
  PanelChart* chart_ = nullptr;
};

}  // namespace prismwright
