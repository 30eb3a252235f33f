#include "ui/views/filtered_table.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QScopedValueRollback>
#include <QSignalBlocker>
#include <QStandardPaths>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/plot_files.h"

namespace prismwright {
namespace {

QTableView* plain_view(QAbstractItemModel* model, QWidget* parent) {
  auto* view = new QTableView(parent);
  view->setModel(model);
  view->setSelectionBehavior(QAbstractItemView::SelectRows);
  view->setSelectionMode(QAbstractItemView::SingleSelection);
  view->setEditTriggers(QAbstractItemView::NoEditTriggers);
  view->setTabKeyNavigation(false);
  view->setAlternatingRowColors(true);
  view->setShowGrid(false);
  view->setProperty("dense", true);
  view->setWordWrap(false);
  view->verticalHeader()->hide();
  view->verticalHeader()->setDefaultSectionSize(view->fontMetrics().height() + 8);
  view->horizontalHeader()->setHighlightSections(false);
  view->horizontalHeader()->setStretchLastSection(true);
  view->horizontalHeader()->setResizeContentsPrecision(60);  // the first rows speak for the others
  view->horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
  view->setSortingEnabled(true);
  return view;
}

}  // namespace

FilteredTable::FilteredTable(const QString& name, const QString& title, QWidget* parent)
    : QWidget(parent),
      name_(name),
      title_(title),
      table_(new CellTable(this)),
      order_(new CellFilter(this)),
      head_(new QHBoxLayout) {
  order_->setSourceModel(table_);
  view_ = plain_view(order_, this);
  view_->setObjectName(name);
  view_->setAccessibleName(title);
  view_->installEventFilter(this);
  filter_ = new QLineEdit(this);
  filter_->setObjectName(name + ".filter");
  filter_->setClearButtonEnabled(true);
  filter_->setMinimumWidth(96);
  filter_->setMaximumWidth(320);
  count_ = new QLabel(this);
  count_->setObjectName(name + ".count");
  count_->setProperty("muted", true);
  count_->setMinimumWidth(40);
  save_ = new QToolButton(this);
  save_->setObjectName(name + ".save");
  save_->setText(tr("Save"));
  save_->setIcon(drawn_icon(QStringLiteral("save")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  save_->setProperty("tool", true);
  save_->setFocusPolicy(Qt::TabFocus);
  save_->setToolTip(tr("Saves the rows shown as CSV"));
  head_->setContentsMargins(8, 4, 0, 0);
  head_->setSpacing(8);
  head_->addWidget(filter_, 1);
  head_->addWidget(count_, 1);
  head_->addWidget(save_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addLayout(head_);
  column->addWidget(view_, 1);
  connect(filter_, &QLineEdit::textChanged, this, [this](const QString& text) {
    order_->setWords(text);
    count();
  });
  connect(save_, &QToolButton::clicked, this, &FilteredTable::save);
  connect(view_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &FilteredTable::takeCurrent);
  connect(view_, &QTableView::clicked, this, &FilteredTable::takeCurrent);
  connect(view_, &QTableView::doubleClicked, this,
          [this](const QModelIndex& index) { emit wanted(order_->mapToSource(index).row()); });
  count();
}

void FilteredTable::setHint(const QString& words) { filter_->setPlaceholderText(words); }

void FilteredTable::addChoice(int column, const QString& every) {
  auto* box = new QComboBox(this);
  box->setObjectName(QStringLiteral("%1.choice.%2").arg(name_).arg(column));
  // Long words are read whole in its list.
  box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  box->setMinimumContentsLength(static_cast<int>(every.size()));
  box->addItem(every);
  head_->insertWidget(1 + static_cast<int>(choices_.size()), box);
  choices_.push_back({column, every, box});
  connect(box, &QComboBox::currentIndexChanged, this, [this, column, box](int index) {
    order_->setChoice(column, index > 0 ? box->currentText() : QString());
    count();
  });
}

void FilteredTable::addBeside(QWidget* widget) { head_->insertWidget(head_->count() - 1, widget); }

void FilteredTable::refillChoices() {
  for (const Choice& choice : choices_) {
    QStringList words;
    for (const CellRow& row : table_->sheet().rows) {
      const QString& shown = row.cells[static_cast<std::size_t>(choice.column)].shown;
      if (!words.contains(shown)) words << shown;
    }
    words.sort();
    const QString before = choice.box->currentIndex() > 0 ? choice.box->currentText() : QString();
    const QSignalBlocker quiet(choice.box);
    choice.box->clear();
    choice.box->addItem(choice.every);
    choice.box->addItems(words);
    choice.box->view()->setMinimumWidth(choice.box->view()->sizeHintForColumn(0) + 24);
    choice.box->setCurrentIndex(std::max(0, before.isEmpty() ? 0 : choice.box->findText(before)));
    order_->setChoice(choice.column, choice.box->currentIndex() > 0 ? choice.box->currentText() : QString());
  }
}

void FilteredTable::setSheet(CellSheet sheet) {
  const QScopedValueRollback quiet(following_, true);
  const std::optional<int> before = line();
  const QStringList marks = before ? table_->row(*before).marks : QStringList();
  const bool new_heads = sheet.heads.size() != table_->sheet().heads.size();
  const bool first = table_->rowCount() == 0;
  table_->setSheet(std::move(sheet));
  refillChoices();
  for (int column = 0; column < table_->columnCount(); ++column)
    view_->setColumnHidden(column, table_->sheet().heads[static_cast<std::size_t>(column)].words.isEmpty());
  if (new_heads || first) view_->resizeColumnsToContents();
  int stays = -1;
  for (int i = 0; i < table_->rowCount() && stays < 0; ++i)
    if (!marks.isEmpty() && table_->row(i).marks == marks) stays = i;
  showLine(stays);
  count();
}

void FilteredTable::setReason(const QString& reason) {
  reason_ = reason;
  count();
}

void FilteredTable::setStale(bool stale) { view_->setEnabled(!stale); }

void FilteredTable::count() {
  const int all = table_->rowCount();
  const int shown = order_->rowCount();
  count_->setText(all == shown ? tr("%1 rows").arg(all) : tr("%1 of %2").arg(shown).arg(all));
  if (all == 0 && !reason_.isEmpty()) count_->setText(reason_);
  count_->setMinimumWidth(count_->fontMetrics().horizontalAdvance(count_->text()) + 2);
  save_->setEnabled(shown > 0);
}

bool FilteredTable::isShown(int line) const { return order_->mapFromSource(table_->index(line, 0)).isValid(); }

void FilteredTable::showAllRows() {
  filter_->clear();
  for (const Choice& choice : choices_) choice.box->setCurrentIndex(0);
}

void FilteredTable::setWords(const QString& words) { filter_->setText(words); }

std::optional<int> FilteredTable::line() const {
  const QModelIndex current = order_->mapToSource(view_->currentIndex());
  if (!current.isValid()) return {};
  return current.row();
}

void FilteredTable::showLine(int line) {
  const QScopedValueRollback quiet(following_, true);
  const QModelIndex index = line < 0 ? QModelIndex() : order_->mapFromSource(table_->index(line, 0));
  if (!index.isValid()) {
    view_->selectionModel()->clear();
    return;
  }
  view_->selectionModel()->setCurrentIndex(index,
                                           QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
  view_->scrollTo(index);
}

void FilteredTable::takeCurrent(const QModelIndex& current) {
  if (following_ || !current.isValid()) return;
  emit chosen(order_->mapToSource(current).row());
}

bool FilteredTable::eventFilter(QObject* watched, QEvent* event) {
  if (watched == view_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if ((key == Qt::Key_Return || key == Qt::Key_Enter) && line()) {
      emit wanted(*line());
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void FilteredTable::save() {
  QFileDialog dialog(this, tr("Save the table"));
  dialog.setObjectName(name_ + ".saveTo");
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters({tr("Numbers (*.csv)"), tr("All files (*)")});
  dialog.setDefaultSuffix(QStringLiteral("csv"));
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(title_);
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  PlotNumbers numbers;
  for (const CellHead& head : table_->sheet().heads) numbers.heads << head.key;
  for (int line = 0; line < order_->rowCount(); ++line) {
    const CellRow& row = table_->row(order_->mapToSource(order_->index(line, 0)).row());
    QStringList saved;
    for (const Cell& cell : row.cells) saved << quoted_for_csv(cell.saved);
    numbers.rows.push_back(std::move(saved));
  }
  const Done saved = save_numbers(numbers, path);
  count_->setText(saved ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(saved.problem()));
  count_->setToolTip(count_->text());
}

}  // namespace prismwright
