#include "ui/views/zone_tools.h"

#include <QAction>
#include <QHBoxLayout>
#include <QMenu>
#include <QToolButton>

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
  auto* drawing = new QToolButton(this);
  drawing->setObjectName(QStringLiteral("tool.drawing"));
  drawing->setText(tr("Save drawing…"));
  drawing->setIcon(drawn_icon(QStringLiteral("sheet")));
  drawing->setIconSize({18, 18});
  drawing->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  drawing->setProperty("tool", true);
  drawing->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_D));
  drawing->setToolTip(tr("Save the section as PDF, SVG or DXF (Ctrl+D)"));
  connect(drawing, &QToolButton::clicked, this, &ZoneTools::drawingWanted);
  row->addWidget(drawing);
}

}  // namespace prismwright
