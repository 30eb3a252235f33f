#include "ui/pages/section_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QItemSelectionModel>
#include <QSplitter>
#include <QTabWidget>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/zone_selection.h"
#include "ui/pages/pages.h"
#include "ui/views/fate_totals.h"
#include "ui/views/laser_readout.h"
#include "ui/views/section_drawing.h"
#include "ui/views/section_form.h"

namespace prismwright {
namespace {

constexpr int kWideEnough = 1500;  // drawing, figures and settings side by side
constexpr int kFiguresWidth = 648;
constexpr int kFormWidth = 348;
constexpr int kRowHeight = 26;

}  // namespace

QWidget* make_section_page(Workbench* bench, QWidget* parent) { return new SectionPage(bench, parent); }

SectionPage::SectionPage(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), laser_(new Laser(bench, this)), zones_(new ZoneTable(bench, this)) {
  setObjectName(QStringLiteral("page.section"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  sides_ = new QSplitter(Qt::Horizontal, this);
  sides_->setChildrenCollapsible(false);
  sides_->setHandleWidth(8);
  row->addWidget(sides_);
  sides_->addWidget(makeDrawingSide());
  sides_->addWidget(makeFigureSide());
  sides_->setStretchFactor(0, 1);
  sides_->setStretchFactor(1, 0);
  placeForm(false);
  connect(laser_, &Laser::moved, this, [this] { zones_->setLaserZone(laser_->zone()); });
  connect(bench_, &Workbench::selectionChanged, this, &SectionPage::selectionToTable);
  connect(zones_, &QAbstractItemModel::modelReset, this, [this] {
    zones_->setLaserZone(laser_->zone());
    selectionToTable();
  });
  zones_->setLaserZone(laser_->zone());
  selectionToTable();
}

QWidget* SectionPage::makeDrawingSide() {
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(8, 8, 0, 8);
  column->setSpacing(8);
  drawing_ = new SectionDrawing(bench_, laser_, side);
  column->addWidget(drawing_, 1);
  column->addWidget(new FateTotals(bench_, side));
  return side;
}

QWidget* SectionPage::makeFigureSide() {
  auto* side = new QWidget(this);
  side->setMinimumWidth(kFiguresWidth);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(8, 8, 8, 8);
  column->setSpacing(12);
  column->addWidget(new LaserReadout(bench_, laser_, side));
  makeTable();
  form_ = new SectionForm(bench_, side);
  tabs_ = new QTabWidget(side);
  tabs_->setObjectName(QStringLiteral("section.tabs"));
  tabs_->setDocumentMode(true);
  tabs_->addTab(table_, tr("Zones"));
  column->addWidget(tabs_, 1);
  return side;
}

void SectionPage::makeTable() {
  table_ = new QTableView(this);
  table_->setObjectName(QStringLiteral("section.table"));
  table_->setAccessibleName(tr("Zones of the section"));
  table_->setModel(zones_);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                          QAbstractItemView::AnyKeyPressed);
  table_->setShowGrid(false);
  table_->setAlternatingRowColors(true);
  table_->setTabKeyNavigation(false);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  table_->horizontalHeader()->setMinimumSectionSize(40);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->horizontalHeader()->setHighlightSections(false);
  connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
          &SectionPage::tableToSelection);
}

void SectionPage::placeForm(bool beside) {
  const bool is_beside = sides_->indexOf(form_) >= 0;
  const bool is_tab = tabs_->indexOf(form_) >= 0;
  if (beside && !is_beside) {
    if (is_tab) tabs_->removeTab(tabs_->indexOf(form_));
    sides_->addWidget(form_);
    sides_->setStretchFactor(2, 0);
    form_->setMinimumWidth(kFormWidth);
    form_->show();
    tabs_->tabBar()->hide();
  } else if (!beside && !is_tab) {
    form_->setMinimumWidth(0);
    tabs_->addTab(form_, tr("Settings"));
    tabs_->tabBar()->show();
  }
}

void SectionPage::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  placeForm(width() >= kWideEnough);
}

void SectionPage::selectionToTable() {
  const QSet<QString> zones = selected_zones(*bench_);
  QItemSelection rows;
  for (const QString& zone : zones)
    if (const int row = zones_->rowOf(zone); row >= 0)
      rows.select(zones_->index(row, 0), zones_->index(row, ZoneTable::columns - 1));
  following_ = true;
  table_->selectionModel()->select(rows, QItemSelectionModel::ClearAndSelect);
  following_ = false;
}

void SectionPage::tableToSelection() {
  if (following_) return;
  QSet<QString> zones;
  for (const QModelIndex& index : table_->selectionModel()->selectedRows())
    zones.insert(zones_->zoneAt(index.row()));
  select_zones(*bench_, zones, zones_->zoneAt(table_->currentIndex().row()));
}

}  // namespace prismwright
