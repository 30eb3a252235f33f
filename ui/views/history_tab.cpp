#include "ui/views/history_tab.h"

#include <QComboBox>
#include <QDate>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QShowEvent>
#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/drawing/label_sheets.h"
#include "core/works/log_checks.h"
#include "core/works/spares.h"
#include "core/works/traveller_facts.h"
#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"
#include "ui/models/history_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/filtered_table.h"
#include "ui/views/named.h"
#include "ui/views/refusal_label.h"

namespace prismwright {
namespace {

constexpr int kKindColumn = 1;

QPushButton* button(const QString& words, const char* name, QWidget* parent) {
  return named(new QPushButton(words, parent), name);
}

std::string today() { return QDate::currentDate().toString(Qt::ISODate).toStdString(); }

std::string recorded_by() { return QSettings().value(QStringLiteral("recordedBy")).toString().toStdString(); }

/// Asks for a file to write; empty when the maker thinks better of it.
QString ask_for_file(QWidget* parent, const QString& name, const QString& title, const QString& offered) {
  QFileDialog dialog(parent, title, offered);
  dialog.setObjectName(name + QStringLiteral(".saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QFileInfo(offered).suffix());
  const bool chosen = dialog.exec() == QDialog::Accepted && !dialog.selectedFiles().isEmpty();
  return chosen ? dialog.selectedFiles().front() : QString();
}

}  // namespace

HistoryTab::HistoryTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = named(new QLabel(this), "works.history.told");
  column->addWidget(told_);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  table_ = new FilteredTable(QStringLiteral("works.history"), tr("History"), halves);
  table_->setHint(tr("Filter: lot, cast, name"));
  table_->addChoice(kKindColumn, tr("everything"));
  halves->addWidget(table_);
  halves->addWidget(makePhotographs());
  halves->setStretchFactor(0, 3);
  halves->setStretchFactor(1, 1);
  column->addWidget(halves, 1);
  column->addWidget(makeFoot());
  connect(desk_, &WorksDesk::changed, this, &HistoryTab::follow);
  connect(desk_->bench(), &Workbench::selectionChanged, this, &HistoryTab::follow);
}

QWidget* HistoryTab::makePhotographs() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(8);
  which_ = named(new QComboBox(holder), "works.photo.which");
  column->addWidget(which_);
  picture_ = named(new QLabel(holder), "works.photo");
  picture_->setAlignment(Qt::AlignCenter);
  picture_->setWordWrap(true);
  picture_->setMinimumSize(200, 160);
  picture_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
  picture_->setProperty("muted", true);
  column->addWidget(picture_, 1);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  add_ = button(tr("Add photograph…"), "works.photo.add", holder);
  save_ = button(tr("Save…"), "works.photo.save", holder);
  row->addWidget(add_, 1);
  row->addWidget(save_);
  column->addLayout(row);
  connect(which_, &QComboBox::currentIndexChanged, this, &HistoryTab::showPhotograph);
  connect(add_, &QPushButton::clicked, this, &HistoryTab::askForPhotograph);
  connect(save_, &QPushButton::clicked, this, &HistoryTab::savePhotograph);
  return holder;
}

QWidget* HistoryTab::makeFoot() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(4);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  spare_ = named(new QComboBox(holder), "works.spare");
  spare_->setMinimumWidth(120);
  give_ = button(tr("Give this spare"), "works.spare.give", holder);
  give_->setToolTip(tr("The prism takes the spare's casting, its number and stage"));
  labels_ = button(tr("Labels…"), "works.labels", holder);
  traveller_ = button(tr("Traveller…"), "works.traveller", holder);
  row->addWidget(spare_);
  row->addWidget(give_);
  row->addStretch(1);
  row->addWidget(labels_);
  row->addWidget(traveller_);
  column->addLayout(row);
  refusal_ = new RefusalLabel("works.history.refusal", holder);
  column->addWidget(refusal_);
  connect(give_, &QPushButton::clicked, this, &HistoryTab::giveSpare);
  connect(labels_, &QPushButton::clicked, this, &HistoryTab::saveLabels);
  connect(traveller_, &QPushButton::clicked, this, &HistoryTab::saveTraveller);
  return holder;
}

void HistoryTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

void HistoryTab::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  showPhotograph();
}

QString HistoryTab::mark() const {
  const QStringList& selected = desk_->bench()->selection();
  if (!selected.isEmpty()) return selected.front();
  const std::vector<LedgerEntry>& ledger = desk_->bench()->book().ledger();
  return ledger.empty() ? QString() : QString::fromStdString(ledger.back().mark);
}

std::vector<std::string> HistoryTab::marks() const {
  std::vector<std::string> marks;
  for (const QString& selected : desk_->bench()->selection()) marks.push_back(selected.toStdString());
  if (marks.empty())
    for (const PlannedPrism& prism : desk_->bench()->plan()->prisms) marks.push_back(prism.mark);
  return marks;
}

