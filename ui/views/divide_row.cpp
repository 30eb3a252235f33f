#include "ui/views/divide_row.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

constexpr int kNumberWidth = 56;

QString rule_words(Division division) {
  switch (division) {
    case Division::side:
      return DivideRow::tr("entry side");
    case Division::thickness:
      return DivideRow::tr("thickness");
    case Division::count:
      return DivideRow::tr("count");
    case Division::area:
      return DivideRow::tr("equal area");
    case Division::height:
      return DivideRow::tr("equal height");
    case Division::by_hand:
      break;
  }
  return {};
}

double number_now(const SectionSettings& section, Band band, Division rule) {
  const BandSettings& settings = section.of(band);
  switch (rule) {
    case Division::side:
      return settings.side_mm.value_or(section.reflecting_chord_mm);
    case Division::thickness:
      return band == Band::refracting ? section.edge_mm + section.ring_growth_mm
                                      : settings.section_thickness_mm;
    default:
      return settings.count;
  }
}

}  // namespace

DivideRow::DivideRow(Workbench* bench, Band band, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      band_(band),
      rule_(new QComboBox(this)),
      number_(new QLineEdit(this)),
      unit_(new QLabel(this)) {
  const std::string_view word = name_of(band);
  const QString name =
      QStringLiteral("divide.") + QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(6);
  for (const Division division :
       {Division::side, Division::thickness, Division::count, Division::area, Division::height}) {
    if (band == Band::refracting && division == Division::side) continue;
    rule_->addItem(rule_words(division), static_cast<int>(division));
  }
  rule_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  rule_->setMinimumContentsLength(8);
  rule_->setObjectName(name + QStringLiteral(".rule"));
  rule_->setAccessibleName(tr("Rule to divide by"));
  number_->setObjectName(name + QStringLiteral(".number"));
  number_->setAccessibleName(tr("Number to divide by"));
  number_->setAlignment(Qt::AlignRight);
  number_->setFixedWidth(kNumberWidth);
  auto* go = new QPushButton(tr("Divide"), this);
  go->setObjectName(name + QStringLiteral(".go"));
  go->setToolTip(tr("Divides the band anew by this rule; locked zones stay"));
  go_ = go;
  row->addWidget(rule_, 1);
  row->addWidget(number_);
  row->addWidget(unit_);
  row->addWidget(go);
  connect(rule_, &QComboBox::activated, this, &DivideRow::showRule);
  connect(number_, &QLineEdit::returnPressed, this, &DivideRow::divide);
  connect(go, &QPushButton::clicked, this, &DivideRow::divide);
  connect(bench_, &Workbench::bookChanged, this, &DivideRow::follow);
  connect(bench_, &Workbench::valuesChanged, this, &DivideRow::follow);
  connect(bench_, &Workbench::unitsChanged, this, &DivideRow::showRule);
  follow();
}

Division DivideRow::rule() const { return static_cast<Division>(rule_->currentData().toInt()); }

Quantity DivideRow::quantity() const {
  Quantity quantity;
  if (rule() == Division::side || rule() == Division::thickness) quantity.unit = "mm";
  return quantity;
}

void DivideRow::follow() {
  const Division division = bench_->values().section.of(band_).division;
  if (const int place = rule_->findData(static_cast<int>(division)); place >= 0) rule_->setCurrentIndex(place);
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  for (QWidget* each : {static_cast<QWidget*>(rule_), static_cast<QWidget*>(number_), go_})
    each->setEnabled(may_edit);
  showRule();
}

void DivideRow::showRule() {
  const double now = number_now(bench_->values().section, band_, rule());
  number_->setText(shown_value(quantity(), number_text(now), bench_->inches()));
  unit_->setText(shown_unit(quantity(), bench_->inches()));
}

void DivideRow::divide() {
  if (!bench_->plan()) return;
  const Quantity counted = quantity();
  const auto number = read_number(typed_value(counted, number_->text(), bench_->inches()), counted.unit);
  if (!number) {
    emit bench_->refused(tr("\"%1\" is no number to divide by: type one.").arg(number_->text()));
    return;
  }
  (void)bench_->edit(divide_band(bench_->values(), bench_->plan()->section, band_, rule(), *number));
}

}  // namespace prismwright
