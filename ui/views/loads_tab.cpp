#include "ui/views/loads_tab.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QShowEvent>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/works/works_cautions.h"
#include "ui/models/loads_table.h"
#include "ui/views/filtered_table.h"
#include "ui/views/vessel_picture.h"

namespace prismwright {
namespace {

QString caution_words() {
  QStringList words;
  for (const Caution& caution : casting_cautions())
    words << QStringLiteral("<b>%1.</b> %2")
                 .arg(QString::fromUtf8(caution.head.data(), static_cast<qsizetype>(caution.head.size())),
                      QString::fromUtf8(caution.text.data(), static_cast<qsizetype>(caution.text.size())));
  return words.join(QStringLiteral("<br>"));
}

QLabel* words_label(const char* name, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setObjectName(QLatin1String(name));
  label->setWordWrap(true);
  label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  return label;
}

}  // namespace

LoadsTab::LoadsTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = words_label("works.loads.told", this);
  column->addWidget(told_);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  halves->addWidget(makeTables());
  halves->addWidget(makePicture());
  halves->setStretchFactor(0, 1);
  halves->setStretchFactor(1, 1);
  column->addWidget(halves, 1);
  connect(desk_, &WorksDesk::changed, this, &LoadsTab::follow);
  connect(table_, &FilteredTable::chosen, this, &LoadsTab::showLoad);
  connect(made_, &FilteredTable::chosen, this, [this](int line) {
    desk_->bench()->select(made_->sheet().rows[static_cast<std::size_t>(line)].marks);
  });
  connect(picture_, &VesselPicture::chosen, this, [this](const QString& name) {
    picture_->setChosen(name);
    const WorksReckoning* works = desk_->reckoning();
    const MakeRow* row = works != nullptr ? works->list.find(name.toStdString()) : nullptr;
    if (row == nullptr) return;
    QStringList marks;
    for (const std::string& mark : row->marks) marks << QString::fromStdString(mark);
    desk_->bench()->select(marks);
  });
  connect(card_, &QPushButton::clicked, this,
          [this] { emit cardWanted(static_cast<std::size_t>(table_->line().value_or(0))); });
  connect(cast_, &QPushButton::clicked, this,
          [this] { emit castWanted(static_cast<std::size_t>(table_->line().value_or(0))); });
}

QWidget* LoadsTab::makeTables() {
  auto* tables = new QSplitter(Qt::Vertical, this);
  tables->setChildrenCollapsible(false);
  table_ = new FilteredTable(QStringLiteral("works.loads"), tr("Planned loads"), tables);
  table_->setHint(tr("Filter: U07"));
  made_ = new FilteredTable(QStringLiteral("works.madeLoads"), tr("Loads made"), tables);
  made_->setHint(tr("Filter: lot, P03-U07"));
  tables->addWidget(table_);
  tables->addWidget(made_);
  tables->setStretchFactor(0, 3);
  tables->setStretchFactor(1, 2);
  return tables;
}

QWidget* LoadsTab::makePicture() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(8);
  picture_ = new VesselPicture(holder);
  column->addWidget(picture_, 1);
  auto* words = new QWidget(holder);
  auto* lines = new QVBoxLayout(words);
  lines->setContentsMargins(0, 0, 8, 0);
  cure_ = words_label("works.loads.cure", words);
  lines->addWidget(cure_);
  auto* cautions = words_label("works.loads.cautions", words);
  cautions->setTextFormat(Qt::RichText);
  cautions->setText(caution_words());
  lines->addWidget(cautions);
  lines->addStretch(1);
  auto* scroll = new QScrollArea(holder);
  scroll->setWidget(words);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  column->addWidget(scroll, 1);
  auto* foot = new QHBoxLayout;
  foot->setSpacing(8);
  foot->addStretch(1);
  card_ = new QPushButton(tr("Save card…"), holder);
  card_->setObjectName(QStringLiteral("works.card"));
  card_->setToolTip(tr("The load's masses, places, steps and cautions on a sheet for the casting shop"));
  cast_ = new QPushButton(tr("Record this load…"), holder);
  cast_->setObjectName(QStringLiteral("works.castLoad"));
  cast_->setProperty("brass", true);
  foot->addWidget(card_);
  foot->addWidget(cast_);
  column->addLayout(foot);
  return holder;
}

void LoadsTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

void LoadsTab::follow() {
  if (!isVisible()) return;
  const WorksReckoning* works = desk_->reckoning();
  table_->setSheet(works != nullptr ? loads_sheet(*works, desk_->bench()->inches()) : CellSheet{});
  made_->setSheet(desk_->bench()->hasBook() ? made_loads_sheet(desk_->bench()->book()) : CellSheet{});
  told_->setText(works != nullptr ? loads_words(*works) : QString());
  const bool any = works != nullptr && works->loads && !works->loads->loads.empty();
  const int line =
      any ? std::min(table_->line().value_or(0), static_cast<int>(works->loads->loads.size()) - 1) : -1;
  table_->showLine(line);
  showLoad(line);
}

void LoadsTab::showLoad(int line) {
  const WorksReckoning* works = desk_->reckoning();
  const bool there = works != nullptr && works->loads && line >= 0 &&
                     static_cast<std::size_t>(line) < works->loads->loads.size();
  const bool writable = desk_->bench()->hasBook() && !desk_->bench()->book().read_only();
  card_->setEnabled(there);
  cast_->setEnabled(there && writable);
  if (!there) {
    static const std::vector<LoadPiece> kNone;
    picture_->setLoad(nullptr, kNone, 0, tr("No load is planned."));
    cure_->clear();
    return;
  }
  const auto which = static_cast<std::size_t>(line);
  picture_->setLoad(&works->loads->loads[which], works->pieces,
                    desk_->bench()->values().works.vessel_diameter_mm);
  cure_->setText(cure_words(works->cures[which]).join(QLatin1Char('\n')));
}

}  // namespace prismwright
