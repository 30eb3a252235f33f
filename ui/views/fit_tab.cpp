#include "ui/views/fit_tab.h"

#include <QLabel>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/frame/assembly_order.h"
#include "ui/models/fit_table.h"
#include "ui/views/filtered_table.h"

namespace prismwright {
namespace {

constexpr int kPanel = 0;  // columns of the table
constexpr int kWay = 3;
constexpr int kWords = 6;

QString numbered(const std::vector<std::string>& sentences) {
  QString text;
  for (const std::string& sentence : sentences)
    text += QStringLiteral("<li>%1</li>").arg(QString::fromStdString(sentence).toHtmlEscaped());
  return text.isEmpty() ? text : QStringLiteral("<ol style=\"margin-left:-16px\">%1</ol>").arg(text);
}

}  // namespace

FitTab::FitTab(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  auto* left = new QWidget(halves);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  table_ = new FilteredTable(QStringLiteral("frame.fit"), tr("Order of putting together"), left);
  table_->setHint(tr("Filter: P03-U02, sea"));
  table_->addChoice(kPanel, tr("all panels"));
  table_->addChoice(kWay, tr("all ways"));
  told_ = new QLabel(left);
  told_->setObjectName(QStringLiteral("frame.fit.told"));
  told_->setWordWrap(true);
  told_->setContentsMargins(8, 0, 0, 4);
  told_->setMinimumHeight(2 * told_->fontMetrics().height() + 8);
  column->addWidget(table_, 1);
  column->addWidget(told_);
  order_ = new QLabel(halves);
  order_->setObjectName(QStringLiteral("frame.fit.order"));
  order_->setTextFormat(Qt::RichText);
  order_->setWordWrap(true);
  order_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  order_->setContentsMargins(8, 8, 8, 8);
  order_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* scroll = new QScrollArea(halves);
  scroll->setWidget(order_);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setMinimumWidth(200);
  halves->addWidget(left);
  halves->addWidget(scroll);
  halves->setStretchFactor(0, 3);
  halves->setStretchFactor(1, 1);
  halves->setSizes({680, 260});
  auto* row = new QVBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(halves);
  connect(table_, &FilteredTable::chosen, this, &FitTab::choose);
  connect(table_, &FilteredTable::wanted, this,
          [this](int line) { emit wanted(table_->sheet().rows[static_cast<std::size_t>(line)].marks); });
}

void FitTab::setResults(const FrameResults& results) {
  const bool same = results_.made == results.made && results_.fit == results.fit && inches_ == bench_->inches();
  results_ = results;
  inches_ = bench_->inches();
  if (same) return;
  table_->setSheet(results_.fit ? fit_sheet(*results_.fit, inches_) : CellSheet{});
  told_->setText(results_.fit ? QString() : results_.no_fit);
  order_->setText(results_.made
                      ? tr("<b>The whole frame</b>") + numbered(order_of_assembly(*results_.made->frame))
                      : QString());
}

void FitTab::setStale(bool stale) {
  table_->setStale(stale);
  order_->setEnabled(!stale);
}

void FitTab::choose(int line) {
  const CellRow& row = table_->sheet().rows[static_cast<std::size_t>(line)];
  told_->setText(row.cells[kWords].shown);
  emit chosen(row.marks);
}

}  // namespace prismwright
