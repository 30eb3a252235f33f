#include "ui/views/zone_tools.h"

#include <QAction>
#include <QHBoxLayout>
#include <QMenu>

#include "ui/style/dress.h"
#include "ui/views/zone_actions.h"

namespace prismwright {

ZoneTools::ZoneTools(ZoneActions* actions, QWidget* parent) : QWidget(parent) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(4);
  for (QAction* action : {actions->lock(), actions->split(), actions->remove(), actions->add()}) {
    auto* button = new QToolButton(this);
    button->setObjectName(QStringLiteral("tool.") + action->objectName());
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    button->setIconSize({18, 18});
    button->setProperty("tool", true);
    if (action == actions->add()) {
      button->setMenu(actions->addMenu());
      button->setPopupMode(QToolButton::MenuButtonPopup);
    }
    row->addWidget(button);
  }
  row->addStretch(1);
  drawing_ = new QToolButton(this);
  drawing_->setObjectName(QStringLiteral("tool.drawing"));
  drawing_->setText(tr("Save drawing…"));
  drawing_->setIcon(drawn_icon(QStringLiteral("sheet")));
  drawing_->setIconSize({18, 18});
  drawing_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  drawing_->setProperty("tool", true);
  drawing_->setToolTip(tr("Save the section as PDF, SVG or DXF (Ctrl+D)"));
  connect(drawing_, &QToolButton::clicked, this, &ZoneTools::drawingWanted);
  row->addWidget(drawing_);
}

}  // namespace prismwright
