#include "ui/views/number_field.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <cmath>
#include <utility>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {
// Finer than any hand can set; keeps the tail of a dragged angle off the screen.
constexpr double kFinest = 1e-4;
constexpr int kFieldWidth = 84;
}  // namespace

NumberField::NumberField(Quantity quantity, const QString& name, QWidget* parent)
    : QWidget(parent),
      quantity_(std::move(quantity)),
      line_(new QLineEdit(this)),
      unit_(new QLabel(this)),
      refusal_(new QLabel(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  column->addLayout(row);
  line_->setObjectName(name);
  line_->setFixedWidth(kFieldWidth);
  line_->setAlignment(Qt::AlignRight);
  line_->setAccessibleName(QString::fromStdString(quantity_.label));
  line_->installEventFilter(this);
  setFocusProxy(line_);
  row->addWidget(line_);
  row->addWidget(unit_);
  row->addStretch(1);
  refusal_->setObjectName(name + QStringLiteral(".refusal"));
  refusal_->setProperty("refusal", true);
  refusal_->setWordWrap(true);
  column->addWidget(refusal_);
  connect(line_, &QLineEdit::editingFinished, this, &NumberField::send);
  setInches(false);
}

QString NumberField::shown() const {
  const double rounded = std::round(value_ / kFinest) * kFinest;
  return shown_value(quantity_, QString::number(rounded, 'g', 10).toStdString(), inches_);
}

void NumberField::setValue(double value) {
  value_ = value;
  line_->setText(shown());
  showRefusal({});
}

void NumberField::setInches(bool inches) {
  inches_ = inches;
  unit_->setText(shown_unit(quantity_, inches_));
  line_->setToolTip(
      tr("%1 (%2 %3)")
          .arg(QString::fromStdString(quantity_.meaning), range_words(quantity_, inches_), unit_->text()));
  setValue(value_);
}

void NumberField::send() {
  const QString typed = QString(line_->text()).replace(QChar(0x2212), '-');
  if (typed == shown()) return showRefusal({});
  const std::optional<double> number = read_number(typed_value(quantity_, typed, inches_), quantity_.unit);
  if (number && *number >= quantity_.min && *number <= quantity_.max) {
    setValue(*number);
    emit entered(*number);
    return;
  }
  showRefusal(tr("%1 is %2: type a value from %3 %4.")
                  .arg(typed.trimmed().isEmpty() ? tr("Nothing") : typed.trimmed(),
                       number ? tr("out of range") : tr("no number"), range_words(quantity_, inches_),
                       unit_->text()));
}

void NumberField::showRefusal(const QString& refusal) {
  refusal_->setText(refusal);
  refusal_->setVisible(!refusal.isEmpty());
}

bool NumberField::eventFilter(QObject* watched, QEvent* event) {
  const bool escape =
      event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape;
  if (watched == line_ && escape && line_->text() != shown()) {
    setValue(value_);
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace prismwright
