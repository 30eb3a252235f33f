#include "ui/pages/works_page.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/models/counts_model.h"
#include "ui/models/ledger_model.h"
#include "ui/pages/pages.h"
#include "ui/style/dress.h"
#include "ui/views/legend_strip.h"
#include "ui/views/panel_chart.h"
#include "ui/views/record_dialog.h"

namespace prismwright {
namespace {

QTableView* plain_table(QAbstractItemModel* model, const char* name, QWidget* parent) {
  auto* table = new QTableView(parent);
  table->setObjectName(QLatin1String(name));
  table->setModel(model);
  table->verticalHeader()->hide();
  table->verticalHeader()->setDefaultSectionSize(24);
  table->horizontalHeader()->setHighlightSections(false);
  table->setAlternatingRowColors(true);
  table->setShowGrid(false);
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  return table;
}

QLabel* head_label(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setProperty("head", true);
  return label;
}

}  // namespace

QWidget* make_works_page(Workbench* bench, QWidget* parent) { return new WorksPage(bench, parent); }

WorksPage::WorksPage(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      counts_(new CountsModel(bench, this)),
      ledger_(new LedgerModel(bench, this)) {
  setObjectName(QStringLiteral("page.works"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 16, 24, 16);
  auto* halves = new QSplitter(Qt::Vertical, this);
  halves->setChildrenCollapsible(false);
  halves->setHandleWidth(16);
  halves->addWidget(makeChart());
  auto* below = new QSplitter(Qt::Horizontal, halves);
  below->setChildrenCollapsible(false);
  below->setHandleWidth(24);
  below->addWidget(makeCounts());
  below->addWidget(makeLedger());
  below->setStretchFactor(0, 5);
  below->setStretchFactor(1, 6);
  halves->addWidget(below);
  halves->setStretchFactor(0, 3);
  halves->setStretchFactor(1, 2);
  column->addWidget(halves);
  connect(bench_, &Workbench::selectionChanged, this, &WorksPage::followSelection);
  connect(bench_, &Workbench::bookChanged, this, &WorksPage::followSelection);
  followSelection();
}

QWidget* WorksPage::makeChart() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  auto* row = new QHBoxLayout;
  row->setSpacing(16);
  auto* title = new QLabel(tr("Works"), holder);
  title->setProperty("title", true);
  selected_ = new QLabel(holder);
  selected_->setObjectName(QStringLiteral("works.selected"));
  selected_->setProperty("muted", true);
  record_ = new QPushButton(drawn_icon(QStringLiteral("record")), tr("Record a step…"), holder);
  record_->setObjectName(QStringLiteral("works.record"));
  record_->setProperty("brass", true);
  record_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_R));
  record_->setToolTip(tr("Ctrl+R: records a stage for the selected prisms"));
  connect(record_, &QPushButton::clicked, this, &WorksPage::record);
  row->addWidget(title);
  row->addWidget(selected_, 1);
  row->addWidget(record_);
  column->addLayout(row);
  chart_ = new PanelChart(bench_, holder);
  column->addWidget(chart_, 1);
  column->addWidget(new LegendStrip(bench_, Colouring::stage, holder));
  return holder;
}

QWidget* WorksPage::makeCounts() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(head_label(tr("Prisms by zone and stage; a click selects them"), holder));
  auto* table = plain_table(counts_, "counts", holder);
  table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table->horizontalHeader()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
  table->horizontalHeader()->setMinimumSectionSize(28);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  const auto select = [this](const QModelIndex& index) { bench_->select(counts_->marksOf(index)); };
  connect(table, &QTableView::clicked, this, select);
  connect(table, &QTableView::activated, this, select);
  column->addWidget(table, 1);
  return holder;
}

QWidget* WorksPage::makeLedger() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 0, 0, 0);
  auto* row = new QHBoxLayout;
  row->addWidget(head_label(tr("Ledger, newest first"), holder), 1);
  auto* only = new QCheckBox(tr("Only the selected prisms"), holder);
  only->setObjectName(QStringLiteral("ledger.onlySelection"));
  connect(only, &QCheckBox::toggled, ledger_, &LedgerModel::setOnlySelection);
  row->addWidget(only);
  column->addLayout(row);
  auto* table = plain_table(ledger_, "ledger", holder);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->horizontalHeader()->setStretchLastSection(true);
  const std::array<int, 6> widths = {48, 128, 88, 80, 80, 96};
  for (std::size_t i = 0; i < widths.size(); ++i) table->setColumnWidth(static_cast<int>(i), widths.at(i));
  const auto select = [this](const QModelIndex& index) {
    bench_->select({index.siblingAtColumn(LedgerModel::prism).data().toString()});
  };
  connect(table, &QTableView::clicked, this, select);
  connect(table, &QTableView::activated, this, select);
  column->addWidget(table, 1);
  return holder;
}

void WorksPage::followSelection() {
  const QStringList& marks = bench_->selection();
  const bool may_record = bench_->hasBook() && !bench_->book().read_only();
  if (marks.isEmpty())
    selected_->setText(tr("Nothing selected: click a prism, or draw a box round a tray."));
  else if (marks.size() == 1)
    selected_->setText(tr("%1 selected").arg(marks.first()));
  else
    selected_->setText(tr("%1 prisms selected, %2 leading").arg(marks.size()).arg(marks.first()));
  record_->setEnabled(may_record && !marks.isEmpty());
}

void WorksPage::record() {
  RecordDialog dialog(bench_, bench_->selection(), this);
  dialog.exec();
}

}  // namespace prismwright
