#include "ui/pages/start_page.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

QLabel* paragraph(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  label->setMaximumWidth(480);
  return label;
}

}  // namespace

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(64, 48, 64, 32);
  column->setSpacing(16);
  auto* title = new QLabel(tr("Replica lighthouse lenses, from the order to the glazed panel"), this);
  title->setProperty("title", true);
  column->addWidget(title);
  column->addWidget(
      paragraph(tr("Name an order and a character; the section is worked out and proved ray by ray, every "
                   "prism becomes a solid to print a master from, and the works ledger keeps what is made."),
                this));
  auto* row = new QHBoxLayout;
  auto* begin = new QPushButton(tr("New lensbook…"), this);
  begin->setObjectName(QStringLiteral("start.new"));
  begin->setProperty("brass", true);
  connect(begin, &QPushButton::clicked, this, &StartPage::newWanted);
  auto* open = new QPushButton(tr("Open a lensbook…"), this);
  open->setObjectName(QStringLiteral("start.open"));
  connect(open, &QPushButton::clicked, this, &StartPage::openWanted);
  row->addWidget(begin);
  row->addWidget(open);
  row->addStretch(1);
  column->addLayout(row);
  recent_ = new QVBoxLayout;
  recent_->setSpacing(4);
  column->addLayout(recent_);
  column->addStretch(1);
  auto* cautions =
      paragraph(tr("An uncovered lens in the sun is a fire risk, a laser needs eye protection, and casting "
                   "under pressure is for trained hands: see Help, Cautions."),
                this);
  cautions->setProperty("muted", true);
  column->addWidget(cautions);
}

void StartPage::setRecent(const QStringList& paths) {
  while (QLayoutItem* item = recent_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  if (paths.isEmpty()) return;
  auto* head = new QLabel(tr("Opened lately"), this);
  head->setProperty("head", true);
  recent_->addWidget(head);
  for (int i = 0; i < paths.size(); ++i) {
    const QString path = paths.at(i);
    auto* button = new QPushButton(QFileInfo(path).completeBaseName(), this);
    button->setObjectName(QStringLiteral("start.recent.%1").arg(i));
    button->setToolTip(path);
    button->setMaximumWidth(480);
    connect(button, &QPushButton::clicked, this, [this, path] { emit bookWanted(path); });
    recent_->addWidget(button);
  }
}

/// A bull's-eye panel in outline, so that the page is not bare.
void StartPage::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double side = 0.8 * height();
  const double room = width() - 600.0;
  if (room < 160) return;
  const double panel_width = std::min(0.62 * side, room - 64);
  const QRectF panel(width() - panel_width - 64, (height() - side) / 2, panel_width, side);
  painter.setClipRect(panel);
  painter.setBrush(palette::glass_fill());
  painter.setPen(QPen(palette::glass_edge(), 1.5));
  painter.drawRect(panel);
  painter.setBrush(Qt::NoBrush);
  for (double share = 0.1; share < 1.2; share += 0.075 / (1 + share)) {
    const double radius = share * side / 2;
    painter.drawEllipse(panel.center(), radius, radius);
  }
  painter.setClipping(false);
  painter.setPen(QPen(palette::brass(), 5));
  painter.drawRect(panel);
}

}  // namespace prismwright
