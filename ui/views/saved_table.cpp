#include "ui/views/saved_table.h"

#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QScopedValueRollback>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/plot_files.h"

namespace prismwright {

SavedTable::SavedTable(const QString& name, const QString& title, QWidget* parent)
    : QWidget(parent), name_(name) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  auto* head = new QHBoxLayout;
  head->setContentsMargins(8, 0, 0, 0);
  title_ = new QLabel(title, this);
  title_->setProperty("muted", true);
  title_->setMinimumWidth(40);
  auto* button = new QToolButton(this);
  button->setObjectName(name + ".save");
  button->setText(tr("Save"));
  button->setIcon(drawn_icon(QStringLiteral("save")));
  button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  button->setProperty("tool", true);
  button->setToolTip(tr("Saves the table as CSV"));
  connect(button, &QToolButton::clicked, this, &SavedTable::save);
  save_ = button;
  head->addWidget(title_, 1);
  head->addWidget(save_);
  column->addLayout(head);
  view_ = new FigureTable(name, title, {QString()}, this);
  view_->setSelectionBehavior(QAbstractItemView::SelectRows);
  view_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  view_->setTabKeyNavigation(false);
  connect(view_, &QTableWidget::itemSelectionChanged, this, [this] {
    if (!following_) emit chosen();
  });
  column->addWidget(view_, 1);
  setTable({});
}

void SavedTable::setTitle(const QString& title, const QString& meaning) {
  title_->setText(title);
  title_->setToolTip(meaning);
  view_->setAccessibleName(title);
}

void SavedTable::setTable(const ErrorsTable& table) {
  const QScopedValueRollback quiet(following_, true);
  table_ = table;
  view_->clearRows();
  save_->setEnabled(!table_.rows.empty());
  if (table_.heads.isEmpty()) return;
  view_->setColumnCount(static_cast<int>(table_.heads.size()));
  view_->setHorizontalHeaderLabels(table_.heads);
  for (int column = 0; column < view_->columnCount(); ++column) {
    QTableWidgetItem* head = view_->horizontalHeaderItem(column);
    head->setTextAlignment((column ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    head->setToolTip(table_.tips.value(column));
  }
  for (const ErrorsRow& row : table_.rows) view_->addRow(row.shown);
  // Room for a number of five signs; a narrower table is moved sideways.
  view_->horizontalHeader()->setMinimumSectionSize(56);
  view_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
}

void SavedTable::showMarks(const std::function<bool(const QString& mark)>& chosen) {
  const QScopedValueRollback quiet(following_, true);
  QItemSelection selection;
  int first = -1;
  for (int row = 0; row < view_->rowCount(); ++row) {
    if (!chosen(table_.rows[static_cast<std::size_t>(row)].mark)) continue;
    selection.select(view_->model()->index(row, 0), view_->model()->index(row, 0));
    if (first < 0) first = row;
  }
  view_->selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
  if (first >= 0 && !view_->hasFocus()) view_->scrollTo(view_->model()->index(first, 0));
}

QStringList SavedTable::marks() const {
  QStringList marks;
  for (const QModelIndex& row : view_->selectionModel()->selectedRows()) {
    const QString& mark = table_.rows[static_cast<std::size_t>(row.row())].mark;
    if (row.row() == view_->currentRow())
      marks.prepend(mark);
    else
      marks << mark;
  }
  return marks;
}

void SavedTable::save() {
  QFileDialog dialog(this, tr("Save the table"));
  dialog.setObjectName(name_ + ".saveTo");
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters({tr("Numbers (*.csv)"), tr("All files (*)")});
  dialog.setDefaultSuffix(QStringLiteral("csv"));
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(view_->accessibleName());
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  PlotNumbers numbers{table_.keys, {}};
  for (const ErrorsRow& row : table_.rows) numbers.rows.push_back(row.saved);
  const Done saved = save_numbers(numbers, path);
  title_->setText(saved ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(saved.problem()));
}

}  // namespace prismwright
