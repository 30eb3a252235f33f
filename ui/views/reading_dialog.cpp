#include "ui/views/reading_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

#include "ui/models/bench_words.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

Quantity length_of_spot() {
  Quantity length;
  length.unit = "mm";
  return length;
}

/// A length as typed: its own unit wins, a bare number is in the unit shown; blank where it is none.
std::optional<double> typed_length_mm(const QLineEdit& line, bool inches) {
  const QString typed = QString(line.text()).replace(QChar(0x2212), '-');
  return read_number(typed_value(length_of_spot(), typed, inches), "mm");
}

Problem no_length(const QString& what, const QLineEdit& line, bool inches) {
  const QString typed = line.text().trimmed();
  const QString text =
      typed.isEmpty() ? ReadingDialog::tr("%1 is blank: type a length in %2.").arg(what, length_unit(inches))
                      : ReadingDialog::tr("%1 is \"%2\", which is no length: type a number in %3.")
                            .arg(what, typed, length_unit(inches));
  return request_problem("bench.reading", "", text.toStdString());
}

/// A line with its unit behind it.
QWidget* with_unit(QLineEdit* line, const QString& unit, QWidget* parent) {
  auto* holder = new QWidget(parent);
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  line->setAlignment(Qt::AlignRight);
  line->setFixedWidth(96);
  row->addWidget(line);
  row->addWidget(new QLabel(unit, holder));
  row->addStretch(1);
  holder->setFocusProxy(line);
  return holder;
}

QLabel* sentence(QWidget* parent, const char* name, const char* look) {
  auto* label = named(new QLabel(parent), name);
  label->setWordWrap(true);
  label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  if (look) label->setProperty(look, true);
  return label;
}

}  // namespace

ReadingDialog::ReadingDialog(Workbench* bench, const BenchMaker* maker, const QString& mark, QWidget* parent)
    : QDialog(parent), bench_(bench), maker_(maker), plan_(maker->plan()) {
  setObjectName(QStringLiteral("reading"));
  setWindowTitle(tr("Record a reading"));
  makeFields(mark);
  layOut();
  for (QLineEdit* line : {mark_, height_, aside_})
    connect(line, &QLineEdit::textChanged, this, &ReadingDialog::advise);
  (mark.isEmpty() ? mark_ : height_)->setFocus();
  advise();
}

void ReadingDialog::makeFields(const QString& mark) {
  mark_ = named(new QLineEdit(mark, this), "reading.mark");
  height_ = named(new QLineEdit(this), "reading.height");
  height_->setToolTip(tr("How far the spot lies over the place where it should fall; below it with a minus"));
  aside_ = named(new QLineEdit(QStringLiteral("0"), this), "reading.aside");
  aside_->setToolTip(
      tr("How far the spot lies left of the place where it should fall, as seen from the focus; to the right "
         "with a minus"));
  by_ = named(new QLineEdit(QSettings().value(QStringLiteral("recordedBy")).toString(), this), "reading.by");
  note_ = named(new QLineEdit(this), "reading.note");
  place_ = sentence(this, "reading.place", "muted");
  result_ = sentence(this, "reading.result", nullptr);
  refusal_ = sentence(this, "reading.refusal", "refusal");
}

