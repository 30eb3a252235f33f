#include "ui/views/sheets_tab.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/models/sheets_table.h"
#include "ui/style/dress.h"
#include "ui/views/filtered_table.h"
#include "ui/views/nest_picture.h"

namespace prismwright {

SheetsTab::SheetsTab(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  table_ = new FilteredTable(QStringLiteral("frame.sheets"), tr("Sheets"), halves);
  table_->setHint(tr("Filter: P03-rib"));
  picture_ = new NestPicture(halves);
  halves->addWidget(table_);
  halves->addWidget(picture_);
  halves->setStretchFactor(0, 0);
  halves->setStretchFactor(1, 1);
  halves->setSizes({420, 620});
  column->addWidget(halves, 1);
  auto* foot = new QHBoxLayout;
  foot->setContentsMargins(8, 0, 0, 0);
  told_ = new QLabel(this);
  told_->setObjectName(QStringLiteral("frame.sheets.told"));
  told_->setWordWrap(true);
  export_ = new QPushButton(tr("Export files…"), this);
  export_->setObjectName(QStringLiteral("frame.export"));
  export_->setProperty("brass", true);
  export_->setToolTip(tr(
      "DXF of every flat part and of the sheets, STEP of machined parts and of the frame, and the parts list"));
  foot->addWidget(told_, 1);
  foot->addWidget(export_);
  column->addLayout(foot);
  connect(table_, &FilteredTable::chosen, this, &SheetsTab::showSheet);
  connect(picture_, &NestPicture::chosen, this, [this](const QString& mark) {
    picture_->setChosen({mark});
    emit partChosen(mark);
  });
  connect(export_, &QPushButton::clicked, this, &SheetsTab::exportWanted);
}

void SheetsTab::setResults(const FrameResults& results) {
  const bool same = results_.nest == results.nest && inches_ == bench_->inches();
  results_ = results;
  inches_ = bench_->inches();
  export_->setEnabled(results_.made != nullptr);
  if (same && results_.nest) return;
  table_->setSheet(results_.nest ? sheets_sheet(*results_.nest, inches_) : CellSheet{});
  QStringList told;
  if (results_.nest)
    for (const std::string& sentence : results_.nest->too_large) told << QString::fromStdString(sentence);
  told_->setText(told.join(' '));
  const int line = table_->line().value_or(0);
  table_->showLine(results_.nest && !results_.nest->sheets.empty() ? line : -1);
  showSheet(line);
}

void SheetsTab::setStale(bool stale) {
  table_->setStale(stale);
  picture_->setEnabled(!stale);
}

void SheetsTab::showSheet(int line) {
  const bool there =
      results_.nest && line >= 0 && static_cast<std::size_t>(line) < results_.nest->sheets.size();
  const QString reason = !results_.no_nest.isEmpty() ? results_.no_nest
                         : results_.nest             ? tr("No part of this frame is cut flat.")
                                                     : tr("Not laid out yet.");
  static const std::vector<FlatPart> kNone;
  picture_->setSheet(there ? &results_.nest->sheets[static_cast<std::size_t>(line)] : nullptr,
                     there ? results_.made->frame->flats : kNone, reason);
}

void SheetsTab::showPart(const QString& mark) {
  const int line = table_->lineOf(mark);
  if (line < 0) return;
  if (table_->line() != line) {
    table_->showLine(line);
    showSheet(line);
  }
  picture_->setChosen({mark});
}

void SheetsTab::showParts(const QStringList& marks) {
  if (!marks.isEmpty()) showPart(marks.front());
  picture_->setChosen(marks);
}

}  // namespace prismwright
