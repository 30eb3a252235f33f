#include "ui/views/compare_panel.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "ui/views/comparison_table.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

constexpr int kListWidth = 216;

}  // namespace

ComparePanel::ComparePanel(Workbench* bench, SectionComparer* comparer, QWidget* parent)
    : QWidget(parent), bench_(bench), comparer_(comparer) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 8, 0, 0);
  row->setSpacing(12);
  row->addWidget(makeVariants());
  row->addWidget(makeComparison(), 1);
  connect(comparer_, &SectionComparer::changed, this, &ComparePanel::followNames);
  connect(bench_, &Workbench::unitsChanged, this, &ComparePanel::followComparison);
  followNames();
}

QWidget* ComparePanel::makeVariants() {
  auto* side = new QWidget(this);
  side->setFixedWidth(kListWidth);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  name_ = named(new QLineEdit(side), "variant.name");
  name_->setPlaceholderText(tr("Name"));
  name_->setAccessibleName(tr("Name to keep the section under"));
  keep_ = named(new QPushButton(tr("Keep"), side), "variant.keep");
  keep_->setToolTip(tr("Keeps the section as it stands under this name"));
  row->addWidget(name_, 1);
  row->addWidget(keep_);
  column->addLayout(row);
  list_ = named(new QListWidget(side), "variants");
  list_->setAccessibleName(tr("Variants of the section"));
  list_->setToolTip(tr("Double-click or F2 to rename"));
  column->addWidget(list_, 1);
  auto* tools = new QHBoxLayout;
  tools->setSpacing(6);
  take_ = named(new QPushButton(tr("Take over"), side), "variant.take");
  take_->setToolTip(tr("Puts the variant in place of the present section; undo brings that back"));
  drop_ = named(new QPushButton(tr("Drop"), side), "variant.drop");
  drop_->setToolTip(tr("Drops the variant; undo brings it back"));
  tools->addWidget(take_);
  tools->addWidget(drop_);
  tools->addStretch(1);
  column->addLayout(tools);
  connect(keep_, &QPushButton::clicked, this, &ComparePanel::keep);
  connect(name_, &QLineEdit::returnPressed, this, &ComparePanel::keep);
  connect(take_, &QPushButton::clicked, this, [this] { (void)bench_->takeVariant(chosen()); });
  connect(drop_, &QPushButton::clicked, this, [this] { (void)bench_->dropVariant(chosen()); });
  connect(list_, &QListWidget::itemChanged, this, &ComparePanel::rename);
  connect(list_, &QListWidget::currentRowChanged, this, [this] {
    followChoice();
    if (!chosen().isEmpty()) comparer_->choose(comparer_->first(), chosen());
  });
  return side;
}

QWidget* ComparePanel::makeComparison() {
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  first_ = named(new QComboBox(side), "compare.first");
  second_ = named(new QComboBox(side), "compare.second");
  first_->setAccessibleName(tr("First section"));
  second_->setAccessibleName(tr("Second section"));
  row->addWidget(first_, 1);
  row->addWidget(new QLabel(tr("beside"), side));
  row->addWidget(second_, 1);
  column->addLayout(row);
  words_ = named(new QLabel(side), "compare.words");
  words_->setWordWrap(true);
  column->addWidget(words_);
  table_ = new ComparisonTable(side);
  column->addWidget(table_, 1);
  const auto choose = [this] { comparer_->choose(first_->currentText(), second_->currentText()); };
  connect(first_, &QComboBox::activated, this, choose);
  connect(second_, &QComboBox::activated, this, choose);
  return side;
}

void ComparePanel::keep() {
  const QString name = name_->text().trimmed();
  if (!bench_->keepVariant(name)) return;
  name_->clear();
  for (int row = 0; row < list_->count(); ++row)
    if (list_->item(row)->text() == name) list_->setCurrentRow(row);
}

void ComparePanel::rename(QListWidgetItem* item) {
  const QString before = item->data(Qt::UserRole).toString();
  if (item->text() == before || bench_->renameVariant(before, item->text())) return;
  const QSignalBlocker quiet(list_);
  item->setText(before);
}

QString ComparePanel::chosen() const {
  return list_->currentItem() ? list_->currentItem()->data(Qt::UserRole).toString() : QString();
}

void ComparePanel::followNames() {
  const QStringList names = comparer_->names();
  QStringList variants = names.mid(1);
  QStringList listed;
  for (int row = 0; row < list_->count(); ++row) listed << list_->item(row)->data(Qt::UserRole).toString();
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  if (listed != variants) {
    const QString before = chosen();
    const QSignalBlocker quiet(list_);
    list_->clear();
    for (const QString& name : variants) {
      auto* item = new QListWidgetItem(name, list_);
      item->setData(Qt::UserRole, name);
      if (may_edit) item->setFlags(item->flags() | Qt::ItemIsEditable);
      if (name == before) list_->setCurrentItem(item);
    }
  }
  for (QComboBox* box : {first_, second_}) {
    box->clear();
    box->addItems(names);
  }
  first_->setCurrentText(comparer_->first());
  second_->setCurrentIndex(comparer_->second().isEmpty() ? -1 : second_->findText(comparer_->second()));
  for (QWidget* each : {static_cast<QWidget*>(name_), static_cast<QWidget*>(keep_)}) each->setEnabled(may_edit);
  followChoice();
  followComparison();
}

void ComparePanel::followChoice() {
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  take_->setEnabled(may_edit && !chosen().isEmpty());
  drop_->setEnabled(may_edit && !chosen().isEmpty());
}

void ComparePanel::followComparison() {
  const auto& comparison = comparer_->comparison();
  QString words = comparer_->problem();
  if (words.isEmpty() && comparer_->names().size() < 2)
    words = tr("Keep the section as it stands under a name; then change it and see here what differs.");
  else if (words.isEmpty() && !comparison)
    words = tr("Choose two different sections.");
  else if (words.isEmpty() && comparison->alike())
    words = tr("The two are alike.");
  else if (words.isEmpty() && comparer_->overlays().size() == 1)
    words = tr("The other section lies over the drawing, dashed.");
  else if (words.isEmpty())
    words = tr("Over the drawing of the present section: %1 dashed, %2 dotted.")
                .arg(comparer_->overlays().front().name, comparer_->overlays().back().name);
  words_->setText(words);
  words_->setProperty("refusal", !comparer_->problem().isEmpty());
  words_->setStyleSheet(words_->styleSheet());
  table_->setComparison(comparison, bench_->inches());
}

void ComparePanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  comparer_->setWatched(true);
}

void ComparePanel::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  comparer_->setWatched(false);
}

}  // namespace prismwright
