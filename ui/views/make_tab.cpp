#include "ui/views/make_tab.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShowEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/models/make_table.h"
#include "ui/views/filtered_table.h"

namespace prismwright {
namespace {

constexpr int kNextLines = 4;

QPushButton* export_button(const QString& words, const char* name, QWidget* parent) {
  auto* button = new QPushButton(words, parent);
  button->setObjectName(QLatin1String(name));
  return button;
}

}  // namespace

MakeTab::MakeTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = new QLabel(this);
  told_->setObjectName(QStringLiteral("works.make.told"));
  told_->setWordWrap(true);
  column->addWidget(told_);
  table_ = new FilteredTable(QStringLiteral("works.make"), tr("Make list"), this);
  table_->setHint(tr("Filter: U07, P03, pour"));
  column->addWidget(table_, 1);
  auto* foot = new QHBoxLayout;
  foot->setContentsMargins(8, 0, 0, 0);
  foot->setSpacing(8);
  next_ = new QLabel(this);
  next_->setObjectName(QStringLiteral("works.make.next"));
  next_->setWordWrap(true);
  masters_ = export_button(tr("Export masters…"), "works.exportMasters", this);
  masters_->setProperty("brass", true);
  masters_->setToolTip(
      tr("STEP, STL and 3MF of the masters, grown for shrinkage and stock, and what to measure"));
  moulds_ = export_button(tr("Export moulds…"), "works.exportMoulds", this);
  moulds_->setToolTip(tr("STEP of the halves of every mould"));
  spare_ = export_button(tr("Record a spare…"), "works.recordSpare", this);
  spare_->setToolTip(tr("Records a step for a spare casting of the chosen master"));
  foot->addWidget(next_, 1);
  foot->addWidget(spare_);
  foot->addWidget(masters_);
  foot->addWidget(moulds_);
  column->addLayout(foot);
  connect(desk_, &WorksDesk::changed, this, &MakeTab::follow);
  connect(desk_->bench(), &Workbench::selectionChanged, this, &MakeTab::followSelection);
  connect(table_, &FilteredTable::chosen, this, [this](int line) {
    desk_->bench()->select(table_->sheet().rows[static_cast<std::size_t>(line)].marks);
  });
  connect(masters_, &QPushButton::clicked, this, [this] { emit mastersWanted(chosenMasters()); });
  connect(spare_, &QPushButton::clicked, this, [this] {
    const QStringList masters = chosenMasters();
    if (!masters.isEmpty()) emit spareWanted(masters.front());
  });
  connect(moulds_, &QPushButton::clicked, this, [this] { emit mouldsWanted(chosenMasters()); });
}

QStringList MakeTab::chosenMasters() const {
  const auto line = table_->line();
  if (!line) return {};
  return {table_->sheet().rows[static_cast<std::size_t>(*line)].cells.front().saved};
}

void MakeTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

void MakeTab::follow() {
  if (!isVisible()) return;
  const WorksReckoning* works = desk_->reckoning();
  masters_->setEnabled(works != nullptr);
  moulds_->setEnabled(works != nullptr);
  spare_->setEnabled(works != nullptr && !desk_->bench()->book().read_only());
  if (works == nullptr) {
    table_->setSheet({});
    table_->setReason(tr("There is no section to make prisms from yet."));
    told_->clear();
    next_->clear();
    return;
  }
  table_->setSheet(make_sheet(works->list, desk_->bench()->inches()));
  told_->setText(make_words(works->list));
  const QStringList next = next_words(works->list, kNextLines);
  next_->setText(next.isEmpty() ? tr("Every prism is glazed.") : tr("First: %1").arg(next.join(tr(" · "))));
  followSelection();
}

void MakeTab::followSelection() {
  const QStringList& marks = desk_->bench()->selection();
  if (isVisible()) table_->showLine(marks.isEmpty() ? -1 : table_->lineOf(marks.front()));
}

}  // namespace prismwright
