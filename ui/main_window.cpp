#include "ui/main_window.h"

#include <QButtonGroup>
#include <QCloseEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStackedWidget>
#include <QStandardPaths>
#include <QStatusBar>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/pages/despatch_page.h"
#include "ui/pages/frame_page.h"
#include "ui/pages/pages.h"
#include "ui/pages/start_page.h"
#include "ui/style/dress.h"
#include "ui/views/export_dialog.h"
#include "ui/views/new_book_dialog.h"
#include "ui/views/notice_bar.h"
#include "ui/views/tell_tales.h"

namespace prismwright {
namespace {

constexpr int kRecentBooks = 6;

struct RailEntry {
  const char* name;
  const char* icon;
  QString words;
};

std::array<RailEntry, kPages> rail_entries() {
  return {RailEntry{"rail.brief", "brief", MainWindow::tr("Brief")},
          RailEntry{"rail.section", "section", MainWindow::tr("Section")},
          RailEntry{"rail.lens", "lens", MainWindow::tr("Lens")},
          RailEntry{"rail.light", "light", MainWindow::tr("Light")},
          RailEntry{"rail.frame", "frame", MainWindow::tr("Frame")},
          RailEntry{"rail.works", "works", MainWindow::tr("Works")},
          RailEntry{"rail.despatch", "despatch", MainWindow::tr("Despatch")}};
}

QStringList recent_books() {
  QStringList paths = QSettings().value(QStringLiteral("recent")).toStringList();
  paths.removeIf([](const QString& path) { return !QFileInfo::exists(path); });
  return paths;
}

QString books_folder() {
  const QStringList recent = recent_books();
  return recent.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                          : QFileInfo(recent.first()).path();
}

}  // namespace

MainWindow::MainWindow(QWidget* parent) : QMainWindow(parent), bench_(new Workbench(this)) {
  setObjectName(QStringLiteral("window"));
  setWindowTitle(tr("Prismwright"));
  resize(1280, 800);
  bench_->setInches(QSettings().value(QStringLiteral("inches"), false).toBool());
  auto* centre = new QWidget(this);
  auto* row = new QHBoxLayout(centre);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(makeRail());
  auto* column = new QVBoxLayout;
  column->setSpacing(0);
  row->addLayout(column, 1);
  auto* tales = new TellTales(bench_, this);
  connect(tales, &TellTales::pageWanted, this, &MainWindow::showPage);
  column->addWidget(tales);
  read_only_ = new NoticeBar(NoticeBar::Kind::quiet, QStringLiteral("notice.readOnly"), this);
  about_book_ = new NoticeBar(NoticeBar::Kind::quiet, QStringLiteral("notice.book"), this);
  no_section_ = new NoticeBar(NoticeBar::Kind::amiss, QStringLiteral("notice.section"), this);
  refusals_ = new NoticeBar(NoticeBar::Kind::amiss, QStringLiteral("notice.refusal"), this);
  for (NoticeBar* bar : {read_only_, about_book_, no_section_, refusals_}) column->addWidget(bar);
  stack_ = new QStackedWidget(this);
  start_ = new StartPage(this);
  connect(start_, &StartPage::newWanted, this, &MainWindow::newBook);
  connect(start_, &StartPage::openWanted, this, &MainWindow::chooseBook);
  connect(start_, &StartPage::bookWanted, this, &MainWindow::openBook);
  stack_->addWidget(start_);
  column->addWidget(stack_, 1);
  setCentralWidget(centre);
  makeMenus();
  makeStatusBar();
  connect(bench_, &Workbench::refused, this, &MainWindow::refuse);
  connect(bench_, &Workbench::bookChanged, this, &MainWindow::followBook);
  connect(bench_, &Workbench::valuesChanged, this, &MainWindow::followValues);
  connect(bench_, &Workbench::madeChanged, this, &MainWindow::followMaking);
  connect(bench_, &Workbench::makingFinished, this, &MainWindow::followMaking);
  refillRecent();
  followBook();
}

MainWindow::~MainWindow() {
  // The pages read from the bench until they are gone; its worker thread is waited for last.
  for (QWidget* page : pages_) delete page;
}

QWidget* MainWindow::makeRail() {
  auto* rail = new QWidget(this);
  rail->setObjectName(QStringLiteral("rail"));
  rail->setAttribute(Qt::WA_StyledBackground);
  auto* column = new QVBoxLayout(rail);
  column->setContentsMargins(0, 8, 0, 8);
  column->setSpacing(4);
  rail_ = new QButtonGroup(this);
  rail_->setExclusive(true);
  int id = 0;
  for (const RailEntry& entry : rail_entries()) {
    auto* button = new QToolButton(rail);
    button->setObjectName(QLatin1String(entry.name));
    button->setText(entry.words);
    button->setIcon(drawn_icon(QLatin1String(entry.icon)));
    button->setIconSize({24, 24});
    button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
    button->setCheckable(true);
    button->setFocusPolicy(Qt::TabFocus);
    button->setToolTip(tr("Ctrl+%1").arg(id + 1));
    rail_->addButton(button, id++);
    column->addWidget(button);
  }
  column->addStretch(1);
  connect(rail_, &QButtonGroup::idClicked, this, [this](int page) { showPage(static_cast<Page>(page)); });
  return rail;
}

void MainWindow::makeStatusBar() {
  path_ = new QLabel(this);
  path_->setObjectName(QStringLiteral("status.path"));
  path_->setProperty("muted", true);
  path_->setContentsMargins(8, 0, 0, 0);
  making_words_ = new QLabel(this);
  making_words_->setObjectName(QStringLiteral("status.message"));
  making_bar_ = new QProgressBar(this);
  making_bar_->setObjectName(QStringLiteral("status.progress"));
  making_bar_->setRange(0, 1000);
  making_bar_->setFixedWidth(200);
  making_bar_->setTextVisible(false);
  stop_ = new QPushButton(tr("Stop"), this);
  stop_->setObjectName(QStringLiteral("status.stop"));
  connect(stop_, &QPushButton::clicked, this, [this] {
    if (bench_->isMaking())
      bench_->stopMaking();
    else
      bench_->startMaking();
  });
  statusBar()->addWidget(path_, 1);
  statusBar()->addPermanentWidget(making_words_);
  statusBar()->addPermanentWidget(making_bar_);
  statusBar()->addPermanentWidget(stop_);
  connect(bench_, &Workbench::makingProgress, this, [this](double share, const QString& what) {
    making_bar_->setValue(static_cast<int>(1000 * share));
    making_words_->setText(tr("Making %1").arg(what));
    followMaking();
  });
  connect(bench_, &Workbench::makingFinished, this,
          [this](bool, const QString& message) { making_words_->setText(message); });
}

QWidget* MainWindow::pageWidget(Page page) {
  if (!bench_->hasBook()) return nullptr;
  QWidget*& widget = pages_.at(static_cast<std::size_t>(page));
  if (widget) return widget;
  switch (page) {
    case Page::brief:
      widget = make_brief_page(bench_, stack_);
      break;
    case Page::section:
      widget = make_section_page(bench_, stack_);
      break;
    case Page::lens:
      widget = make_lens_page(bench_, stack_);
      break;
    case Page::light:
      widget = make_light_page(bench_, stack_);
      break;
    case Page::frame:
      widget = make_frame_page(bench_, stack_);
      break;
    case Page::works:
      widget = make_works_page(bench_, stack_);
      break;
    case Page::despatch:
      widget = makeDespatchPage();
      break;
  }
  stack_->addWidget(widget);
  return widget;
}

/// What a clash keeps back leads to that clash.
QWidget* MainWindow::makeDespatchPage() {
  QWidget* widget = make_despatch_page(bench_, stack_);
  connect(static_cast<DespatchPage*>(widget), &DespatchPage::clearancesWanted, this, [this] {
    showPage(Page::frame);
    static_cast<FramePage*>(pageWidget(Page::frame))->showClearances();
  });
  return widget;
}

void MainWindow::showPage(Page page) {
  QWidget* widget = pageWidget(page);
  if (!widget) return;
  page_ = page;
  stack_->setCurrentWidget(widget);
  rail_->button(static_cast<int>(page))->setChecked(true);
}

bool MainWindow::openBook(const QString& path) {
  const QFileInfo file(path);
  if (bench_->hasBook() && QFileInfo(QString::fromStdString(bench_->book().path())) == file) return true;
  Outcome<Lensbook> opened = Lensbook::open(file.absoluteFilePath().toStdString());
  if (!opened) {
    refuse(sentence_of(opened.problem()));
    return false;
  }
  takeBook(std::move(opened).value());
  return true;
}

void MainWindow::takeBook(Lensbook book) {
  bench_->setBook(std::move(book));
  remember(QString::fromStdString(bench_->book().path()));
}

void MainWindow::newBook() {
  NewBookDialog dialog(books_folder(), this);
  if (dialog.exec() != QDialog::Accepted) return;
  if (std::optional<Lensbook> book = dialog.takeBook()) takeBook(std::move(*book));
}

void MainWindow::chooseBook() {
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Open a lensbook"), books_folder(), tr("Lensbooks (*.lensbook)"));
  if (!path.isEmpty()) openBook(path);
}

void MainWindow::exportSolids() {
  const QFileInfo book(QString::fromStdString(bench_->book().path()));
  const QString beside = book.dir().filePath(tr("%1 solids").arg(book.completeBaseName()));
  ExportDialog dialog(bench_, beside, this);
  dialog.exec();
}

void MainWindow::refuse(const QString& sentence) { refusals_->add(sentence); }

void MainWindow::followBook() {
  const bool open = bench_->hasBook();
  for (QAbstractButton* button : rail_->buttons()) button->setEnabled(open);
  for (QAction* action : page_actions_) action->setEnabled(open);
  refusals_->hide();
  read_only_->tell(open ? QString::fromStdString(bench_->book().read_only_reason()) : QString());
  about_book_->tell(open ? QString::fromStdString(bench_->book().migration_note()) : QString());
  if (open) {
    const QFileInfo file(QString::fromStdString(bench_->book().path()));
    setWindowTitle(tr("%1 - Prismwright").arg(file.completeBaseName()));
    path_->setText(file.fileName());
    path_->setToolTip(
        tr("%1\nEvery edit is on disk at once: there is nothing to save.").arg(file.absoluteFilePath()));
    showPage(page_);
  }
  followValues();
}

void MainWindow::followValues() {
  const bool open = bench_->hasBook();
  const auto step = [](QAction* action, const QString& verb, const std::optional<std::string>& what, bool may) {
    action->setText(what ? verb + QLatin1Char(' ') + QString::fromStdString(*what).replace("&", "&&") : verb);
    action->setEnabled(may && what.has_value());
  };
  const bool may_edit = open && !bench_->book().read_only();
  step(undo_, tr("Undo"), open ? bench_->book().undo_text() : std::nullopt, may_edit);
  step(redo_, tr("Redo"), open ? bench_->book().redo_text() : std::nullopt, may_edit);
  no_section_->tell(bench_->sectionProblem() ? sentence_of(*bench_->sectionProblem()) : QString());
  followMaking();
}

/// The bar and its button: Stop while solids are made, Make when what is shown belongs to earlier values.
void MainWindow::followMaking() {
  const bool making = bench_->isMaking();
  const bool behind = bench_->hasBook() && !making && !bench_->sectionProblem() &&
                      (!bench_->made() || bench_->madeIsStale() || !bench_->made()->clearances_known);
  making_bar_->setVisible(making);
  stop_->setVisible(making || behind);
  stop_->setText(making ? tr("Stop") : tr("Make solids"));
  export_->setEnabled(bench_->made() && !bench_->madeIsStale());
  drawing_->setEnabled(bench_->hasBook() && bench_->plan() && !bench_->sectionProblem());
}

void MainWindow::remember(const QString& path) {
  QStringList paths = recent_books();
  paths.removeAll(path);
  paths.prepend(path);
  QSettings().setValue(QStringLiteral("recent"), paths.mid(0, kRecentBooks));
  refillRecent();
}

void MainWindow::closeEvent(QCloseEvent* event) {
  // What is still being typed is sent as if its field had been left.
  if (QWidget* typing = focusWidget()) typing->clearFocus();
  bench_->stopMaking();
  QSettings().setValue(QStringLiteral("inches"), bench_->inches());
  event->accept();
}

}  // namespace prismwright