void HistoryTab::follow() {
  if (!isVisible()) return;
  const Workbench& bench = *desk_->bench();
  const bool there = bench.hasBook() && bench.plan();
  const bool one = there && !mark().isEmpty();
  const bool writable = one && !bench.book().read_only();
  add_->setEnabled(writable);
  labels_->setEnabled(there);
  traveller_->setEnabled(there);
  const QSignalBlocker quiet(which_);
  which_->clear();
  spare_->clear();
  if (!one) {
    table_->setSheet(history_sheet({}));
    table_->setReason(tr("Select a prism: its whole life stands here."));
    told_->setText(tr("No prism selected."));
  } else {
    const Lensbook& book = bench.book();
    const std::string own = mark().toStdString();
    const auto life = life_of_mark({book.ledger(), book.works_log(), book.readings()}, own);
    table_->setSheet(history_sheet(life));
    if (life.empty()) table_->setReason(tr("Nothing was recorded of %1 yet.").arg(mark()));
    const auto serial = bench.stages().serial.find(own);
    told_->setText(serial == bench.stages().serial.end()
                       ? tr("<b>%1</b>, no casting yet").arg(mark())
                       : tr("<b>%1</b>, casting no. %2").arg(mark()).arg(serial->second));
    for (const Photograph& photograph : book.works_log().photographs)
      if (photograph.mark == own)
        which_->addItem(QString::fromStdString(photograph.name), static_cast<qlonglong>(photograph.number));
    which_->setCurrentIndex(which_->count() - 1);
    for (const std::string& spare : spare_marks(book.ledger())) spare_->addItem(QString::fromStdString(spare));
  }
  spare_->setEnabled(writable && spare_->count() > 0);
  give_->setEnabled(writable && spare_->count() > 0);
  showPhotograph();
}

void HistoryTab::showPhotograph() {
  save_->setEnabled(which_->count() > 0);
  picture_->setPixmap({});
  if (which_->count() == 0) {
    picture_->setText(tr("No photograph"));
    return;
  }
  const auto bytes = desk_->bench()->book().photograph_bytes(which_->currentData().toLongLong());
  QPixmap picture;
  if (bytes) picture.loadFromData(QByteArray::fromStdString(*bytes));
  if (picture.isNull()) {
    picture_->setText(bytes ? tr("The photograph cannot be shown.") : sentence_of(bytes.problem()));
    return;
  }
  picture_->setPixmap(picture.scaled(picture_->size(), Qt::KeepAspectRatio, Qt::SmoothTransformation));
}

void HistoryTab::askForPhotograph() {
  QFileDialog dialog(this, tr("Photograph of %1").arg(mark()));
  dialog.setObjectName(QStringLiteral("works.photo.choose"));
  dialog.setFileMode(QFileDialog::ExistingFile);
  dialog.setNameFilter(tr("Photographs (*.jpg *.jpeg *.png)"));
  if (dialog.exec() == QDialog::Accepted && !dialog.selectedFiles().isEmpty())
    addPhotograph(dialog.selectedFiles().front());
}

void HistoryTab::addPhotograph(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    refusal_->tell(file_problem("photograph", path.toStdString(),
                                tr("%1 cannot be read. Choose another file.").arg(path).toStdString()));
    return;
  }
  Photograph photograph;
  photograph.bytes = file.readAll().toStdString();
  photograph.mark = mark().toStdString();
  photograph.name = QFileInfo(path).fileName().toStdString();
  photograph.media = media_of(photograph.bytes);
  photograph.by = recorded_by();
  const auto& serials = desk_->bench()->stages().serial;
  if (const auto serial = serials.find(photograph.mark); serial != serials.end())
    photograph.serial = serial->second;
  if (const Done fit = check_photograph(photograph); !fit) {
    refusal_->tell(fit);
    return;
  }
  WorksLog more;
  more.photographs = {photograph};
  refusal_->tell(desk_->bench()->addToWorks(more));
}

void HistoryTab::savePhotograph() {
  const auto bytes = desk_->bench()->book().photograph_bytes(which_->currentData().toLongLong());
  if (!bytes) {
    refusal_->tell(bytes.problem());
    return;
  }
  const QString path =
      ask_for_file(this, QStringLiteral("works.photo"), tr("Save photograph"), which_->currentText());
  if (!path.isEmpty()) refusal_->tell(write_whole(path.toStdString(), *bytes));
}

void HistoryTab::giveSpare() {
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr) return;
  refusal_->tell(desk_->bench()->giveSpare(mark(), spare_->currentText(), QString::fromStdString(recorded_by()),
                                           works->masters));
}

void HistoryTab::saveLabels() {
  const Workbench& bench = *desk_->bench();
  const PaperFacts facts{*bench.plan(), bench.book().ledger(), bench.book().works_log(), today()};
  savePaper(QStringLiteral("works.labels"), tr("Save labels"),
            label_sheets(bench.values().brief.title, labels_of(facts, marks()), LabelSheetSettings{}));
}

void HistoryTab::saveTraveller() {
  const Workbench& bench = *desk_->bench();
  const PaperFacts facts{*bench.plan(), bench.book().ledger(), bench.book().works_log(), today()};
  const auto traveller = traveller_of(facts, marks());
  if (!traveller) {
    refusal_->tell(traveller.problem());
    return;
  }
  savePaper(QStringLiteral("works.traveller"), tr("Save traveller"), traveller_sheets(*traveller, Paper::a4));
}

void HistoryTab::savePaper(const QString& name, const QString& title, const Outcome<Drawing>& drawing) {
  if (!drawing) {
    refusal_->tell(drawing.problem());
    return;
  }
  const QFileInfo book(QString::fromStdString(desk_->bench()->book().path()));
  const QString kind = name.section('.', -1);
  const QString path =
      ask_for_file(this, name, title, book.path() + '/' + book.completeBaseName() + '-' + kind + ".pdf");
  if (path.isEmpty()) return;
  const auto bytes = pdf_bytes(*drawing);
  refusal_->tell(bytes ? write_whole(path.toStdString(), *bytes) : Done(bytes.problem()));
}

}  // namespace prismwright
