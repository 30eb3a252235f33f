#include "ui/views/moulds_tab.h"

#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QShowEvent>
#include <QSplitter>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"
#include "ui/models/moulds_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/filtered_table.h"
#include "ui/views/named.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;

}  // namespace

MouldsTab::MouldsTab(WorksDesk* desk, QWidget* parent)
    : QWidget(parent), desk_(desk), maker_(desk->mouldsMaker()) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  table_ = new FilteredTable(QStringLiteral("works.moulds"), tr("Moulds"), halves);
  table_->setHint(tr("Filter: U07, steep"));
  halves->addWidget(table_);
  halves->addWidget(makePicture());
  halves->setStretchFactor(0, 5);
  halves->setStretchFactor(1, 5);
  halves->setSizes({600, 600});
  column->addWidget(halves, 1);
  column->addWidget(makeFoot());
  connect(maker_, &MouldsMaker::changed, this, &MouldsTab::follow);
  connect(maker_, &MouldsMaker::progress, this, [this](double share, const QString& what) {
    bar_->setValue(static_cast<int>(kSteps * share));
    told_->setText(what.isEmpty() ? tr("Working out the moulds") : tr("Working out the mould of %1").arg(what));
  });
  connect(desk_, &WorksDesk::changed, this, &MouldsTab::follow);
  connect(desk_->bench(), &Workbench::selectionChanged, this, &MouldsTab::followSelection);
  connect(table_, &FilteredTable::chosen, this, [this](int line) {
    showMould(line);
    desk_->bench()->select(table_->sheet().rows[static_cast<std::size_t>(line)].marks);
  });
}

QWidget* MouldsTab::makePicture() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(4);
  auto* head = new QHBoxLayout;
  mould_told_ = named(new QLabel(holder), "works.mould.told");
  mould_told_->setWordWrap(true);
  save_ = named(new QToolButton(holder), "works.mould.save");
  save_->setText(tr("Save drawing"));
  save_->setIcon(drawn_icon(QStringLiteral("sheet")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  save_->setProperty("tool", true);
  save_->setToolTip(tr("Saves this mould's sheet as PDF"));
  connect(save_, &QToolButton::clicked, this, &MouldsTab::save);
  head->addWidget(mould_told_, 1);
  head->addWidget(save_, 0, Qt::AlignTop);
  column->addLayout(head);
  picture_ = named(new SheetPicture(holder), "works.mould");
  picture_->setMinimumSize(280, 240);
  column->addWidget(picture_, 1);
  return holder;
}

QWidget* MouldsTab::makeFoot() {
  auto* foot = new QWidget(this);
  auto* row = new QHBoxLayout(foot);
  row->setContentsMargins(8, 0, 0, 0);
  row->setSpacing(8);
  told_ = named(new QLabel(foot), "works.moulds.told");
  told_->setWordWrap(true);
  bar_ = named(new QProgressBar(foot), "works.moulds.progress");
  bar_->setRange(0, kSteps);
  bar_->setFixedWidth(140);
  bar_->setTextVisible(false);
  work_ = named(new QPushButton(foot), "works.moulds.work");
  connect(work_, &QPushButton::clicked, this,
          [this] { maker_->isWorking() ? maker_->stop() : maker_->start(); });
  row->addWidget(told_, 1);
  row->addWidget(bar_);
  row->addWidget(work_);
  return foot;
}

void MouldsTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  maker_->setWatched(true);
  follow();
}

void MouldsTab::hideEvent(QHideEvent* event) {
  maker_->setWatched(false);
  QWidget::hideEvent(event);
}

void MouldsTab::follow() {
  if (!isVisible()) return;
  const bool working = maker_->isWorking();
  const bool inches = desk_->bench()->inches();
  bar_->setVisible(working);
  work_->setText(working ? tr("Stop") : tr("Work out"));
  work_->setEnabled(working || maker_->isStale());
  table_->setStale(maker_->isStale());
  if (!maker_->reason().isEmpty())
    told_->setText(maker_->reason());
  else if (!working && maker_->moulds())
    told_->setText(maker_->isStale() ? tr("These are the moulds of earlier values.")
                                     : moulds_words(*maker_->moulds()));
  if (shown_ == maker_->moulds() && inches_ == inches) return;
  if (shown_ != maker_->moulds()) pictures_.clear();
  shown_ = maker_->moulds();
  inches_ = inches;
  table_->setSheet(shown_ ? moulds_sheet(*shown_, inches) : CellSheet{});
  const auto line = table_->line();
  followSelection();
  if (!table_->line() || line == table_->line()) showMould(table_->line().value_or(shown_ ? 0 : -1));
}

