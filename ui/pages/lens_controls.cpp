#include "ui/pages/lens_controls.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QShortcut>
#include <QSignalBlocker>
#include <QSlider>
#include <QToolButton>
#include <QVBoxLayout>
#include <cmath>

namespace prismwright {
namespace {

constexpr int kFixedCuts = 3;  // none, level, upright; panels follow

QHBoxLayout* row_in(QWidget* host) {
  auto* row = new QHBoxLayout(host);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  return row;
}

}  // namespace

LensControls::LensControls(LensView* view, QWidget* parent)
    : LensControls(view, QStringLiteral("lens"), parent) {}

LensControls::LensControls(LensView* view, const QString& name, QWidget* parent)
    : QWidget(parent), view_(view), name_(name) {
  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(8, 8, 8, 8);
  rows->setSpacing(8);
  rows->addWidget(makeViews());
  rows->addWidget(makeScene());
  chooseCut(0);
}

QToolButton* LensControls::viewButton(const QString& words, const char* name, LensView::NamedView view,
                                      int key) {
  auto* button = new QToolButton(this);
  button->setText(words);
  named(button, name);
  button->setFocusPolicy(Qt::TabFocus);
  button->setToolTip(tr("%1 (key %2)").arg(words).arg(key));
  const auto go = [this, view] { view_->showNamed(view); };
  connect(button, &QToolButton::clicked, this, go);
  // On the page, so that the keys work wherever the focus is on it, but not on the other pages.
  auto* shortcut = new QShortcut(QKeySequence(Qt::Key_0 + key), parentWidget() ? parentWidget() : this);
  shortcut->setContext(Qt::WidgetWithChildrenShortcut);
  connect(shortcut, &QShortcut::activated, this, go);
  return button;
}

QWidget* LensControls::makeViews() {
  auto* host = new QWidget(this);
  QHBoxLayout* row = row_in(host);
  row->addWidget(viewButton(tr("Seaward"), "view.seaward", LensView::NamedView::seaward, 1));
  row->addWidget(viewButton(tr("Plan"), "view.plan", LensView::NamedView::plan, 2));
  row->addWidget(viewButton(tr("From the lamp"), "view.lamp", LensView::NamedView::lamp, 3));
  row->addWidget(viewButton(tr("Panel face"), "view.face", LensView::NamedView::face, 4));
  auto* show = new QToolButton(host);
  show->setText(tr("Show selected"));
  named(show, "showSelected");
  show->setFocusPolicy(Qt::TabFocus);
  show->setToolTip(tr("Frames the selected prisms, or the whole lens (key F)"));
  connect(show, &QToolButton::clicked, view_, &LensView::showSelected);
  auto* shortcut = new QShortcut(QKeySequence(Qt::Key_F), parentWidget() ? parentWidget() : this);
  shortcut->setContext(Qt::WidgetWithChildrenShortcut);
  connect(shortcut, &QShortcut::activated, view_, &LensView::showSelected);
  row->addWidget(show);
  row->addStretch();
  auto* caption = new QLabel(tr("&Colour by"), host);
  colouring_ = new QComboBox(host);
  named(colouring_, "colouring");
  colouring_->addItem(tr("material"), static_cast<int>(Colouring::material));
  colouring_->addItem(tr("departure"), static_cast<int>(Colouring::departure));
  colouring_->addItem(tr("clearance"), static_cast<int>(Colouring::clearance));
  colouring_->addItem(tr("stage"), static_cast<int>(Colouring::stage));
  caption->setBuddy(colouring_);
  connect(colouring_, &QComboBox::currentIndexChanged, this, [this] { emit colouringChanged(colouring()); });
  row->addWidget(caption);
  row->addWidget(colouring_);
  return host;
}

QCheckBox* LensControls::partBox(const QString& words, const char* name, SceneKind kind) {
  auto* box = new QCheckBox(words, this);
  named(box, name);
  box->setChecked(true);
  connect(box, &QCheckBox::toggled, this, [this, kind](bool on) { view_->setShown(kind, on); });
  return box;
}

QWidget* LensControls::makeScene() {
  auto* host = new QWidget(this);
  QHBoxLayout* row = row_in(host);
  row->addWidget(partBox(tr("&Glass"), "glass", SceneKind::glass));
  row->addWidget(partBox(tr("Ri&bs"), "ribs", SceneKind::rib));
  row->addWidget(partBox(tr("Ri&ngs"), "rings", SceneKind::ring));
  cut_box_ = new QComboBox(host);
  named(cut_box_, "cut");
  cut_box_->setToolTip(
      tr("A plane that cuts the lens open: level, upright, or upright through a panel's axis"));
  cut_box_->addItems({tr("No cut"), tr("Level cut"), tr("Upright cut")});
  cut_slider_ = new QSlider(Qt::Horizontal, host);
  named(cut_slider_, "cutSlider");
  cut_slider_->setMinimumWidth(72);
  cut_words_ = new QLabel(host);
  cut_words_->setMinimumWidth(cut_words_->fontMetrics().horizontalAdvance(QStringLiteral("-1000 mm")));
  connect(cut_box_, &QComboBox::currentIndexChanged, this, &LensControls::chooseCut);
  connect(cut_slider_, &QSlider::valueChanged, this, &LensControls::moveCut);
  row->addSpacing(8);
  row->addWidget(cut_box_);
  row->addWidget(cut_slider_, 1);
  row->addWidget(cut_words_);
  auto* apart_caption = new QLabel(tr("&Pulled apart"), host);
  auto* apart = new QSlider(Qt::Horizontal, host);
  named(apart, "apart");
  apart->setRange(0, 100);
  apart->setMinimumWidth(72);
  apart_caption->setBuddy(apart);
  connect(apart, &QSlider::valueChanged, this, [this](int value) { view_->setApart(value / 100.0); });
  row->addSpacing(8);
  row->addWidget(apart_caption);
  row->addWidget(apart, 1);
  return host;
}

Colouring LensControls::colouring() const { return static_cast<Colouring>(colouring_->currentData().toInt()); }

void LensControls::setLens(const std::vector<PanelPlace>& panels, double low_mm, double high_mm) {
  const bool same = panels.size() == panels_.size() && low_mm == low_mm_ && high_mm == high_mm_;
  panels_ = panels;
  low_mm_ = low_mm;
  high_mm_ = high_mm;
  if (same) return;
  const int chosen = cut_box_->currentIndex();
  {
    const QSignalBlocker quiet(cut_box_);
    while (cut_box_->count() > kFixedCuts) cut_box_->removeItem(kFixedCuts);
    for (const PanelPlace& panel : panels_) cut_box_->addItem(tr("Panel %1").arg(panel.number));
    cut_box_->setCurrentIndex(chosen < cut_box_->count() ? chosen : 0);
  }
  chooseCut(cut_box_->currentIndex());
}

void LensControls::chooseCut(int index) {
  cut_slider_->setEnabled(index > 0);
  const QSignalBlocker quiet(cut_slider_);
  if (index <= 0) {
    cut_.kind = LensCut::Kind::none;
  } else if (index == 1) {
    cut_.kind = LensCut::Kind::level;
    cut_slider_->setRange(static_cast<int>(std::floor(low_mm_)), static_cast<int>(std::ceil(high_mm_)));
    cut_slider_->setValue(static_cast<int>(cut_.height_mm));
    cut_.height_mm = cut_slider_->value();
  } else {
    cut_.kind = LensCut::Kind::upright;
    if (index >= kFixedCuts) {
      const double axis_deg = panels_[static_cast<std::size_t>(index - kFixedCuts)].axis_deg;
      cut_.azimuth_deg = axis_deg - 360 * std::floor(axis_deg / 360);
    }
    cut_slider_->setRange(0, 359);
    cut_slider_->setValue(static_cast<int>(std::lround(cut_.azimuth_deg)));
  }
  cut_words_->setText(cutWords());
  view_->setCut(cut_);
}

void LensControls::moveCut(int value) {
  if (cut_.kind == LensCut::Kind::level) cut_.height_mm = value;
  if (cut_.kind == LensCut::Kind::upright) {
    cut_.azimuth_deg = value;
    const QSignalBlocker quiet(cut_box_);
    cut_box_->setCurrentIndex(2);
  }
  cut_words_->setText(cutWords());
  view_->setCut(cut_);
}

QString LensControls::cutWords() const {
  if (cut_.kind == LensCut::Kind::level) return tr("%1 mm").arg(cut_.height_mm, 0, 'f', 0);
  if (cut_.kind == LensCut::Kind::upright) return tr("%1°").arg(cut_.azimuth_deg, 0, 'f', 1);
  return {};
}

}  // namespace prismwright
