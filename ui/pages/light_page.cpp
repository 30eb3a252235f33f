#include "ui/pages/light_page.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/bench_tab.h"
#include "ui/pages/pages.h"
#include "ui/views/beam_plot.h"
#include "ui/views/budget_plot.h"
#include "ui/views/colour_tab.h"
#include "ui/views/errors_tab.h"
#include "ui/views/flash_plot.h"
#include "ui/views/light_figures.h"
#include "ui/views/light_form.h"
#include "ui/views/light_tables.h"
#include "ui/views/named.h"
#include "ui/views/number_field.h"
#include "ui/views/period_row.h"
#include "ui/views/range_plot.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;  // of the bar

Quantity elevation_quantity() {
  Quantity quantity;
  quantity.unit = "deg";
  quantity.min = -60;
  quantity.max = 60;
  quantity.label = LightPage::tr("Seen at elevation").toStdString();
  return quantity;
}

/// The plot takes what room there is; the table under it as much as its rows need.
QSplitter* over_table(QWidget* plot, QWidget* table) {
  auto* splitter = new QSplitter(Qt::Vertical);
  splitter->setChildrenCollapsible(false);
  splitter->addWidget(plot);
  splitter->addWidget(table);
  splitter->setSizes({10000, 1});
  splitter->setStretchFactor(0, 1);
  splitter->setStretchFactor(1, 0);
  return splitter;
}

}  // namespace

QWidget* make_light_page(Workbench* bench, QWidget* parent) { return new LightPage(bench, parent); }

LightPage::LightPage(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), maker_(new LightMaker(bench, this)) {
  setObjectName(QStringLiteral("page.light"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(makeLeft());
  row->addWidget(makeRight(), 1);
  connect(maker_, &LightMaker::changed, this, &LightPage::follow);
  connect(maker_, &LightMaker::progress, this, &LightPage::tellProgress);
  connect(maker_, &LightMaker::sharpened, this, &LightPage::showSharper);
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &LightPage::followPanels);
  // Of the last book not even a map that was still sharpening stays.
  connect(bench_, &Workbench::bookChanged, this, [this] {
    elevation_->setValue(0);
    showReport(nullptr);
  });
  followPanels();
  follow();
}

QWidget* LightPage::makeLeft() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(16, 12, 12, 16);
  column->setSpacing(12);
  figures_ = new LightFigures(holder);
  column->addWidget(figures_);
  column->addWidget(new LightForm(bench_, holder));
  column->addStretch(1);
  auto* scroll = named(new QScrollArea(this), "light.left");
  scroll->setWidget(holder);
  scroll->setWidgetResizable(true);
  // As wide as its fields ask for; the bar stands beside them.
  scroll->setFixedWidth(holder->minimumSizeHint().width() + scroll->verticalScrollBar()->sizeHint().width());
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  return scroll;
}

QWidget* LightPage::makeRight() {
  auto* right = new QWidget(this);
  auto* column = new QVBoxLayout(right);
  column->setContentsMargins(0, 8, 8, 4);
  column->setSpacing(8);
  column->addWidget(makeHead());
  tabs_ = named(new QTabWidget(right), "light.tabs");
  tabs_->setDocumentMode(true);
  beam_ = new BeamPlot(tabs_);
  addTab(beam_, tr("Beam"), [this](const std::shared_ptr<const LightReport>& report) {
    if (report) beam_->setTitle(tr("Beam of panel %1").arg(report->panel));
    beam_->setBeam(report ? std::shared_ptr<const BeamMap>(report, &report->beam) : nullptr);
  });
  addFlashTab();
  addRangeTab();
  addColourTab();
  addBudgetTab();
  addBenchTab();
  addErrorsTab();
  column->addWidget(tabs_, 1);
  return right;
}