void MouldsTab::followSelection() {
  if (!isVisible()) return;
  const QStringList& marks = desk_->bench()->selection();
  const int line = marks.isEmpty() ? -1 : table_->lineOf(marks.front());
  if (line < 0) return;
  table_->showLine(line);
  showMould(line);
}

const Outcome<MouldPicture>& MouldsTab::pictureOf(const WorkedMould& mould) {
  const auto kept = pictures_.find(mould.master);
  if (kept != pictures_.end()) return kept->second;
  setProperty("picturesMade", property("picturesMade").toInt() + 1);
  return pictures_.emplace(mould.master, pictured_mould(mould)).first->second;
}

Outcome<Sheet> MouldsTab::draw(const WorkedMould& mould, bool bare) {
  const Outcome<MouldPicture>& picture = pictureOf(mould);
  if (!picture) return picture.problem();
  MouldSheetWords words;
  words.title = desk_->bench()->values().brief.title;
  words.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  words.inches = inches_;
  words.bare = bare;
  return mould_sheet_of(mould, *picture, std::move(words));
}

const WorkedMould* MouldsTab::shownMould() const {
  if (!shown_) return nullptr;
  const auto found = std::find_if(shown_->begin(), shown_->end(),
                                  [&](const WorkedMould& mould) { return mould.master == master_; });
  return found == shown_->end() ? nullptr : &*found;
}

void MouldsTab::showMould(int line) {
  const bool there = shown_ && line >= 0 && static_cast<std::size_t>(line) < shown_->size();
  save_->setEnabled(false);
  mould_told_->clear();
  if (!there) {
    master_.clear();
    return picture_->setReason(tr("Not worked out yet."));
  }
  const WorkedMould& mould = (*shown_)[static_cast<std::size_t>(line)];
  const auto sheet = draw(mould, true);
  if (!sheet) return picture_->setReason(sentence_of(sheet.problem()));
  picture_->setSheet(*sheet, master_ == mould.master);
  master_ = mould.master;
  save_->setEnabled(true);
  const DrawFacts& draw = mould.answer.draw;
  QStringList told;
  if (mould.answer.problem) told << sentence_of(*mould.answer.problem);
  for (std::size_t i = 0; i < draw.undercuts.size(); ++i)
    told << QString::fromStdString(undercut_label(draw, i, inches_)) +
                tr(" (%1)").arg(QString::fromStdString(draw.undercuts[i].face));
  if (draw.undercuts.empty())
    told << tr("Nothing of %1 is undercut.").arg(QString::fromStdString(mould.master));
  mould_told_->setText(told.join(QStringLiteral(" · ")));
}

void MouldsTab::save() {
  const WorkedMould* mould = shownMould();
  if (mould == nullptr) return;
  const QFileInfo book(QString::fromStdString(desk_->bench()->book().path()));
  QFileDialog dialog(this, tr("Save drawing of the mould"),
                     book.dir().filePath(QString::fromStdString(master_) + QStringLiteral("-mould.pdf")),
                     tr("PDF (*.pdf)"));
  dialog.setObjectName(QStringLiteral("works.mould.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QStringLiteral("pdf"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  Drawing drawing;
  drawing.title = desk_->bench()->values().brief.title;
  drawing.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  auto sheet = draw(*mould, false);
  if (!sheet) return emit desk_->bench()->refused(sentence_of(sheet.problem()));
  drawing.sheets.push_back(std::move(*sheet));
  const auto bytes = pdf_bytes(drawing);
  const Done written =
      bytes ? write_whole(dialog.selectedFiles().front().toStdString(), *bytes) : Done(bytes.problem());
  if (!written) emit desk_->bench()->refused(sentence_of(written.problem()));
}

}  // namespace prismwright
