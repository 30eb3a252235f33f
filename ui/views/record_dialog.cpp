#include "ui/views/record_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>
#include <algorithm>

#include "core/works/log_checks.h"
#include "core/works/spares.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

constexpr int kAsUsual = -1;  ///< no stage named: the ledger's own rule decides

Stage stage_of(const Workbench& bench, const QString& mark) {
  const auto found = bench.stages().find(mark.toStdString());
  return found == bench.stages().end() ? Stage::drawn : found->second;
}

/// The step that most likely follows for a tray: the one after its furthest-behind prism.
Stage likely_step(const Workbench& bench, const QStringList& marks) {
  Stage least = Stage::glazed;
  for (const QString& mark : marks) least = std::min(least, stage_of(bench, mark));
  return next_stage(least).value_or(Stage::scrapped);
}

QComboBox* stage_choice(QWidget* parent, const char* name, Stage first, Stage last) {
  auto* choice = named(new QComboBox(parent), name);
  for (const Stage stage : kStages)
    if (stage >= first && stage <= last)
      choice->addItem(QStringLiteral("%1  %2").arg(palette::stage_sign(stage), palette::stage_words(stage)),
                      static_cast<int>(stage));
  return choice;
}

Stage chosen_stage(const QComboBox* choice) { return static_cast<Stage>(choice->currentData().toInt()); }

}  // namespace

RecordDialog::RecordDialog(Workbench* bench, const QStringList& marks, QWidget* parent)
    : QDialog(parent), bench_(bench) {
  setObjectName(QStringLiteral("record"));
  setWindowTitle(tr("Record a step"));
  marks_ = named(new QListWidget(this), "record.marks");
  marks_->setMinimumSize(240, 280);
  stage_ = stage_choice(this, "record.stage", Stage::mastered, Stage::scrapped);
  stage_->setCurrentIndex(stage_->findData(static_cast<int>(likely_step(*bench_, marks))));
  back_to_ = stage_choice(this, "record.backTo", Stage::drawn, Stage::proved);
  back_to_->insertItem(0, tr("as usual"), kAsUsual);
  back_to_->setToolTip(tr("As usual: from the mould, or one stage back for a prism that had not come past it"));
  back_to_->setCurrentIndex(0);
  by_ = named(new QLineEdit(QSettings().value(QStringLiteral("recordedBy")).toString(), this), "record.by");
  note_ = named(new QPlainTextEdit(this), "record.note");
  note_->setTabChangesFocus(true);
  note_->setMinimumHeight(72);
  advice_ = named(new QLabel(this), "record.advice");
  advice_->setWordWrap(true);
  advice_->setProperty("refusal", true);
  advice_->setMinimumSize(320, 56);
  advice_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  back_to_label_ = new QLabel(tr("Start again &from"), this);
  back_to_label_->setBuddy(back_to_);

  auto* row = new QHBoxLayout;
  row->setSpacing(24);
  auto* left = new QVBoxLayout;
  left->addWidget(new QLabel(tr("Prisms, with the stage they stand at"), this));
  left->addWidget(marks_, 1);
  row->addLayout(left);
  auto* form = new QFormLayout;
  form->setVerticalSpacing(12);
  form->addRow(tr("&Stage reached"), stage_);
  form->addRow(back_to_label_, back_to_);
  makeLoad(*form);
  form->addRow(tr("&Done by"), by_);
  form->addRow(tr("&Note"), note_);
  form->addRow(advice_);
  row->addLayout(form, 1);
  auto* buttons = new QDialogButtonBox(this);
  record_ = named(buttons->addButton(tr("Record"), QDialogButtonBox::AcceptRole), "record.record");
  record_->setProperty("brass", true);
  record_->setDefault(true);
  named(buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole), "record.cancel");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 16, 24, 16);
  column->setSpacing(16);
  column->addLayout(row, 1);
  column->addWidget(buttons);

  fillMarks(marks);
  connect(buttons, &QDialogButtonBox::accepted, this, &RecordDialog::record);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(marks_, &QListWidget::itemChanged, this, &RecordDialog::advise);
  connect(stage_, &QComboBox::currentIndexChanged, this, &RecordDialog::advise);
  connect(back_to_, &QComboBox::currentIndexChanged, this, &RecordDialog::advise);
  connect(by_, &QLineEdit::textChanged, this, &RecordDialog::advise);
  connect(note_, &QPlainTextEdit::textChanged, this, &RecordDialog::advise);
  stage_->setFocus();
  advise();
}

void RecordDialog::makeLoad(QFormLayout& form) {
  const WorksSettings& works = bench_->values().works;
  with_load_ = named(new QCheckBox(tr("Record the &load of the vessel too"), this), "record.load");
  load_ = new QWidget(this);
  auto* fields = new QFormLayout(load_);
  fields->setContentsMargins(0, 0, 0, 0);
  const auto add = [&](const QString& label, const char* name, const std::string& text) {
    auto* line = named(new QLineEdit(QString::fromStdString(text), load_), name);
    fields->addRow(label, line);
    connect(line, &QLineEdit::textChanged, this, &RecordDialog::advise);
    return line;
  };
  lot_ = add(tr("Resin lot"), "record.lot", works.resin_batch);
  tint_ = add(tr("Tint paste"), "record.tint", works.tint_name);
  resin_g_ = add(tr("Resin, g"), "record.resinG", {});
  initiator_g_ = add(tr("Initiator, g"), "record.initiatorG", {});
  tint_g_ = add(tr("Tint, g"), "record.tintG", {});
  form.addRow(with_load_);
  form.addRow(load_);
  connect(with_load_, &QCheckBox::toggled, this, &RecordDialog::advise);
}