QWidget* LightPage::makeHead() {
  auto* head = new QWidget(this);
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(8, 0, 0, 0);
  row->setSpacing(8);
  panel_ = named(new QComboBox(head), "light.panel");
  panel_->setToolTip(tr("The panel whose beam is mapped"));
  connect(panel_, &QComboBox::activated, this, &LightPage::askAnew);
  auto* panel_label = new QLabel(tr("Beam of &panel"), head);
  panel_label->setBuddy(panel_);
  elevation_ = new NumberField(elevation_quantity(), QStringLiteral("light.elevation"), head);
  elevation_->setValue(0);
  elevation_->setToolTip(
      tr("Elevation at which the observer of flashes and ranges stands, seen from the lens"));
  connect(elevation_, &NumberField::entered, this, [this](double deg) {
    LightAsk ask = maker_->ask();
    if (ask.elevation_deg == deg) return;
    ask.elevation_deg = deg;
    maker_->setAsk(ask);
  });
  auto* elevation_label = new QLabel(tr("&seen at elevation"), head);
  elevation_label->setBuddy(elevation_);
  words_ = named(new QLabel(head), "light.words");
  words_->setProperty("muted", true);
  words_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  bar_ = named(new QProgressBar(head), "light.progress");
  bar_->setRange(0, kSteps);
  bar_->setFixedWidth(140);
  bar_->setTextVisible(false);
  stop_ = named(new QPushButton(head), "light.stop");
  connect(stop_, &QPushButton::clicked, this,
          [this] { maker_->isWorking() ? maker_->stop() : maker_->start(); });
  row->addWidget(panel_label);
  row->addWidget(panel_);
  row->addWidget(elevation_label);
  row->addWidget(elevation_);
  row->addWidget(words_, 1);
  row->addWidget(bar_);
  row->addWidget(stop_);
  head->setMinimumHeight(stop_->sizeHint().height());
  return head;
}

void LightPage::addTab(QWidget* tab, const QString& title, Taker taker) {
  auto* stack = new QStackedWidget(tabs_);
  auto* reason = new QLabel(stack);
  reason->setObjectName(stacks_.empty() ? QStringLiteral("light.reason")
                                        : QStringLiteral("light.reason.%1").arg(stacks_.size() + 1));
  reason->setWordWrap(true);
  reason->setAlignment(Qt::AlignCenter);
  reason->setMargin(32);
  stack->addWidget(tab);
  stack->addWidget(reason);
  stacks_.push_back({stack, reason});
  tabs_->addTab(stack, title);
  takers_.push_back(std::move(taker));
}

void LightPage::addFlashTab() {
  auto* tab = new QWidget(tabs_);
  auto* column = new QVBoxLayout(tab);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* period = new PeriodRow(bench_, tab);
  auto* flash = new FlashPlot(tab);
  column->addWidget(period);
  column->addWidget(flash, 1);
  addTab(tab, tr("Flash"), [period, flash](const std::shared_ptr<const LightReport>& report) {
    period->setReport(report);
    flash->setReport(report);
  });
}

void LightPage::addRangeTab() {
  auto* plot = new RangePlot(tabs_);
  auto* table = new FigureTable(
      QStringLiteral("light.ranges"), tr("Range by visibility and colour"),
      {tr("visibility\nnmi"), tr("white\nnmi"), tr("red\nnmi"), tr("green\nnmi"), tr("yellow\nnmi")}, tabs_);
  table->setLeastRows(8);
  addTab(over_table(plot, table), tr("Range"),
         [this, plot, table](const std::shared_ptr<const LightReport>& report) {
           plot->setReport(report, maker_->plan() ? maker_->plan()->values.light : LightSettings{});
           fill_ranges(*table, report.get());
         });
}

void LightPage::addColourTab() {
  auto* colour = new ColourTab(bench_, tabs_);
  addTab(colour, tr("Colour"), [this, colour](const std::shared_ptr<const LightReport>& report) {
    colour->setReport(report, maker_->plan());
  });
}

