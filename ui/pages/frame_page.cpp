#include "ui/pages/frame_page.h"

#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include "ui/models/door_words.h"
#include "ui/models/fit_table.h"
#include "ui/models/setting_table.h"
#include "ui/models/sheets_table.h"
#include "ui/pages/frame_scene.h"
#include "ui/pages/pages.h"
#include "ui/views/filtered_table.h"
#include "ui/views/fit_tab.h"
#include "ui/views/frame_export_dialog.h"
#include "ui/views/frame_figures.h"
#include "ui/views/frame_form.h"
#include "ui/views/frame_warnings.h"
#include "ui/views/panel_chart.h"
#include "ui/views/parts_tab.h"
#include "ui/views/sheets_tab.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;  // of the bar
constexpr int kGapKind = 4;   // columns of the tables
constexpr int kGapVerdict = 3;
constexpr int kSettingVerdict = 2;

}  // namespace

QWidget* make_frame_page(Workbench* bench, QWidget* parent) { return new FramePage(bench, parent); }

FramePage::FramePage(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), maker_(new FrameMaker(bench, this)) {
  setObjectName(QStringLiteral("page.frame"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(makeLeft());
  row->addWidget(makeRight(), 1);
  for (const auto signal :
       {&Workbench::bookChanged, &Workbench::valuesChanged, &Workbench::madeChanged, &Workbench::unitsChanged})
    connect(bench_, signal, this, &FramePage::takeMade);
  connect(bench_, &Workbench::makingFinished, this, &FramePage::takeMade);
  connect(maker_, &FrameMaker::changed, this, &FramePage::followMaker);
  for (const auto signal : {&Workbench::valuesChanged, &Workbench::unitsChanged})
    connect(bench_, signal, this, &FramePage::followMaker);
  connect(maker_, &FrameMaker::progress, this, [this](double share, const QString& what) {
    bar_->setValue(static_cast<int>(kSteps * share));
    words_->setText(tr("Working out %1").arg(what));
  });
  takeMade();
  followMaker();
}

QWidget* FramePage::makeLeft() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(16, 12, 12, 16);
  column->setSpacing(12);
  figures_ = new FrameFigures(holder);
  column->addWidget(figures_);
  column->addWidget(new FrameForm(bench_, holder));
  column->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setObjectName(QStringLiteral("frame.left"));
  scroll->setWidget(holder);
  scroll->setWidgetResizable(true);
  // As wide as its fields ask for; the bar stands beside them.
  scroll->setFixedWidth(holder->minimumSizeHint().width() + scroll->verticalScrollBar()->sizeHint().width());
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  return scroll;
}

QWidget* FramePage::makeRight() {
  auto* right = new QWidget(this);
  auto* column = new QVBoxLayout(right);
  column->setContentsMargins(0, 8, 8, 4);
  column->setSpacing(8);
  warnings_ = new FrameWarnings(right);
  connect(warnings_, &FrameWarnings::partWanted, this, [this](const QString& mark) {
    choosePart(mark);
    tabs_->setCurrentWidget(parts_);
  });
  column->addWidget(warnings_);
  tabs_ = new QTabWidget(right);
  tabs_->setObjectName(QStringLiteral("frame.tabs"));
  tabs_->setDocumentMode(true);
  parts_ = new PartsTab(bench_, tabs_);
  connect(parts_, &PartsTab::chosen, this, &FramePage::chooseParts);
  connect(parts_, &PartsTab::wanted, this, [this](const QStringList& marks) {
    chooseParts(marks);
    lookAt(scene_);
  });
  tabs_->addTab(parts_, tr("Parts"));
  scene_ = new FrameScene(bench_, tabs_);
  connect(scene_, &FrameScene::partPicked, this, &FramePage::choosePart);
  tabs_->addTab(scene_, tr("3D"));
  addClearances();
  addSetting();
  fit_ = new FitTab(bench_, tabs_);
  connect(fit_, &FitTab::chosen, this, &FramePage::chooseMarks);
  connect(fit_, &FitTab::wanted, this, [this](const QStringList& marks) {
    chooseMarks(marks);
    lookAt(scene_);
  });
  tabs_->addTab(fit_, tr("Fit-up"));
  sheets_ = new SheetsTab(bench_, tabs_);
  connect(sheets_, &SheetsTab::partChosen, this, &FramePage::choosePart);
  connect(sheets_, &SheetsTab::exportWanted, this, &FramePage::exportFiles);
  tabs_->addTab(sheets_, tr("Sheets"));
  tabs_->setCornerWidget(makeCorner());
  column->addWidget(tabs_, 1);
  return right;
}

QWidget* FramePage::makeCorner() {
  auto* corner = new QWidget(tabs_);
  auto* row = new QHBoxLayout(corner);
  row->setContentsMargins(0, 0, 0, 2);
  row->setSpacing(8);
  words_ = new QLabel(corner);
  words_->setObjectName(QStringLiteral("frame.words"));
  words_->setProperty("muted", true);
  bar_ = new QProgressBar(corner);
  bar_->setObjectName(QStringLiteral("frame.progress"));
  bar_->setRange(0, kSteps);
  bar_->setFixedWidth(100);
  bar_->setTextVisible(false);
  stop_ = new QPushButton(corner);
  stop_->setObjectName(QStringLiteral("frame.stop"));
  connect(stop_, &QPushButton::clicked, this,
          [this] { maker_->isWorking() ? maker_->stop() : maker_->start(); });
  row->addWidget(words_);
  row->addWidget(bar_);
  row->addWidget(stop_);
  return corner;
}

/// The chart of the whole lens, coloured by clearance, keeps what the table speaks of in sight.
QWidget* FramePage::besideChart(QWidget* table) {
  auto* halves = new QSplitter(Qt::Horizontal, tabs_);
  halves->setChildrenCollapsible(false);
  auto* chart = new PanelChart(bench_, halves);
  chart->setObjectName(QStringLiteral("frame.chart"));
  chart->setColouring(Colouring::clearance);
  chart->setMinimumWidth(200);
  halves->addWidget(table);
  halves->addWidget(chart);
  halves->setStretchFactor(0, 1);
  halves->setStretchFactor(1, 1);
  halves->setSizes({620, 300});
  return halves;
}

void FramePage::addClearances() {
  clearances_ = new FilteredTable(QStringLiteral("frame.clearances"), tr("Clearances"), tabs_);
  clearances_->setHint(tr("Filter: P03, rib, lantern"));
  clearances_->addChoice(kGapKind, tr("all kinds"));
  clearances_->addChoice(kGapVerdict, tr("all verdicts"));
  connect(clearances_, &FilteredTable::chosen, this, &FramePage::chooseGap);
  connect(clearances_, &FilteredTable::wanted, this, [this](int line) {
    chooseGap(line);
    lookAt(scene_);
  });
  tabs_->addTab(besideChart(clearances_), tr("Clearances"));
}

void FramePage::addSetting() {
  auto* tab = new QWidget(tabs_);
  auto* column = new QVBoxLayout(tab);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  setting_ = new FilteredTable(QStringLiteral("frame.setting"), tr("Setting of the prisms"), tab);
  setting_->setHint(tr("Filter: P03, left"));
  setting_->addChoice(kSettingVerdict, tr("all verdicts"));
  setting_told_ = new QLabel(tab);
  setting_told_->setObjectName(QStringLiteral("frame.setting.told"));
  setting_told_->setWordWrap(true);
  setting_told_->setContentsMargins(8, 0, 0, 4);
  setting_told_->setMinimumHeight(2 * setting_told_->fontMetrics().height() + 8);
  column->addWidget(setting_, 1);
  column->addWidget(setting_told_);
  connect(setting_, &FilteredTable::chosen, this, &FramePage::chooseSetting);
  connect(setting_, &FilteredTable::wanted, this, [this](int line) {
    chooseSetting(line);
    lookAt(scene_);
  });
  tabs_->addTab(besideChart(tab), tr("Setting"));
}

void FramePage::showSetting() {
  const auto& checks = maker_->results().setting;
  if (checks == shown_setting_ && setting_inches_ == bench_->inches()) return;
  shown_setting_ = checks;
  setting_inches_ = bench_->inches();
  SettingSheet all;
  if (checks) all = setting_sheet(*checks, setting_inches_);
  setting_order_ = std::move(all.order);
  setting_->setSheet(std::move(all.sheet));
  setting_told_->setText(checks ? QString() : maker_->results().no_setting);
}

/// The prism is selected, its rib chosen, and what makes up the needed gaps is told.
void FramePage::chooseSetting(int line) {
  if (!shown_setting_) return;
  const SettingCheck& check = (*shown_setting_)[setting_order_[static_cast<std::size_t>(line)]];
  chooseMarks({QString::fromStdString(check.mark), QString::fromStdString(check.rib)});
  setting_told_->setText(setting_words(check, bench_->inches()));
}

void FramePage::takeMade() {
  const auto made = bench_->hasBook() ? bench_->made() : nullptr;
  const bool stale = made && bench_->madeIsStale();
  if (isVisible() && (made != shown_ || shown_inches_ != bench_->inches())) {
    shown_ = made;
    shown_inches_ = bench_->inches();
    refresh();
  }
  figures_->setStale(stale);
  parts_->setStale(stale);
  clearances_->setStale(stale);
}

void FramePage::refresh() {
  lines_ = shown_ ? parts_of(*shown_) : std::vector<PartsLine>{};
  figures_->setMade(shown_.get(), lines_);
  warnings_->setFrame(shown_ ? shown_->frame.get() : nullptr);
  parts_->setMade(shown_, lines_);
  ClearanceSheet gaps;
  if (shown_) gaps = clearance_sheet(*shown_->clearances, shown_inches_);
  gap_order_ = std::move(gaps.order);
  clearances_->setSheet(std::move(gaps.sheet));
  clearances_->setReason(bench_->isMaking() ? tr("being measured") : tr("not measured"));
  scene_->showGap({});
}

void FramePage::followMaker() {
  const FrameResults& results = maker_->results();
  figures_->setFigure("sheets", results.nest ? sheets_words(*results.nest) : QString());
  figures_->setFigure("fit", results.fit ? fit_words(*results.fit, *results.made->plan) : QString());
  showDoor();
  showSetting();
  fit_->setResults(results);
  sheets_->setResults(results);
  const bool stale = results.made && (results.made != bench_->made() || bench_->madeIsStale());
  sheets_->setStale(stale);
  setting_->setStale(stale);
  fit_->setStale(stale);
  followWork();
}

void FramePage::showDoor() {
  const FrameResults& results = maker_->results();
  const bool hung = results.made && results.made->frame->hinge;
  QString words;
  if (results.door) words = door_free_words(*results.door, results.made->plan->values.frame.door_open_deg);
  if (results.made && !hung) words = tr("no door");
  const QString why = maker_->isWorking() ? tr("its way is being worked out") : results.no_door;
  figures_->setFigure("door", words);
  scene_->setSweep(results.door, hung ? why : QString());
}

/// The corner of the tabs: what is being worked out, or that it was stopped.
void FramePage::followWork() {
  const bool working = maker_->isWorking();
  const bool halted = maker_->isHalted() && !working;
  bar_->setVisible(working);
  stop_->setVisible(working || halted);
  stop_->setText(working ? tr("Stop") : tr("Work out the rest"));
  if (!working) words_->setText(halted ? tr("Stopped.") : QString());
}

void FramePage::choosePart(const QString& mark) {
  parts_->showPart(mark);
  sheets_->showPart(mark);
  for (const PartsLine& line : lines_)
    if (marks_of(line).contains(mark)) return scene_->showParts({mark});
  scene_->showParts({});
  if (bench_->plan() && bench_->plan()->find(mark.toStdString())) bench_->select({mark});
}

void FramePage::chooseMarks(const QStringList& marks) {
  QStringList prisms;
  QStringList parts;
  const auto plan = bench_->plan();
  for (const QString& mark : marks) (plan && plan->find(mark.toStdString()) ? prisms : parts) << mark;
  bench_->select(prisms);
  scene_->showGap({});
  scene_->showParts(parts);
}

void FramePage::chooseParts(const QStringList& marks) {
  scene_->showGap({});
  scene_->showParts(marks);
  sheets_->showParts(marks);
}

/// The prisms of the pair are selected, its brass parts chosen, its nearest points shown.
void FramePage::chooseGap(int line) {
  if (!shown_) return;
  const Clearance& gap = (*shown_->clearances)[gap_order_[static_cast<std::size_t>(line)]];
  chooseMarks({QString::fromStdString(gap.first), QString::fromStdString(gap.second)});
  scene_->showGap(gap);
}

void FramePage::showClearances() {
  tabs_->setCurrentWidget(clearances_->parentWidget());
  clearances_->showAllRows();
  if (!shown_) return;
  const QStringList marks = bench_->selection();
  for (std::size_t line = 0; line < gap_order_.size(); ++line) {
    const Clearance& gap = (*shown_->clearances)[gap_order_[line]];
    if (!marks.contains(QString::fromStdString(gap.first)) &&
        !marks.contains(QString::fromStdString(gap.second)))
      continue;
    clearances_->showLine(static_cast<int>(line));
    return chooseGap(static_cast<int>(line));
  }
}

void FramePage::exportFiles() {
  const FrameResults& results = maker_->results();
  const auto made = results.made ? results.made : bench_->made();
  if (!made) return;
  const QFileInfo book(QString::fromStdString(bench_->book().path()));
  const auto nest = results.made == made ? results.nest : nullptr;
  FrameExportDialog dialog(made, nest, book.dir().filePath(tr("%1 frame").arg(book.completeBaseName())),
                           bench_->inches(), this);
  dialog.exec();
}

void FramePage::lookAt(QWidget* tab) {
  tabs_->setCurrentWidget(tab);
  scene_->look();
}

void FramePage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  takeMade();
  maker_->setWatched(true);
}

void FramePage::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  maker_->setWatched(false);
}

}  // namespace prismwright
