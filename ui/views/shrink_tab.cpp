#include "ui/views/shrink_tab.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QShowEvent>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <array>

#include "core/works/log_checks.h"
#include "ui/models/shown_numbers.h"
#include "ui/models/shrink_table.h"
#include "ui/models/typed_number.h"
#include "ui/views/filtered_table.h"
#include "ui/views/named.h"
#include "ui/views/refusal_label.h"

namespace prismwright {
namespace {

constexpr std::array<ShrinkDirection, 3> kDirections = {ShrinkDirection::length, ShrinkDirection::depth,
                                                        ShrinkDirection::height};

}  // namespace

ShrinkTab::ShrinkTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = named(new QLabel(this), "works.shrink.told");
  told_->setWordWrap(true);
  column->addWidget(told_);
  table_ = new FilteredTable(QStringLiteral("works.shrink"), tr("Shrinkage as measured"), this);
  table_->setHint(tr("Filter: lot"));
  column->addWidget(table_, 1);
  column->addWidget(makeReading());
  connect(desk_, &WorksDesk::changed, this, &ShrinkTab::follow);
}

QWidget* ShrinkTab::makeReading() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(4);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  master_ = named(new QComboBox(holder), "works.shrink.master");
  direction_ = named(new QComboBox(holder), "works.shrink.direction");
  for (const ShrinkDirection direction : kDirections)
    direction_->addItem(direction_words(direction), static_cast<int>(direction));
  master_mm_ = named(new QLineEdit(holder), "works.shrink.masterLength");
  casting_mm_ = named(new QLineEdit(holder), "works.shrink.castingLength");
  record_ = named(new QPushButton(tr("Record reading"), holder), "works.shrink.record");
  take_ = named(new QPushButton(tr("Use for the next masters"), holder), "works.shrink.take");
  take_->setProperty("brass", true);
  take_->setToolTip(
      tr("Sets the three shrinkages to what was learned of the resin and lot in use; undo takes it back"));
  row->addWidget(new QLabel(tr("Measured on"), holder));
  row->addWidget(master_);
  row->addWidget(direction_);
  row->addWidget(master_mm_, 1);
  row->addWidget(casting_mm_, 1);
  row->addWidget(record_);
  row->addWidget(take_);
  column->addLayout(row);
  refusal_ = new RefusalLabel("works.shrink.refusal", holder);
  column->addWidget(refusal_);
  connect(record_, &QPushButton::clicked, this, &ShrinkTab::record);
  connect(casting_mm_, &QLineEdit::returnPressed, this, &ShrinkTab::record);
  connect(take_, &QPushButton::clicked, this, &ShrinkTab::take);
  return holder;
}

void ShrinkTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

const ShrinkFit* ShrinkTab::inUse() const {
  const std::vector<ShrinkFit>& fits = desk_->shrinkage();
  const WorksSettings& works = desk_->bench()->values().works;
  const bool first =
      !fits.empty() && fits.front().resin == works.resin && fits.front().resin_lot == works.resin_batch;
  return first ? &fits.front() : nullptr;
}

void ShrinkTab::follow() {
  if (!isVisible()) return;
  Workbench* bench = desk_->bench();
  const WorksReckoning* works = desk_->reckoning();
  const QString picked = master_->currentText();
  const QSignalBlocker quiet(master_);
  master_->clear();
  if (works != nullptr)
    for (const Master& master : works->masters) master_->addItem(QString::fromStdString(master.name));
  master_->setCurrentIndex(std::max(0, master_->findText(picked)));
  const QString unit = length_unit(bench->inches());
  master_mm_->setPlaceholderText(tr("master, %1").arg(unit));
  casting_mm_->setPlaceholderText(tr("casting, %1").arg(unit));
  table_->setSheet(shrink_sheet(desk_->shrinkage()));
  const bool writable = bench->hasBook() && !bench->book().read_only();
  record_->setEnabled(writable && master_->count() > 0);
  const ShrinkFit* fit = bench->hasBook() ? inUse() : nullptr;
  take_->setEnabled(writable && fit != nullptr && !shrink_assignments(*fit).empty());
  if (!bench->hasBook()) return;
  const WorksSettings& in_use = bench->values().works;
  const QString resin =
      in_use.resin.empty() ? tr("a resin without a name") : QString::fromStdString(in_use.resin);
  const QString lot =
      in_use.resin_batch.empty() ? tr("no lot") : tr("lot %1").arg(QString::fromStdString(in_use.resin_batch));
  told_->setText(
      tr("Masters are grown for %1 % in length, %2 % in depth, %3 % in height; in use: %4, %5. Measure "
         "the same length on a master and on its casting: three readings of a direction give a factor.")
          .arg(in_use.shrink_length_percent)
          .arg(in_use.shrink_depth_percent)
          .arg(in_use.shrink_height_percent)
          .arg(resin, lot));
}

void ShrinkTab::record() {
  Workbench* bench = desk_->bench();
  const auto length = [&](const QLineEdit* line) { return typed_number(line->text(), "mm", bench->inches()); };
  const auto master = length(master_mm_);
  const auto casting = length(casting_mm_);
  if (!master || !casting) {
    refusal_->tell(tr("\"%1\" is no length. Type what was measured, for instance 182.35.")
                       .arg(master ? casting_mm_->text() : master_mm_->text()));
    return;
  }
  ShrinkReading entry;
  entry.piece = master_->currentText().toStdString();
  entry.direction = static_cast<ShrinkDirection>(direction_->currentData().toInt());
  entry.master_mm = *master;
  entry.casting_mm = *casting;
  entry.resin = bench->values().works.resin;
  entry.resin_lot = bench->values().works.resin_batch;
  entry.by = QSettings().value(QStringLiteral("recordedBy")).toString().toStdString();
  if (const Done fit = check_shrink_reading(entry); !fit) {
    refusal_->tell(fit);
    return;
  }
  WorksLog more;
  more.shrink = {entry};
  const Done done = bench->addToWorks(more);
  refusal_->tell(done);
  if (!done) return;
  master_mm_->clear();
  casting_mm_->clear();
  master_mm_->setFocus();
}

void ShrinkTab::take() {
  const ShrinkFit* fit = inUse();
  if (fit == nullptr) return;
  const Done done = desk_->bench()->assign(shrink_assignments(*fit), tr("shrinkage as measured"));
  refusal_->tell(done);
}

}  // namespace prismwright