void LightPage::addBudgetTab() {
  auto* plot = new BudgetPlot(tabs_);
  auto* fates = new FigureTable(QStringLiteral("light.fates"), tr("What becomes of the lamp's light"),
                                {tr("where the light goes"), tr("lm"), tr("%"), tr("error, %")}, tabs_);
  auto* zones = new FigureTable(QStringLiteral("light.zones"), tr("The light of each zone"),
                                {tr("zone"), tr("own ways, lm"), tr("%"), tr("stray, lm")}, tabs_);
  fates->setLeastRows(kLightFates);
  auto* tables = new QSplitter(Qt::Horizontal);
  tables->setChildrenCollapsible(false);
  for (FigureTable* table : {fates, zones}) {
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    tables->addWidget(table);
  }
  tables->setSizes({500, 300});
  addTab(over_table(plot, tables), tr("Where the light goes"),
         [plot, fates, zones](const std::shared_ptr<const LightReport>& report) {
           plot->setReport(report);
           fill_budget(*fates, report.get());
           fill_zones(*zones, report.get());
         });
}

void LightPage::addErrorsTab() {
  auto* errors = new ErrorsTab(bench_, tabs_);
  connect(maker_, &LightMaker::changed, errors, [this, errors] { errors->setPanel(maker_->ask().panel); });
  // It works itself out, and needs no beam.
  tabs_->addTab(errors, tr("Setting errors"));
}

void LightPage::addBenchTab() {
  // The bench works itself out: it asks for no light.
  tabs_->addTab(new BenchTab(bench_, tabs_), tr("Bench"));
}

void LightPage::askAnew() {
  LightAsk ask = maker_->ask();
  const int wanted = panel_->currentData().toInt();
  if (ask.panel == wanted) return;
  ask.panel = wanted;
  maker_->setAsk(ask);
}

/// The panels that hold prisms; a panel that has become blind is asked for no longer.
void LightPage::followPanels() {
  const QSignalBlocker quiet(panel_);
  panel_->clear();
  if (!bench_->hasBook()) return;
  const std::vector<Panel>& panels = bench_->values().panels;
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (!panels[i].blind) panel_->addItem(QString::number(i + 1), static_cast<int>(i + 1));
  const int asked = maker_->ask().panel;
  const int place = panel_->findData(asked);
  if (asked > 0 && place < 0) {
    LightAsk ask = maker_->ask();
    ask.panel = 0;
    maker_->setAsk(ask);
  }
  panel_->setCurrentIndex(std::max(place, 0));
}

void LightPage::showReport(const std::shared_ptr<const LightReport>& report) {
  shown_ = report;
  figures_->setReport(report);
  for (const Taker& take : takers_) take(report);
}

void LightPage::follow() {
  const std::shared_ptr<const LightReport> report = maker_->report();
  if (report != shown_) showReport(report);
  const bool to_see = maker_->reason().isEmpty() && (report || maker_->isWorking());
  for (const auto& [stack, reason] : stacks_) {
    reason->setText(maker_->reason());
    stack->setCurrentIndex(to_see ? 0 : 1);
  }
  followWords();
}

void LightPage::followWords() {
  const bool working = maker_->isWorking();
  const bool behind = maker_->isStale() && !working;
  figures_->setStale(maker_->report() && (maker_->isStale() || !maker_->reason().isEmpty()));
  bar_->setVisible(working);
  stop_->setVisible(working || behind);
  stop_->setText(working ? tr("Stop") : tr("Work out the light"));
  if (!working)
    words_->setText(behind && maker_->report() ? tr("These are the results of earlier values.") : QString());
}

void LightPage::tellProgress(double share, const QString& what) {
  bar_->setValue(static_cast<int>(kSteps * share));
  words_->setText(maker_->report() ? tr("Working out %1 (shown: the last ones)").arg(what)
                                   : tr("Working out %1").arg(what));
}

void LightPage::showSharper(const std::shared_ptr<const BeamMap>& beam) { beam_->setBeam(beam); }

void LightPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  maker_->setWatched(true);
}

void LightPage::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  maker_->setWatched(false);
}

}  // namespace prismwright
