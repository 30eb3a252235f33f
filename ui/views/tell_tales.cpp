#include "ui/views/tell_tales.h"

#include <QHBoxLayout>
#include <QPushButton>

#include "ui/style/dress.h"

namespace prismwright {
namespace {

MarkKind mark_of(TellTale::State state) {
  switch (state) {
    case TellTale::State::well:
      return MarkKind::well;
    case TellTale::State::amiss:
      return MarkKind::amiss;
    case TellTale::State::unknown:
      break;
  }
  return MarkKind::unknown;
}

}  // namespace

TellTales::TellTales(Workbench* bench, QWidget* parent) : QFrame(parent), bench_(bench) {
  setObjectName(QStringLiteral("tellTales"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  const std::array<const char*, 4> names = {"tell.level", "tell.light", "tell.clearance", "tell.works"};
  for (std::size_t i = 0; i < names.size(); ++i) {
    auto* button = new QPushButton(this);
    button->setObjectName(QLatin1String(names.at(i)));
    button->setIconSize({18, 18});
    button->setCursor(Qt::PointingHandCursor);
    connect(button, &QPushButton::clicked, this, [this, i] { follow(i); });
    row->addWidget(button, 1);
    buttons_.at(i) = button;
  }
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged, &Workbench::madeChanged,
                            &Workbench::ledgerChanged, &Workbench::unitsChanged})
    connect(bench_, signal, this, &TellTales::refresh);
  connect(bench_, &Workbench::makingFinished, this, &TellTales::refresh);
  refresh();
}

void TellTales::refresh() {
  setVisible(bench_->hasBook());
  if (!bench_->hasBook()) return;
  tales_ = tell_tales_of(*bench_);
  for (std::size_t i = 0; i < tales_.size(); ++i) {
    buttons_.at(i)->setText(QStringLiteral(" ") + tales_.at(i).words);
    buttons_.at(i)->setToolTip(tales_.at(i).why);
    buttons_.at(i)->setIcon(state_mark(mark_of(tales_.at(i).state)));
    buttons_.at(i)->setProperty("state", static_cast<int>(tales_.at(i).state));
    buttons_.at(i)->setAccessibleDescription(tales_.at(i).why);
  }
}

void TellTales::follow(std::size_t which) {
  const TellTale tale = tales_.at(which);
  if (!tale.culprits.isEmpty()) bench_->select(tale.culprits);
  emit pageWanted(tale.page);
}

}  // namespace prismwright
