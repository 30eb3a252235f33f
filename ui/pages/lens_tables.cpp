#include "ui/pages/lens_tables.h"

#include <QHeaderView>
#include <QItemSelectionModel>
#include <QLineEdit>
#include <QScopedValueRollback>
#include <QTableView>
#include <QVBoxLayout>

namespace prismwright {

LensTables::LensTables(Workbench* bench, QWidget* parent) : QTabWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("lens.tables"));
  setDocumentMode(true);
  prisms_ = new PrismTable(this);
  prism_order_ = new WordFilter(this);
  prism_view_ = makeTable(prisms_, prism_order_, "lens.prisms");
  // What the mark says already comes last; what needs an eye on it comes first.
  const PrismTable::Column shown[] = {PrismTable::mark,   PrismTable::tightest, PrismTable::stage,
                                      PrismTable::volume, PrismTable::mass,     PrismTable::length,
                                      PrismTable::kind,   PrismTable::zone,     PrismTable::panel};
  QHeaderView* heads = prism_view_->horizontalHeader();
  for (int place = 0; place < PrismTable::kColumns; ++place)
    heads->moveSection(heads->visualIndex(shown[place]), place);
  clearances_ = new ClearanceTable(this);
  clearance_order_ = new WordFilter(this);
  clearance_view_ = makeTable(clearances_, clearance_order_, "lens.clearances");
  clearance_view_->setSelectionMode(QAbstractItemView::SingleSelection);

  auto* prism_tab = new QWidget(this);
  auto* column = new QVBoxLayout(prism_tab);
  column->setContentsMargins(0, 8, 0, 0);
  column->setSpacing(8);
  auto* filter = new QLineEdit(prism_tab);
  filter->setObjectName(QStringLiteral("lens.filter"));
  filter->setPlaceholderText(tr("Filter: P03, upper, tight, cast"));
  filter->setClearButtonEnabled(true);
  connect(filter, &QLineEdit::textChanged, this, [this](const QString& text) {
    const QScopedValueRollback quiet(following_, true);
    prism_order_->setWords(text);
    followSelection();
  });
  column->addWidget(filter);
  column->addWidget(prism_view_);
  addTab(prism_tab, tr("Prisms"));
  addTab(clearance_view_, tr("Clearances"));

  connect(prism_view_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &LensTables::takePrisms);
  connect(clearance_view_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &LensTables::takeClearance);
  connect(clearance_view_, &QTableView::clicked, this, &LensTables::takeClearance);
  refresh();
}

QTableView* LensTables::makeTable(QAbstractItemModel* model, WordFilter* order, const char* name) {
  order->setSourceModel(model);
  auto* view = new QTableView(this);
  view->setObjectName(QLatin1String(name));
  view->setModel(order);
  view->setSelectionBehavior(QAbstractItemView::SelectRows);
  view->setEditTriggers(QAbstractItemView::NoEditTriggers);
  view->setTabKeyNavigation(false);
  view->setAlternatingRowColors(true);
  view->setShowGrid(false);
  view->setProperty("dense", true);
  view->setWordWrap(false);
  view->verticalHeader()->hide();
  view->verticalHeader()->setDefaultSectionSize(view->fontMetrics().height() + 8);
  view->horizontalHeader()->setHighlightSections(false);
  view->horizontalHeader()->setResizeContentsPrecision(40);  // the first rows speak for the others
  view->horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
  view->setSortingEnabled(true);
  return view;
}

void LensTables::refresh() {
  const QScopedValueRollback quiet(following_, true);
  const bool first = prisms_->rowCount() == 0;
  const bool no_lengths = first || !prisms_->row(0).tightest_mm;
  prisms_->setRows(bench_->hasBook() ? prism_rows(*bench_) : std::vector<PrismRow>{}, bench_->inches());
  if (no_lengths) prism_view_->resizeColumnsToContents();
  const auto made = bench_->hasBook() ? bench_->made() : nullptr;
  const auto wanted = made ? made->clearances : nullptr;
  if (wanted != shown_clearances_ || shown_inches_ != bench_->inches()) {
    shown_clearances_ = wanted;
    shown_inches_ = bench_->inches();
    clearances_->setClearances(wanted, shown_inches_);
    clearance_view_->resizeColumnsToContents();
    emit gapChosen({});
  }
  followSelection();
}

void LensTables::takePrisms() {
  if (following_) return;
  const QScopedValueRollback quiet(following_, true);
  QStringList marks;
  for (const QModelIndex& row : prism_view_->selectionModel()->selectedRows())
    marks << prisms_->row(prism_order_->mapToSource(row).row()).mark;
  // The line that the maker stands on leads.
  const QModelIndex current = prism_order_->mapToSource(prism_view_->currentIndex());
  if (current.isValid()) {
    const QString leading = prisms_->row(current.row()).mark;
    if (marks.removeOne(leading)) marks.prepend(leading);
  }
  bench_->select(marks);
  clearance_view_->selectionModel()->clear();
  emit gapChosen({});
}

void LensTables::takeClearance(const QModelIndex& current) {
  if (following_ || !current.isValid()) return;
  const QScopedValueRollback quiet(following_, true);
  const Clearance& chosen = clearances_->clearance(clearance_order_->mapToSource(current).row());
  QStringList marks;
  for (const std::string& mark : {chosen.first, chosen.second})
    if (prisms_->lineOf(QString::fromStdString(mark)) >= 0) marks << QString::fromStdString(mark);
  bench_->select(marks);
  emit gapChosen(chosen);
}

void LensTables::followSelection() {
  if (!following_) {
    clearance_view_->selectionModel()->clear();
    emit gapChosen({});
  }
  // What was clicked in the prism table itself is left as it is.
  QItemSelection selection;
  QModelIndex leading;
  for (const QString& mark : bench_->selection()) {
    const int line = prisms_->lineOf(mark);
    const QModelIndex index = prism_order_->mapFromSource(prisms_->index(line, 0));
    if (line < 0 || !index.isValid()) continue;
    selection.select(index, index);
    if (!leading.isValid()) leading = index;
  }
  const QScopedValueRollback quiet(following_, true);
  prism_view_->selectionModel()->select(selection,
                                        QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
  if (!leading.isValid()) return;
  if (!prism_view_->hasFocus())
    prism_view_->selectionModel()->setCurrentIndex(leading, QItemSelectionModel::NoUpdate);
  prism_view_->scrollTo(leading);
}

}  // namespace prismwright
