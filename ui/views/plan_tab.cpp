#include "ui/views/plan_tab.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QShowEvent>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/works/log_checks.h"
#include "ui/models/plan_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/bars_picture.h"
#include "ui/views/filtered_table.h"
#include "ui/views/named.h"
#include "ui/views/refusal_label.h"

namespace prismwright {
namespace {

constexpr int kBarsHeight_px = 256;  // eight bars and their days

QLineEdit* field(const char* name, const QString& hint, QWidget* parent) {
  auto* line = named(new QLineEdit(parent), name);
  line->setPlaceholderText(hint);
  return line;
}

/// Blank counts as nought; blank answer: no number.
std::optional<double> number_in(const QLineEdit* line) {
  const QString text = line->text().trimmed();
  return text.isEmpty() ? std::optional(0.0) : read_number(text.toStdString(), "");
}

}  // namespace

PlanTab::PlanTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = named(new QLabel(this), "works.plan.told");
  told_->setWordWrap(true);
  column->addWidget(told_);
  auto* parts = new QSplitter(Qt::Vertical, this);
  parts->setChildrenCollapsible(false);
  bars_ = new BarsPicture(parts);
  auto* scroll = new QScrollArea(parts);
  scroll->setWidget(bars_);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  parts->addWidget(scroll);
  auto* tables = new QSplitter(Qt::Horizontal, parts);
  tables->setChildrenCollapsible(false);
  steps_ = new FilteredTable(QStringLiteral("works.steps"), tr("Steps"), tables);
  costs_ = new FilteredTable(QStringLiteral("works.costs"), tr("Costs"), tables);
  steps_->setHint(tr("Filter: polishing"));
  costs_->setHint(tr("Filter: resin"));
  tables->addWidget(steps_);
  tables->addWidget(costs_);
  tables->setStretchFactor(0, 5);
  tables->setStretchFactor(1, 3);
  parts->addWidget(tables);
  parts->setStretchFactor(0, 0);
  parts->setStretchFactor(1, 1);
  parts->setSizes({kBarsHeight_px, 2 * kBarsHeight_px});
  column->addWidget(parts, 1);
  column->addWidget(makeSpending());
  connect(desk_, &WorksDesk::changed, this, &PlanTab::follow);
}

QWidget* PlanTab::makeSpending() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(4);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  row->addWidget(new QLabel(tr("Spent on"), holder));
  step_ = named(new QComboBox(holder), "works.spend.step");
  for (const WorkStep step : kWorkSteps) step_->addItem(step_words(step), static_cast<int>(step));
  hours_ = field("works.spend.hours", tr("hours"), holder);
  money_ = field("works.spend.money", tr("money"), holder);
  note_ = field("works.spend.note", tr("note"), holder);
  record_ = named(new QPushButton(tr("Record"), holder), "works.spend.record");
  record_->setProperty("brass", true);
  row->addWidget(step_);
  row->addWidget(hours_, 1);
  row->addWidget(money_, 1);
  row->addWidget(note_, 3);
  row->addWidget(record_);
  column->addLayout(row);
  refusal_ = new RefusalLabel("works.spend.refusal", holder);
  column->addWidget(refusal_);
  connect(record_, &QPushButton::clicked, this, &PlanTab::record);
  for (QLineEdit* line : {hours_, money_, note_})
    connect(line, &QLineEdit::returnPressed, this, &PlanTab::record);
  return holder;
}

void PlanTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

void PlanTab::follow() {
  if (!isVisible()) return;
  const WorksReckoning* works = desk_->reckoning();
  record_->setEnabled(works != nullptr && !desk_->bench()->book().read_only());
  bars_->setPlan(works != nullptr ? &works->work : nullptr);
  steps_->setSheet(works != nullptr ? steps_sheet(*works) : CellSheet{});
  costs_->setSheet(works != nullptr ? costs_sheet(works->costs) : CellSheet{});
  told_->setText(works != nullptr ? plan_words(*works) : tr("There is no section to plan from yet."));
}

void PlanTab::record() {
  const auto hours = number_in(hours_);
  const auto money = number_in(money_);
  if (!hours || !money) {
    refusal_->tell(tr("\"%1\" is no number. Type hours and money as plain numbers, for instance 2.5.")
                       .arg(hours ? money_->text() : hours_->text()));
    return;
  }
  Spending entry;
  entry.step = std::string(name_of(static_cast<WorkStep>(step_->currentData().toInt())));
  entry.hours = *hours;
  entry.money = *money;
  entry.by = QSettings().value(QStringLiteral("recordedBy")).toString().toStdString();
  entry.note = note_->text().trimmed().toStdString();
  if (const Done fit = check_spending(entry); !fit) {
    refusal_->tell(fit);
    return;
  }
  WorksLog more;
  more.spendings = {entry};
  const Done done = desk_->bench()->addToWorks(more);
  refusal_->tell(done);
  if (!done) return;
  for (QLineEdit* line : {hours_, money_, note_}) line->clear();
}

}  // namespace prismwright
