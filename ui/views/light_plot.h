#pragma once

#include <QWidget>
#include <functional>

#include "ui/views/plot_files.h"

class QCPAxis;
class QCPAxisRect;
class QCustomPlot;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace prismwright {

/// A plot of the light with a line under it that reads off what the pointer, or the cursor moved by the arrow
/// keys, stands on, and a button that saves the plot as PNG, SVG or CSV.
///
/// Object names: NAME (this widget), NAME.plot, NAME.reading, NAME.save; the dialog is NAME.saveTo.
class LightPlot : public QWidget {
  Q_OBJECT

 public:
  LightPlot(const QString& name, const QString& title, QWidget* parent);

  [[nodiscard]] QCustomPlot* plot() const { return plot_; }
  [[nodiscard]] QString reading() const;
  /// The numbers that are saved.
  [[nodiscard]] virtual PlotNumbers numbers() const = 0;
  /// What a saved picture is headed with, and its file is called.
  void setTitle(const QString& title) { title_ = title; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

  /// The pointer stands at this place of the plot.
  virtual void pointAt(const QPointF& pixel) = 0;
  /// An arrow key: so many steps to the right and up.
  virtual void step(int across, int up) = 0;
  /// A click that dragged nothing.
  virtual void click(const QPointF& pixel);
  /// A double click: shows everything again.
  virtual void showAll() {}

  void setReading(const QString& words);
  /// Whether there is anything to save.
  void setFilled(bool filled);
  /// The line under the plot: what a plot adds stands left of Save.
  [[nodiscard]] QHBoxLayout* foot() const { return foot_; }
  /// A new field of the plot with the colours of the window; it has no place in the layout yet.
  QCPAxisRect* makeField();
  /// Colours, ticks and grid of the window.
  static void dressAxis(QCPAxis* axis);
  static void nameAxis(QCPAxis* axis, const QString& words);

 private:
  void save();

  QString title_;
  QCustomPlot* plot_;
  QLabel* reading_;
  QHBoxLayout* foot_;
  QToolButton* save_;
  QPointF pressed_;
};

}  // namespace prismwright
