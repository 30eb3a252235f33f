#include "ui/views/despatch_form.h"

#include <QComboBox>
#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/views/fold.h"
#include "ui/views/named.h"
#include "ui/views/number_field.h"
#include "ui/views/refusal_label.h"

namespace prismwright {
namespace {

constexpr int kLongestRevision = 8;  // what a title block holds

Quantity of_estimate(const char* unit, double min, double max, const QString& label, const QString& meaning,
                     QuantityForm form = QuantityForm::count) {
  Quantity quantity;
  quantity.form = form;
  quantity.unit = unit;
  quantity.min = min;
  quantity.max = max;
  quantity.label = label.toStdString();
  quantity.meaning = meaning.toStdString();
  return quantity;
}

void add_field(QHBoxLayout* row, const QString& label, QWidget* field) {
  auto* words = new QLabel(label, field->parentWidget());
  words->setBuddy(field);
  row->addWidget(words);
  row->addWidget(field);
}

}  // namespace

DespatchForm::DespatchForm(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(makeStrip());
  auto* fold =
      new Fold(QStringLiteral("despatch.estimate"), tr("Choices of the estimate"), makeEstimate(), this);
  column->addWidget(fold);
  refusal_ = new RefusalLabel("despatch.refusal", this);
  column->addWidget(refusal_);
}

QLineEdit* DespatchForm::addLine(QHBoxLayout* row, const char* name, const QString& label, int width) {
  auto* line = named(new QLineEdit(this), name);
  line->setFixedWidth(width);
  add_field(row, label, line);
  return line;
}

QWidget* DespatchForm::makeStrip() {
  auto* strip = new QWidget(this);
  auto* row = new QHBoxLayout(strip);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  folder_ = named(new QLineEdit(strip), "despatch.folder");
  folder_->setToolTip(tr("Each pack gets a folder of its own in it, named after book and date"));
  add_field(row, tr("Packs &go to"), folder_);
  row->setStretchFactor(folder_, 1);
  auto* browse_button = named(new QPushButton(tr("Browse…"), strip), "despatch.browse");
  row->addWidget(browse_button);
  date_ = addLine(row, "despatch.date", tr("&Date"), 96);
  date_->setPlaceholderText(QDate::currentDate().toString(Qt::ISODate));
  date_->setToolTip(tr("Of pack and papers, as year-month-day; blank: today"));
  revision_ = addLine(row, "despatch.revision", tr("Re&vision"), 56);
  revision_->setMaxLength(kLongestRevision);
  revision_->setToolTip(tr("Of what is made anew; blank: the letter after the last pack's"));
  paper_ = named(new QComboBox(strip), "despatch.paper");
  paper_->addItem(tr("as needed"), -1);
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter})
    paper_->addItem(QString::fromUtf8(name_of(paper)), static_cast<int>(paper));
  paper_->setToolTip(tr("Of the papers; as needed: A4, or A3 where a drawing asks for it"));
  add_field(row, tr("&Paper"), paper_);
  connect(folder_, &QLineEdit::editingFinished, this, &DespatchForm::takeFolder);
  connect(browse_button, &QPushButton::clicked, this, &DespatchForm::browse);
  connect(date_, &QLineEdit::editingFinished, this, &DespatchForm::takeDate);
  connect(revision_, &QLineEdit::editingFinished, this, &DespatchForm::takeRevision);
  connect(paper_, &QComboBox::activated, this, &DespatchForm::takePaper);
  return strip;
}

