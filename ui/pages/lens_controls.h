#pragma once

#include <QWidget>
#include <array>

#include "ui/views/lens_view.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QSlider;
class QToolButton;

namespace prismwright {

/// The two rows of controls above the 3D view. They act on the view alone; the colouring is told to the page.
///
/// Object names, NAME being "lens" unless another is given: NAME.view.seaward, .plan, .lamp, .face,
/// NAME.showSelected, NAME.colouring, NAME.glass, NAME.ribs, NAME.rings, NAME.cut, NAME.cutSlider, NAME.apart.
class LensControls : public QWidget {
  Q_OBJECT

 public:
  LensControls(LensView* view, QWidget* parent = nullptr);
  LensControls(LensView* view, const QString& name, QWidget* parent);

  [[nodiscard]] Colouring colouring() const;
  /// The panels that a cut may go through, and how low and high the lens reaches (mm).
  void setLens(const std::vector<PanelPlace>& panels, double low_mm, double high_mm);

 signals:
  void colouringChanged(prismwright::Colouring colouring);

 private:
  QWidget* makeViews();
  QWidget* makeScene();
  QToolButton* viewButton(const QString& words, const char* name, LensView::NamedView view, int key);
  QCheckBox* partBox(const QString& words, const char* name, SceneKind kind);
  void chooseCut(int index);
  void moveCut(int value);
  [[nodiscard]] QString cutWords() const;

  template <class Widget>
  Widget* named(Widget* widget, const char* name) const {
    widget->setObjectName(name_ + QLatin1Char('.') + QLatin1String(name));
    return widget;
  }

  LensView* view_;
  QString name_;
  QComboBox* colouring_ = nullptr;
  QComboBox* cut_box_ = nullptr;
  QSlider* cut_slider_ = nullptr;
  QLabel* cut_words_ = nullptr;
  LensCut cut_;
  std::vector<PanelPlace> panels_;
  double low_mm_ = -100;
  double high_mm_ = 100;
};

}  // namespace prismwright
