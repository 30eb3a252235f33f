#include "ui/pages/despatch_page.h"

#include <QDesktopServices>
#include <QDir>
#include <QFileInfo>
#include <QSplitter>
#include <QTabWidget>
#include <QTextBrowser>
#include <QTextDocument>
#include <QVBoxLayout>

#include "ui/models/despatch_report.h"
#include "ui/models/despatch_table.h"
#include "ui/pages/pages.h"
#include "ui/views/despatch_foot.h"
#include "ui/views/despatch_form.h"
#include "ui/views/despatch_list.h"
#include "ui/views/despatch_preview.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

constexpr int kListWidth = 448;
constexpr double kReportMargin = 12;

/// The drawings to open on, the first that there is.
constexpr const char* kFirstLook[] = {"general-arrangement", "panel-chart", "section"};

}  // namespace

QWidget* make_despatch_page(Workbench* bench, QWidget* parent) { return new DespatchPage(bench, parent); }

DespatchPage::DespatchPage(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      maker_(new DespatchMaker(bench, this)),
      opener_([](const QUrl& url) { QDesktopServices::openUrl(url); }) {
  setObjectName(QStringLiteral("page.despatch"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 8, 16, 8);
  column->setSpacing(8);
  form_ = new DespatchForm(this);
  column->addWidget(form_);
  column->addWidget(makeMiddle(), 1);
  foot_ = new DespatchFoot(this);
  column->addWidget(foot_);
  connect(form_, &DespatchForm::wishChanged, maker_, &DespatchMaker::setWish);
  connect(foot_, &DespatchFoot::writeWanted, this, [this] { maker_->pack(list_->ticked()); });
  connect(foot_, &DespatchFoot::stopWanted, maker_, &DespatchMaker::stop);
  connect(foot_, &DespatchFoot::againWanted, maker_, &DespatchMaker::listAgain);
  connect(foot_, &DespatchFoot::folderWanted, this, [this] { openPack(""); });
  connect(foot_, &DespatchFoot::startPageWanted, this, [this] { openPack("index.html"); });
  connectMaker();
  followBook();
}

QWidget* DespatchPage::makeMiddle() {
  auto* halves = named(new QSplitter(Qt::Horizontal, this), "despatch.halves");
  halves->setChildrenCollapsible(false);
  list_ = new DespatchList(halves);
  list_->setMinimumWidth(kListWidth);
  tabs_ = named(new QTabWidget(halves), "despatch.tabs");
  tabs_->setDocumentMode(true);
  preview_ = new DespatchPreview(tabs_);
  report_ = named(new QTextBrowser(tabs_), "despatch.report");
  report_->document()->setDocumentMargin(kReportMargin);
  report_->setAccessibleName(tr("Last pack"));
  tabs_->addTab(preview_, tr("Preview"));
  tabs_->addTab(report_, tr("Last pack"));
  halves->addWidget(list_);
  halves->addWidget(tabs_);
  halves->setStretchFactor(0, 2);
  halves->setStretchFactor(1, 5);
  halves->setSizes({kListWidth, 700});
  connect(list_, &DespatchList::chosen, this, &DespatchPage::lookAt);
  connect(list_, &DespatchList::tickedChanged, this, &DespatchPage::followWork);
  connect(list_, &DespatchList::clearancesWanted, this, &DespatchPage::showClearances);
  connect(preview_, &DespatchPreview::told, this, [this](const QString& sentence) { foot_->tell(sentence); });
  connect(preview_, &DespatchPreview::refused, this,
          [this](const QString& sentence) { foot_->tell(sentence, true); });
  return halves;
}

void DespatchPage::connectMaker() {
  connect(bench_, &Workbench::bookChanged, this, &DespatchPage::followBook);
  connect(maker_, &DespatchMaker::changed, this, &DespatchPage::follow);
  connect(maker_, &DespatchMaker::sighted, this, &DespatchPage::followSight);
  connect(maker_, &DespatchMaker::packed, this, &DespatchPage::followPacked);
  connect(maker_, &DespatchMaker::progress, this, [this](double share, const QString& what) {
    foot_->setProgress(share);
    if (maker_->task() == DespatchMaker::Task::packing) foot_->tell(tr("Writing %1").arg(what));
  });
}

void DespatchPage::followBook() {
  if (!bench_->hasBook()) return;
  const QFileInfo book(QString::fromStdString(bench_->book().path()));
  form_->setWish(maker_->wish(), offered_packs_folder(book.filePath()));
  preview_->setSaveBeside(book.absolutePath(), book.completeBaseName());
  foot_->tell({});
  follow();
}

void DespatchPage::follow() {
  const auto listing = maker_->listing();
  const bool first = listing && !shown_;
  const bool another = listing != shown_;
  shown_ = listing;
  list_->setListing(listing);
  list_->setReason(maker_->reason());
  list_->setStale(maker_->isStale());
  if (another) {
    form_->setOfferedRevision(listing ? QString::fromStdString(listing->revision) : QString());
    report_->setHtml(last_pack_text(listing.get(), maker_->packEnd()));
  }
  foot_->setHasPack(listing && listing->last);
  followWork();
  if (first) lookAtFirst();
  if (listing && listing->pieces.empty()) followSight();
}

void DespatchPage::followWork() {
  using Task = DespatchMaker::Task;
  const Task task = maker_->task();
  const bool working = task != Task::none;
  foot_->setWork(working && maker_->isStopping() ? DespatchFoot::Work::stopping
                 : working                       ? DespatchFoot::Work::running
                 : maker_->isHalted()            ? DespatchFoot::Work::halted
                                                 : DespatchFoot::Work::none,
                 task == Task::packing);
  const bool none_ticked = list_->ticked().empty();
  const bool may = task != Task::packing && !maker_->isStale() && !none_ticked;
  foot_->setMayWrite(may, maker_->isStale() ? maker_->reason()
                          : none_ticked     ? tr("Tick at least one group.")
                                            : tr("Writes the ticked groups into a folder of the day"));
}

void DespatchPage::lookAt(std::size_t piece) {
  tabs_->setCurrentWidget(preview_);
  if (!shown_) return;
  preview_->await(shown_->pieces[piece]);
  maker_->look(shown_->pieces[piece]);
}

void DespatchPage::lookAtFirst() {
  for (const char* name : kFirstLook) {
    list_->choose(DespatchGroup::drawings, name);
    if (list_->piece()) return;
  }
  for (const DespatchPiece& piece : shown_->pieces)
    if (piece.is_paper) return list_->choose(piece.group, piece.name);
}

void DespatchPage::followSight() {
  const DespatchSight& sight = maker_->sight();
  QString words = sight.reason;
  if (words.isEmpty() && shown_ && !sight.piece.name.empty()) words = files_words(*shown_, sight.piece);
  preview_->setSight(sight, words);
}

void DespatchPage::followPacked() {
  const PackEnd& end = maker_->packEnd();
  if (!end.report) return foot_->tell(end.refusal, true);
  const QString folder = QDir::toNativeSeparators(QString::fromStdString(end.report->folder));
  foot_->tell(tr("%1 is written: %2").arg(QFileInfo(folder).fileName(), pack_words(*end.report)));
  report_->setHtml(last_pack_text(nullptr, end));
  tabs_->setCurrentWidget(report_);
  DespatchWish wish = maker_->wish();
  wish.choice.revision.clear();  // the next pack has a revision of its own
  maker_->setWish(wish);
  form_->setWish(wish, offered_packs_folder(QString::fromStdString(bench_->book().path())));
}

void DespatchPage::showClearances(std::size_t piece) {
  if (!shown_ || !bench_->plan()) return;
  bench_->select(marks_in(shown_->pieces[piece], *bench_->plan()));
  emit clearancesWanted();
}

void DespatchPage::openPack(const char* file) {
  const PackEnd& end = maker_->packEnd();
  const bool listed = shown_ && shown_->last && !maker_->isStale();
  const std::string pack = listed ? shown_->last->folder : end.report ? end.report->folder : std::string();
  if (pack.empty()) return;
  const QDir folder(QString::fromStdString(pack));
  opener_(QUrl::fromLocalFile(*file == '\0' ? folder.absolutePath()
                                            : folder.absoluteFilePath(QLatin1String(file))));
}

void DespatchPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  maker_->setWatched(true);
}

void DespatchPage::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  maker_->setWatched(false);
}

}  // namespace prismwright
