#include "ui/views/period_row.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "ui/models/light_numbers.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/number_field.h"

namespace prismwright {
namespace {

Quantity period_quantity() {
  Quantity quantity;
  quantity.unit = "s";
  quantity.min = 0.1;
  quantity.max = 3600;
  quantity.label = PeriodRow::tr("Wanted period").toStdString();
  return quantity;
}

}  // namespace

PeriodRow::PeriodRow(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      field_(new NumberField(period_quantity(), QStringLiteral("light.period"), this)),
      set_(new QPushButton(tr("Set the turn"), this)),
      words_(new QLabel(this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(8, 4, 8, 4);
  row->setSpacing(8);
  auto* label = new QLabel(tr("Wanted &period"), this);
  label->setBuddy(field_);
  set_->setObjectName(QStringLiteral("light.period.set"));
  words_->setObjectName(QStringLiteral("light.period.words"));
  words_->setProperty("muted", true);
  row->addWidget(label);
  row->addWidget(field_);
  row->addWidget(set_);
  row->addWidget(words_, 1);
  connect(field_, &NumberField::entered, this, &PeriodRow::take);
  connect(set_, &QPushButton::clicked, this, &PeriodRow::setTurn);
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &PeriodRow::follow);
  follow();
}

void PeriodRow::setReport(std::shared_ptr<const LightReport> report) {
  report_ = std::move(report);
  wanted_s_ = report_ ? report_->rhythm.period_s : 0;
  if (wanted_s_ > 0) field_->setValue(wanted_s_);
  follow();
}

void PeriodRow::take(double period_s) {
  wanted_s_ = period_s;
  follow();
}

void PeriodRow::setTurn() {
  if (!report_) return;
  const double turn_s = turn_for_period_s(report_->rhythm, wanted_s_);
  if (turn_s <= 0) return;
  const Assignment turn{"light.turn_s", number_text(turn_s)};
  (void)bench_->assign({&turn, 1}, {});
}

/// Without a period there is nothing to scale; the words say why.
void PeriodRow::follow() {
  const bool rhythm = report_ && report_->rhythm.period_s > 0;
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  field_->setEnabled(rhythm && may_edit);
  const double turn_s = rhythm ? turn_for_period_s(report_->rhythm, wanted_s_) : 0;
  const bool turns = bench_->hasBook() && bench_->values().light.turn_s > 0;
  set_->setEnabled(may_edit && turn_s > 0 && turn_s != bench_->values().light.turn_s);
  QString words;
  if (!report_)
    words = QString();
  else if (rhythm)
    words = tr("gives a turn of %1 (now %2)")
                .arg(seconds_text(turn_s), seconds_text(bench_->values().light.turn_s));
  else if (!turns)
    words = tr("The lens stands still: give it a turn first.");
  else
    words = tr("A steady light has no period.");
  words_->setText(words);
}

}  // namespace prismwright
