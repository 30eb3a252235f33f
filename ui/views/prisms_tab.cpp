#include "ui/views/prisms_tab.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/models/counts_model.h"
#include "ui/models/ledger_model.h"
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

PrismsTab::PrismsTab(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      counts_(new CountsModel(bench, this)),
      ledger_(new LedgerModel(bench, this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 8, 0, 0);
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
  connect(bench_, &Workbench::selectionChanged, this, &PrismsTab::followSelection);
  connect(bench_, &Workbench::bookChanged, this, &PrismsTab::followSelection);
  followSelection();
}

QWidget* PrismsTab::makeChart() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  auto* row = new QHBoxLayout;
  row->setSpacing(16);
  selected_ = new QLabel(holder);
  selected_->setObjectName(QStringLiteral("works.selected"));
  selected_->setProperty("muted", true);
  record_ = new QPushButton(drawn_icon(QStringLiteral("record")), tr("Record a step…"), holder);
  record_->setObjectName(QStringLiteral("works.record"));
  record_->setProperty("brass", true);
  record_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_R));
  record_->setToolTip(tr("Ctrl+R: records a stage for the selected prisms"));
  connect(record_, &QPushButton::clicked, this, &PrismsTab::record);
  auto* told = new QLabel(tr("Chart"), holder);
  told->setProperty("muted", true);
  colour_ = new QComboBox(holder);
  colour_->setObjectName(QStringLiteral("works.chart.colour"));
  colour_->addItem(tr("by stage"), static_cast<int>(Colouring::stage));
  colour_->addItem(tr("by master"), static_cast<int>(Colouring::master));
  colour_->setToolTip(
      tr("By master: prisms that show one name are cast from one master, in one kind of mould"));
  told->setBuddy(colour_);
  row->addWidget(selected_, 1);
  row->addWidget(told);
  row->addWidget(colour_);
  row->addWidget(record_);
  column->addLayout(row);
  chart_ = new PanelChart(bench_, holder);
  column->addWidget(chart_, 1);
  legend_ = new LegendStrip(bench_, Colouring::stage, holder);
  column->addWidget(legend_);
  connect(colour_, &QComboBox::currentIndexChanged, this, [this] {
    const auto colouring = static_cast<Colouring>(colour_->currentData().toInt());
    chart_->setColouring(colouring);
    legend_->setColouring(colouring);
  });
  return holder;
}

QWidget* PrismsTab::makeCounts() {
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

QWidget* PrismsTab::makeLedger() {
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
  const std::array<int, 8> widths = {48, 128, 80, 64, 72, 72, 48, 88};
  for (std::size_t i = 0; i < widths.size(); ++i) table->setColumnWidth(static_cast<int>(i), widths.at(i));
  const auto select = [this](const QModelIndex& index) {
    bench_->select({index.siblingAtColumn(LedgerModel::prism).data().toString()});
  };
  connect(table, &QTableView::clicked, this, select);
  connect(table, &QTableView::activated, this, select);
  column->addWidget(table, 1);
  return holder;
}

void PrismsTab::followSelection() {
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

void PrismsTab::record() {
  RecordDialog dialog(bench_, bench_->selection(), this);
  dialog.exec();
}

}  // namespace prismwright
