#include "ui/views/fold.h"

#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

namespace prismwright {

Fold::Fold(const QString& name, const QString& title, QWidget* body, QWidget* parent)
    : QWidget(parent), head_(new QToolButton(this)), body_(body) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  head_->setObjectName(QStringLiteral("fold.") + name);
  head_->setText(title);
  head_->setCheckable(true);
  head_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  head_->setProperty("fold", true);
  head_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addWidget(head_);
  body_->setParent(this);
  column->addWidget(body_);
  connect(head_, &QToolButton::toggled, this, &Fold::setOpen);
  setOpen(false);
}

void Fold::setOpen(bool open) {
  const QSignalBlocker quiet(head_);
  head_->setChecked(open);
  head_->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
  body_->setVisible(open);
}

bool Fold::isOpen() const { return head_->isChecked(); }

}  // namespace prismwright