void RecordDialog::tickOnly(const QString& mark) {
  for (int i = 0; i < marks_->count(); ++i) {
    QListWidgetItem* item = marks_->item(i);
    item->setCheckState(item->data(Qt::UserRole).toString() == mark ? Qt::Checked : Qt::Unchecked);
  }
}

void RecordDialog::offerLoad(const LoadMasses& masses) {
  stage_->setCurrentIndex(stage_->findData(static_cast<int>(Stage::cast)));
  resin_g_->setText(QString::number(masses.resin_g, 'f', 0));
  initiator_g_->setText(QString::number(masses.initiator_g, 'f', 1));
  tint_g_->setText(QString::number(masses.tint_g, 'f', 1));
  with_load_->setChecked(true);
  advise();
}

Outcome<WorksLog> RecordDialog::load() const {
  WorksLog log;
  if (chosen_stage(stage_) != Stage::cast || !with_load_->isChecked()) return log;
  VesselLoad filled;
  filled.resin = bench_->values().works.resin;
  filled.resin_lot = lot_->text().trimmed().toStdString();
  filled.tint = tint_->text().trimmed().toStdString();
  filled.by = by_->text().trimmed().toStdString();
  for (const auto& [line, mass] :
       {std::pair(resin_g_, &filled.resin_g), std::pair(initiator_g_, &filled.initiator_g),
        std::pair(tint_g_, &filled.tint_g)}) {
    const QString typed = line->text().trimmed();
    const auto grams = typed.isEmpty() ? std::optional(0.0) : read_number(typed.toStdString(), "");
    if (!grams)
      return request_problem("unread", typed.toStdString(),
                             tr("\"%1\" is no mass. Type grams, for instance 812.").arg(typed).toStdString());
    *mass = *grams;
  }
  if (const Done fit = check_load(filled); !fit) return fit.problem();
  log.loads = {filled};
  return log;
}

void RecordDialog::fillMarks(const QStringList& marks) {
  for (const QString& mark : marks) {
    const Stage stage = stage_of(*bench_, mark);
    auto* item = new QListWidgetItem(tr("%1   %2").arg(mark, palette::stage_words(stage)), marks_);
    item->setData(Qt::UserRole, mark);
    item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
    item->setCheckState(Qt::Checked);
  }
}

StepRequest RecordDialog::request() const {
  StepRequest request;
  for (int i = 0; i < marks_->count(); ++i)
    if (marks_->item(i)->checkState() == Qt::Checked)
      request.marks.push_back(marks_->item(i)->data(Qt::UserRole).toString().toStdString());
  request.to = chosen_stage(stage_);
  request.by = by_->text().trimmed().toStdString();
  request.note = note_->toPlainText().trimmed().toStdString();
  const bool named_stage = back_to_->currentData().toInt() != kAsUsual;
  if (request.to == Stage::scrapped && named_stage) request.back_to = chosen_stage(back_to_);
  return request;
}

/// What the book would say to this request, before it is sent.
void RecordDialog::advise() {
  const StepRequest wanted = request();
  const bool scrapping = wanted.to == Stage::scrapped;
  with_load_->setVisible(wanted.to == Stage::cast);
  load_->setVisible(wanted.to == Stage::cast && with_load_->isChecked());
  back_to_->setVisible(scrapping);
  back_to_label_->setVisible(scrapping);
  record_->setText(tr("Record for %n prism(s)", nullptr, static_cast<int>(wanted.marks.size())));
  record_->setEnabled(!wanted.marks.empty());
  if (wanted.marks.empty()) {
    advice_->setText(tr("No prism is ticked: tick those that have reached the stage."));
    return;
  }
  std::vector<std::string> known;
  for (const PlannedPrism& prism : bench_->plan()->prisms) known.push_back(prism.mark);
  known = workable_marks(known, bench_->book().ledger(), wanted.marks);
  const auto lines = plan_steps(wanted, bench_->stages(), known);
  const auto filled = load();
  advice_->setText(!lines ? sentence_of(lines.problem()) : !filled ? sentence_of(filled.problem()) : QString());
}

void RecordDialog::record() {
  StepRequest wanted = request();
  const auto filled = load();
  if (!filled) {
    advice_->setText(sentence_of(filled.problem()));
    return;
  }
  if (!filled->loads.empty()) wanted.load = Lensbook::kNewLoad;
  if (const Done done = bench_->record(wanted, *filled); !done) {
    advice_->setText(sentence_of(done.problem()));
    if (wanted.note.empty()) note_->setFocus();
    return;
  }
  QSettings().setValue(QStringLiteral("recordedBy"), by_->text().trimmed());
  accept();
}

}  // namespace prismwright