void ReadingDialog::layOut() {
  const QString unit = length_unit(bench_->inches());
  auto* form = new QFormLayout;
  form->setVerticalSpacing(12);
  form->setHorizontalSpacing(16);
  form->addRow(tr("&Prism"), mark_);
  form->addRow(place_);
  form->addRow(tr("&Height over the expected spot"), with_unit(height_, unit, this));
  form->addRow(tr("&Left of the expected spot"), with_unit(aside_, unit, this));
  form->addRow(tr("Read &by"), by_);
  form->addRow(tr("&Note"), note_);
  for (QLineEdit* line : {height_, aside_})
    static_cast<QLabel*>(form->labelForField(line->parentWidget()))->setBuddy(line);
  auto* buttons = new QDialogButtonBox(this);
  record_ = named(new QPushButton(tr("Record"), this), "reading.record");
  record_->setProperty("brass", true);
  buttons->addButton(record_, QDialogButtonBox::AcceptRole);
  record_->setDefault(true);
  named(buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole), "reading.cancel");
  connect(buttons, &QDialogButtonBox::accepted, this, &ReadingDialog::record);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* caution = new QLabel(laser_caution(), this);
  caution->setWordWrap(true);
  caution->setProperty("muted", true);
  auto* answers = new QWidget(this);
  auto* answer = new QVBoxLayout(answers);
  answer->setContentsMargins(0, 0, 0, 0);
  answer->addWidget(result_);
  answer->addWidget(refusal_);
  answer->addStretch(1);
  // As high as its longest refusal: the buttons stay where they are while one types.
  answers->setMinimumHeight(6 * fontMetrics().lineSpacing());
  place_->setMinimumHeight(2 * fontMetrics().lineSpacing() + 2);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 16, 24, 16);
  column->setSpacing(12);
  column->addLayout(form);
  column->addWidget(answers, 1);
  column->addWidget(caution);
  column->addWidget(buttons);
  setMinimumWidth(480);
}

/// Small letters will do: "p01-r6A" is P01-R6a.
std::string ReadingDialog::markTyped() const {
  const QString typed = mark_->text().trimmed();
  for (const BenchAim& aim : plan_->aims)
    if (QString::fromStdString(aim.mark).compare(typed, Qt::CaseInsensitive) == 0) return aim.mark;
  return typed.toStdString();
}

Outcome<BenchReading> ReadingDialog::reading() const {
  BenchReading wanted;
  wanted.mark = markTyped();
  wanted.board_mm = plan_->board_mm;
  wanted.by = by_->text().trimmed().toStdString();
  wanted.note = note_->text().trimmed().toStdString();
  const auto height_mm = typed_length_mm(*height_, bench_->inches());
  const auto aside_mm = typed_length_mm(*aside_, bench_->inches());
  if (!height_mm) return no_length(tr("The height"), *height_, bench_->inches());
  if (!aside_mm) return no_length(tr("The place aside"), *aside_, bench_->inches());
  wanted.height_mm = *height_mm;
  wanted.aside_mm = *aside_mm;
  return wanted;
}

/// What the reading would say, or what is against it, before it is sent.
void ReadingDialog::advise() {
  const BenchAim* aim = plan_->find(markTyped());
  place_->setText(aim && aim->trouble.empty()
                      ? tr("Its spot should fall %1, on the board at %2.")
                            .arg(place_words(aim->spot_at(plan_->board_mm), bench_->inches()),
                                 length_text(plan_->board_mm, bench_->inches(), 0))
                      : QString());
  showProblem({});
  const Outcome<BenchReading> wanted = reading();
  // Nothing typed yet is no mistake.
  if (!wanted && height_->text().trimmed().isEmpty()) return;
  if (!wanted) return showProblem(sentence_of(wanted.problem()));
  if (const Done fit = check_reading(*plan_, *wanted); !fit) return showProblem(sentence_of(fit.problem()));
  result_->setText(mend_sentence(mend_of(*plan_->find(wanted->mark), *wanted, maker_->within_deg())));
}

void ReadingDialog::showProblem(const QString& words) {
  result_->clear();
  refusal_->setText(words);
  refusal_->setVisible(!words.isEmpty());
}

void ReadingDialog::record() {
  const Outcome<BenchReading> wanted = reading();
  if (!wanted) return showProblem(sentence_of(wanted.problem()));
  if (const Done kept = bench_->recordReading(*plan_, *wanted); !kept)
    return showProblem(sentence_of(kept.problem()));
  QSettings().setValue(QStringLiteral("recordedBy"), by_->text().trimmed());
  accept();
}

}  // namespace prismwright
