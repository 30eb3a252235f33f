#include "ui/pages/bench_tab.h"

#include <QHBoxLayout>
#include <QItemSelectionModel>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScopedValueRollback>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/bench_table.h"
#include "ui/models/bench_words.h"
#include "ui/style/dress.h"
#include "ui/views/bench_file.h"
#include "ui/views/bench_view.h"
#include "ui/views/board_plot.h"
#include "ui/views/named.h"
#include "ui/views/number_field.h"
#include "ui/views/quantity_editor.h"
#include "ui/views/reading_dialog.h"

namespace prismwright {
namespace {

constexpr int kSideBySide_px = 1240;  // from here on the board stands beside the table
const QList<int> kHalvesBelow{290, 240};
const QList<int> kHalvesBeside{900, 550};

Quantity within_quantity() {
  Quantity within;
  within.unit = "deg";
  within.min = 0.001;
  within.max = 5;
  within.label = BenchTab::tr("Leave alone within").toStdString();
  within.meaning = BenchTab::tr("A beam this near its way is left alone").toStdString();
  return within;
}

}  // namespace

BenchTab::BenchTab(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      maker_(new BenchMaker(bench, this)),
      rows_(new BenchTable(this)),
      order_(new MarkFilter(this)) {
  setObjectName(QStringLiteral("bench"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 8, 0, 0);
  column->setSpacing(8);
  auto* caution = named(new QLabel(laser_caution(), this), "bench.caution");
  caution->setWordWrap(true);
  caution->setProperty("head", true);
  column->addWidget(caution);
  column->addWidget(makeHead());
  column->addWidget(makeSayings());
  stack_ = new QStackedWidget(this);
  stack_->addWidget(makeBody());
  reason_ = named(new QLabel(stack_), "bench.reason");
  reason_->setWordWrap(true);
  reason_->setAlignment(Qt::AlignCenter);
  reason_->setMargin(32);
  stack_->addWidget(reason_);
  column->addWidget(stack_, 1);
  connect(maker_, &BenchMaker::changed, this, &BenchTab::follow);
  connect(bench_, &Workbench::unitsChanged, this, &BenchTab::follow);
  connect(bench_, &Workbench::selectionChanged, this, &BenchTab::followSelection);
  follow();
}

QWidget* BenchTab::makeHead() {
  auto* head = new QWidget(this);
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(0, 0, 8, 0);
  row->setSpacing(8);
  auto* board = new QuantityEditor(bench_, "light.board_mm", head);
  within_ = new NumberField(within_quantity(), QStringLiteral("bench.within"), head);
  within_->setValue(maker_->within_deg());
  connect(within_, &NumberField::entered, maker_, &BenchMaker::setWithin);
  auto* within_label = new QLabel(tr("&within"), head);
  within_label->setBuddy(within_);
  record_ =
      named(new QPushButton(drawn_icon(QStringLiteral("record")), tr("Record reading"), head), "bench.record");
  record_->setProperty("brass", true);
  connect(record_, &QPushButton::clicked, this, &BenchTab::recordReading);
  row->addWidget(board->makeLabel(head));
  row->addWidget(board);
  row->addWidget(within_label);
  row->addWidget(within_);
  row->addStretch(1);
  row->addWidget(record_);
  return head;
}

QWidget* BenchTab::makeSayings() {
  auto* sayings = new QWidget(this);
  auto* row = new QHBoxLayout(sayings);
  row->setContentsMargins(0, 0, 8, 0);
  row->setSpacing(8);
  summary_ = named(new QLabel(sayings), "bench.summary");
  summary_->setWordWrap(true);
  words_ = named(new QLabel(sayings), "bench.words");
  words_->setProperty("muted", true);
  words_->setWordWrap(true);
  filter_ = named(new QLineEdit(sayings), "bench.filter");
  filter_->setPlaceholderText(tr("Filter: P03, U"));
  filter_->setClearButtonEnabled(true);
  filter_->setMinimumWidth(104);
  filter_->setMaximumWidth(220);
  connect(filter_, &QLineEdit::textChanged, this, [this](const QString& text) {
    const QScopedValueRollback quiet(following_, true);
    order_->setWords(text);
    followSelection();
  });
  save_ = named(new QToolButton(sayings), "bench.save");
  save_->setText(tr("Save table"));
  save_->setIcon(drawn_icon(QStringLiteral("save")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  save_->setProperty("tool", true);
  save_->setToolTip(tr("Saves the rows that are shown as CSV"));
  connect(save_, &QToolButton::clicked, this, &BenchTab::saveTable);
  row->addWidget(summary_, 3);
  row->addWidget(words_, 1);
  row->addWidget(filter_, 1);
  row->addWidget(save_);
  return sayings;
}

QWidget* BenchTab::makeBody() {
  halves_ = new QSplitter(Qt::Vertical, stack_);
  halves_->setChildrenCollapsible(false);
  order_->setSourceModel(rows_);
  view_ = new BenchView(order_, halves_);
  connect(view_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &BenchTab::takeSelection);
  connect(view_, &BenchView::recordWanted, this, &BenchTab::recordReading);
  board_ = new BoardPlot(halves_);
  connect(board_, &BoardPlot::picked, this, [this](const QString& mark) { bench_->select({mark}); });
  halves_->addWidget(view_);
  halves_->addWidget(board_);
  halves_->setStretchFactor(0, 1);
  halves_->setStretchFactor(1, 1);
  halves_->setSizes(kHalvesBelow);
  return halves_;
}

void BenchTab::follow() {
  {
    const QScopedValueRollback quiet(following_, true);
    rows_->show(*maker_, bench_->inches());
    view_->setColumnHidden(BenchTable::laser_over, !rows_->laserLeavesFocus());
    const int sized_for = bench_->inches() ? -rows_->rowCount() : rows_->rowCount();
    if (sized_for != sized_for_) view_->fitColumns();
    sized_for_ = sized_for;
  }
  followSaying();
  followSelection();
}

void BenchTab::followSaying() {
  const bool has_plan = maker_->plan() != nullptr;
  const QString& reason = maker_->reason();
  reason_->setText(reason.isEmpty() ? tr("Aiming the laser at every prism…") : reason);
  stack_->setCurrentIndex(has_plan && reason.isEmpty() ? 0 : 1);
  summary_->setText(has_plan ? summary_words(maker_->summary(), maker_->within_deg()) : QString());
  words_->setText(has_plan && maker_->isWorking() ? tr("Aiming anew (shown: the last aims)") : QString());
  words_->setVisible(!words_->text().isEmpty());
  save_->setEnabled(has_plan);
}

void BenchTab::takeSelection() {
  if (following_) return;
  const QScopedValueRollback quiet(following_, true);
  QStringList marks;
  for (const QModelIndex& row : view_->selectionModel()->selectedRows())
    marks << rows_->markOf(order_->mapToSource(row).row());
  // The line that the maker stands on leads.
  const QModelIndex current = order_->mapToSource(view_->currentIndex());
  const QString leading = current.isValid() ? rows_->markOf(current.row()) : QString();
  if (marks.removeOne(leading)) marks.prepend(leading);
  bench_->select(marks);
}

void BenchTab::followSelection() {
  const QStringList& marks = bench_->selection();
  QItemSelection selection;
  QModelIndex leading;
  for (const QString& mark : marks) {
    const int line = rows_->lineOf(mark);
    const QModelIndex index = line < 0 ? QModelIndex() : order_->mapFromSource(rows_->index(line, 0));
    if (!index.isValid()) continue;
    selection.select(index, index);
    if (!leading.isValid()) leading = index;
  }
  {
    const QScopedValueRollback quiet(following_, true);
    view_->selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
    if (leading.isValid()) {
      if (!view_->hasFocus()) view_->selectionModel()->setCurrentIndex(leading, QItemSelectionModel::NoUpdate);
      view_->scrollTo(leading);
    }
  }
  board_->show(*maker_, marks.value(0), bench_->inches());
  const bool read_only = bench_->hasBook() && bench_->book().read_only();
  record_->setEnabled(maker_->plan() && !maker_->isStale() && !read_only);
  record_->setToolTip(read_only ? QString::fromStdString(bench_->book().read_only_reason())
                                : tr("Records where the spot of the selected prism fell"));
}

void BenchTab::recordReading() {
  if (!record_->isEnabled()) return;
  ReadingDialog(bench_, maker_, bench_->selection().value(0), this).exec();
}

void BenchTab::saveTable() {
  std::vector<int> shown;
  for (int row = 0; row < order_->rowCount(); ++row)
    shown.push_back(order_->mapToSource(order_->index(row, 0)).row());
  const QString said = save_bench_file(bench_csv(*rows_, shown), this);
  if (said.isEmpty()) return;
  words_->setText(said);
  words_->show();
}

void BenchTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  maker_->setWatched(true);
}

void BenchTab::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  maker_->setWatched(false);
}

void BenchTab::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const Qt::Orientation way = width() >= kSideBySide_px ? Qt::Horizontal : Qt::Vertical;
  if (way == halves_->orientation()) return;
  halves_->setOrientation(way);
  halves_->setSizes(way == Qt::Horizontal ? kHalvesBeside : kHalvesBelow);
}

}  // namespace prismwright