QWidget* DespatchForm::makeEstimate() {
  auto* body = new QWidget(this);
  auto* row = new QHBoxLayout(body);
  row->setContentsMargins(0, 0, 0, 4);
  row->setSpacing(8);
  const auto field = [&](const Quantity& quantity, const char* name, const QString& label) {
    auto* number = new NumberField(quantity, QLatin1String(name), body);
    add_field(row, label, number);
    return number;
  };
  margin_ = field(of_estimate("%", 0, EstimateChoice::kMostMargin_percent, tr("Margin"),
                              tr("Upon the reckoned cost"), QuantityForm::number),
                  "despatch.margin", tr("&Margin"));
  days_ = field(of_estimate("days", 1, EstimateChoice::kMostDays, tr("Valid for"),
                            tr("The offer holds so long from its date")),
                "despatch.days", tr("Val&id for"));
  spares_ = field(of_estimate("", 0, EstimateChoice::kMostSets, tr("Spare sets"),
                              tr("Offered beside the lens: one casting of every kind each")),
                  "despatch.spares", tr("Spare &sets"));
  note_ = named(new QLineEdit(body), "despatch.note");
  add_field(row, tr("&Note"), note_);
  row->setStretchFactor(note_, 1);
  EstimateChoice& estimate = wish_.choice.estimate;
  connect(margin_, &NumberField::entered, this, [this, &estimate](double percent) {
    estimate.margin_percent = percent;
    send();
  });
  connect(days_, &NumberField::entered, this, [this, &estimate](double days) {
    estimate.valid_days = static_cast<int>(std::lround(days));
    days_->setValue(estimate.valid_days);
    send();
  });
  connect(spares_, &NumberField::entered, this, [this, &estimate](double sets) {
    estimate.spare_sets = static_cast<int>(std::lround(sets));
    spares_->setValue(estimate.spare_sets);
    send();
  });
  connect(note_, &QLineEdit::editingFinished, this, [this, &estimate] {
    const std::string typed = note_->text().trimmed().toStdString();
    if (typed == estimate.note) return;
    estimate.note = typed;
    send();
  });
  return body;
}

void DespatchForm::setWish(const DespatchWish& wish, const QString& offered_folder) {
  wish_ = wish;
  offered_folder_ = offered_folder;
  folder_->setText(QDir::toNativeSeparators(wish_.folder));
  folder_->setPlaceholderText(QDir::toNativeSeparators(offered_folder_));
  date_->setText(QString::fromStdString(wish_.choice.date));
  revision_->setText(QString::fromStdString(wish_.choice.revision));
  paper_->setCurrentIndex(
      std::max(0, paper_->findData(wish_.choice.paper ? static_cast<int>(*wish_.choice.paper) : -1)));
  margin_->setValue(wish_.choice.estimate.margin_percent);
  days_->setValue(wish_.choice.estimate.valid_days);
  spares_->setValue(wish_.choice.estimate.spare_sets);
  note_->setText(QString::fromStdString(wish_.choice.estimate.note));
  refusal_->tell(QString());
}

void DespatchForm::setOfferedRevision(const QString& revision) { revision_->setPlaceholderText(revision); }

void DespatchForm::send() { emit wishChanged(wish_); }

void DespatchForm::takeFolder() {
  QString folder = QDir::fromNativeSeparators(folder_->text().trimmed());
  folder = folder.isEmpty() ? offered_folder_ : QFileInfo(offered_folder_).dir().absoluteFilePath(folder);
  folder_->setText(QDir::toNativeSeparators(folder));
  if (folder == wish_.folder) return;
  wish_.folder = folder;
  send();
}

void DespatchForm::browse() {
  const QString chosen = QFileDialog::getExistingDirectory(this, tr("Folder for the packs"), wish_.folder);
  if (chosen.isEmpty()) return;
  folder_->setText(QDir::toNativeSeparators(chosen));
  takeFolder();
}

void DespatchForm::takeDate() {
  const QString typed = date_->text().trimmed();
  const QDate date = QDate::fromString(typed, Qt::ISODate);
  const bool well = typed.isEmpty() || (date.isValid() && typed.size() == 10);
  refusal_->tell(well ? QString()
                      : tr("The date \"%1\" is none: type it as year-month-day, such as %2, or leave it blank "
                           "for today.")
                            .arg(typed, QDate::currentDate().toString(Qt::ISODate)));
  if (!well || typed.toStdString() == wish_.choice.date) return;
  wish_.choice.date = typed.toStdString();
  send();
}

void DespatchForm::takeRevision() {
  const std::string typed = revision_->text().trimmed().toStdString();
  if (typed == wish_.choice.revision) return;
  wish_.choice.revision = typed;
  send();
}

void DespatchForm::takePaper() {
  const int paper = paper_->currentData().toInt();
  const std::optional<Paper> chosen = paper < 0 ? std::nullopt : std::optional(static_cast<Paper>(paper));
  if (chosen == wish_.choice.paper) return;
  wish_.choice.paper = chosen;
  send();
}

}  // namespace prismwright
