#include "ui/views/parts_tab.h"

#include <QLabel>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/views/filtered_table.h"
#include "ui/views/part_drawing.h"

namespace prismwright {

PartsTab::PartsTab(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  table_ = new FilteredTable(QStringLiteral("frame.parts"), tr("Parts of the frame"), halves);
  table_->setHint(tr("Filter: P03, rail, machined"));
  total_ = new QLabel(this);
  total_->setObjectName(QStringLiteral("frame.parts.total"));
  table_->addBeside(total_);
  drawing_ = new PartDrawing(bench_, halves);
  halves->addWidget(table_);
  halves->addWidget(drawing_);
  halves->setSizes({600, 440});
  halves->setStretchFactor(0, 1);
  halves->setStretchFactor(1, 2);
  column->addWidget(halves, 1);
  connect(table_, &FilteredTable::chosen, this, [this](int line) {
    showLine(line);
    emit chosen(marks_of(lines_[static_cast<std::size_t>(line)]));
  });
  connect(table_, &FilteredTable::wanted, this,
          [this](int line) { emit wanted(marks_of(lines_[static_cast<std::size_t>(line)])); });
}

void PartsTab::setMade(const std::shared_ptr<const MadeLens>& made, const std::vector<PartsLine>& lines) {
  made_ = made;
  lines_ = lines;
  table_->setSheet(made ? parts_sheet(lines, bench_->inches()) : CellSheet{});
  total_->setText(made ? total_words(lines) : QString());
  // The page opens on something to see.
  if (!table_->line() && !lines_.empty()) table_->showLine(0);
  showLine(table_->line().value_or(-1));
}

void PartsTab::setStale(bool stale) { table_->setStale(stale); }

void PartsTab::showLine(int line) {
  drawing_->setPart(made_, line < 0 ? PartsLine{} : lines_[static_cast<std::size_t>(line)]);
}

/// The drawing is of the very part that is asked for, not of the first that is like it.
void PartsTab::showPart(const QString& mark) {
  const int line = table_->lineOf(mark);
  if (line >= 0 && !table_->isShown(line)) table_->showAllRows();
  table_->showLine(line);
  if (line < 0) return;
  PartsLine alike = lines_[static_cast<std::size_t>(line)];
  std::erase(alike.marks, mark.toStdString());
  alike.marks.insert(alike.marks.begin(), mark.toStdString());
  drawing_->setPart(made_, alike);
}

}  // namespace prismwright
