#include "ui/views/light_plot.h"

#include <qcustomplot.h>

#include <QDir>
#include <QFileDialog>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMessageBox>
#include <QMouseEvent>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>
#include <cmath>

#include "ui/models/light_numbers.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kStill_px = 4;  // a press that moves less is a click

/// Ticks with thousands set apart and a real minus sign.
class FigureTicker : public QCPAxisTicker {
 protected:
  QString getTickLabel(double tick, const QLocale&, QChar, int) override {
    if (std::abs(tick) >= 1e4) return light_number(tick);
    return QString::number(std::abs(tick) < 1e-9 ? 0 : tick, 'g', 6).replace('-', QChar(0x2212));
  }
};

}  // namespace

void LightPlot::dressAxis(QCPAxis* axis) {
  axis->setTicker(QSharedPointer<QCPAxisTicker>(new FigureTicker));
  axis->setBasePen(QPen(palette::muted_ink(), 1));
  axis->setTickPen(QPen(palette::muted_ink(), 1));
  axis->setSubTickPen(Qt::NoPen);
  axis->setTickLabelColor(palette::ink());
  axis->setLabelColor(palette::muted_ink());
  axis->setTickLength(0, 4);
  axis->setLabelPadding(3);
  axis->setTickLabelPadding(4);
  axis->grid()->setPen(QPen(palette::hairline(), 1));
  axis->grid()->setZeroLinePen(QPen(palette::hairline(), 1));
  axis->grid()->setSubGridVisible(false);
  axis->ticker()->setTickCount(5);
}

namespace {

/// Arrow keys as steps; none for other keys.
bool steps_of(int key, int& across, int& up) {
  across = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
  up = key == Qt::Key_Up ? 1 : key == Qt::Key_Down ? -1 : 0;
  return across != 0 || up != 0;
}

}  // namespace

LightPlot::LightPlot(const QString& name, const QString& title, QWidget* parent)
    : QWidget(parent), title_(title) {
  setObjectName(name);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  plot_ = new QCustomPlot(this);
  plot_->setObjectName(name + ".plot");
  plot_->setBackground(palette::surface());
  plot_->setFocusPolicy(Qt::StrongFocus);
  plot_->setMouseTracking(true);
  plot_->setAccessibleName(title);
  plot_->setMinimumSize(240, 160);
  plot_->setSelectionTolerance(4);
  plot_->plotLayout()->clear();
  plot_->installEventFilter(this);
  column->addWidget(plot_, 1);
  foot_ = new QHBoxLayout;
  foot_->setContentsMargins(8, 4, 0, 4);
  foot_->setSpacing(8);
  reading_ = new QLabel(this);
  reading_->setObjectName(name + ".reading");
  reading_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  // Two lines have room beside the button; what the pointer reads must not make the window wider.
  reading_->setWordWrap(true);
  reading_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  save_ = new QToolButton(this);
  save_->setObjectName(name + ".save");
  save_->setText(tr("Save"));
  save_->setIcon(drawn_icon(QStringLiteral("save")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  save_->setProperty("tool", true);
  save_->setToolTip(tr("Saves the plot as PNG, SVG or its numbers as CSV"));
  connect(save_, &QToolButton::clicked, this, &LightPlot::save);
  foot_->addWidget(reading_, 1);
  foot_->addWidget(save_);
  column->addLayout(foot_);
}

QString LightPlot::reading() const { return reading_->text(); }
void LightPlot::setReading(const QString& words) { reading_->setText(words); }
void LightPlot::setFilled(bool filled) { save_->setEnabled(filled); }
void LightPlot::click(const QPointF& pixel) { pointAt(pixel); }

QCPAxisRect* LightPlot::makeField() {
  auto* field = new QCPAxisRect(plot_, true);
  field->setBackground(palette::surface());
  field->setMinimumMargins(QMargins(8, 8, 8, 4));
  for (QCPAxis* axis : field->axes()) {
    dressAxis(axis);
    axis->setLayer(QStringLiteral("axes"));
    axis->grid()->setLayer(QStringLiteral("grid"));
  }
  field->axis(QCPAxis::atTop)->setVisible(false);
  field->axis(QCPAxis::atRight)->setVisible(false);
  return field;
}

void LightPlot::nameAxis(QCPAxis* axis, const QString& words) { axis->setLabel(words); }

bool LightPlot::eventFilter(QObject* watched, QEvent* event) {
  if (watched != plot_) return QWidget::eventFilter(watched, event);
  int across = 0;
  int up = 0;
  switch (event->type()) {
    case QEvent::MouseMove: {
      auto* mouse = static_cast<QMouseEvent*>(event);
      if (mouse->buttons() == Qt::NoButton) pointAt(mouse->position());
      break;
    }
    case QEvent::MouseButtonPress:
      pressed_ = static_cast<QMouseEvent*>(event)->position();
      break;
    case QEvent::MouseButtonRelease: {
      auto* mouse = static_cast<QMouseEvent*>(event);
      const bool still = (mouse->position() - pressed_).manhattanLength() < kStill_px;
      if (still && mouse->button() == Qt::LeftButton) click(mouse->position());
      break;
    }
    case QEvent::MouseButtonDblClick:
      showAll();
      break;
    case QEvent::KeyPress: {
      auto* key = static_cast<QKeyEvent*>(event);
      if (!steps_of(key->key(), across, up)) break;
      const int stride = key->modifiers() & Qt::ShiftModifier ? 10 : 1;
      step(across * stride, up * stride);
      return true;
    }
    default:
      break;
  }
  return QWidget::eventFilter(watched, event);
}

void LightPlot::save() {
  QFileDialog dialog(this, tr("Save the plot"));
  dialog.setObjectName(objectName() + ".saveTo");
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters(
      {tr("Picture (*.png)"), tr("Drawing (*.svg)"), tr("Numbers (*.csv)"), tr("All files (*)")});
  dialog.setDefaultSuffix(QStringLiteral("png"));
  connect(&dialog, &QFileDialog::filterSelected, &dialog, [&dialog](const QString& filter) {
    for (const char* ending : {"png", "svg", "csv"})
      if (filter.contains(QLatin1String(ending))) dialog.setDefaultSuffix(QLatin1String(ending));
  });
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(title_);
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  const Done saved = save_plot(*plot_, title_, numbers(), path);
  setReading(saved ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(saved.problem()));
}

}  // namespace prismwright
