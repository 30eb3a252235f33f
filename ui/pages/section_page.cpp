#include "ui/pages/section_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QItemSelectionModel>
#include <QLabel>
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
#include "ui/views/strip_table.h"

namespace prismwright {
namespace {

constexpr int kWideEnough = 1600;  // drawing, figures and settings side by side
constexpr int kFiguresWidth = 708;
constexpr int kSettingsWidth = 448;
constexpr int kTextColumn = 54;
constexpr int kRowHeight = 25;

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
  sides_->addWidget(makeSettingsSide());
  sides_->setStretchFactor(1, 0);
  sides_->setStretchFactor(2, 0);
  placeSettings(false);
  setFocusProxy(drawing_);  // arrows turn the laser as soon as the page opens
  connect(laser_, &Laser::moved, this, [this] { zones_->setLaserZone(laser_->zone()); });
  connect(bench_, &Workbench::selectionChanged, this, &SectionPage::selectionToTable);
  connect(zones_, &QAbstractItemModel::rowsInserted, this, &SectionPage::selectionToTable);
  connect(bench_, &Workbench::bookChanged, this, &SectionPage::showNotes);
  connect(bench_, &Workbench::valuesChanged, this, &SectionPage::showNotes);
  zones_->setLaserZone(laser_->zone());
  selectionToTable();
  showNotes();
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
  tabs_ = new QTabWidget(side);
  tabs_->setObjectName(QStringLiteral("section.tabs"));
  tabs_->setDocumentMode(true);
  tabs_->addTab(table_, tr("Zones"));
  column->addWidget(tabs_, 1);
  notes_ = new QLabel(side);
  notes_->setObjectName(QStringLiteral("section.notes"));
  notes_->setWordWrap(true);
  column->addWidget(notes_);
  return side;
}

QWidget* SectionPage::makeSettingsSide() {
  settings_side_ = new QWidget(this);
  settings_side_->setMinimumWidth(kSettingsWidth);
  auto* column = new QVBoxLayout(settings_side_);
  column->setContentsMargins(0, 8, 8, 8);
  column->setSpacing(8);
  form_ = new SectionForm(bench_, this);
  strips_ = new StripTable(bench_, this);
  return settings_side_;
}

void SectionPage::makeTable() {
  table_ = new QTableView(this);
  table_->setObjectName(QStringLiteral("section.table"));
  table_->setAccessibleName(tr("Zones of the section"));
  table_->setProperty("dense", true);
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
  for (const int column : {ZoneTable::mark, ZoneTable::kind}) {
    table_->horizontalHeader()->setSectionResizeMode(column, QHeaderView::Fixed);
    table_->setColumnWidth(column, kTextColumn);
  }
  connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
          &SectionPage::tableToSelection);
}

void SectionPage::placeSettings(bool beside) {
  if (settings_placed_ && beside == settings_side_->isVisibleTo(this)) return;
  settings_placed_ = true;
  settings_side_->setVisible(beside);
  tabs_->tabBar()->setVisible(!beside);
  if (beside) {
    tabs_->setCurrentIndex(0);
    auto* column = static_cast<QVBoxLayout*>(settings_side_->layout());
    column->addWidget(form_, 3);
    column->addWidget(strips_, 2);
    form_->show();
    strips_->show();
  } else {
    tabs_->addTab(form_, tr("Settings"));
    tabs_->addTab(strips_, tr("Dark strips"));
  }
}

void SectionPage::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  placeSettings(width() >= kWideEnough);
}

void SectionPage::showNotes() {
  QStringList notes;
  if (bench_->plan())
    for (const std::string& note : bench_->plan()->section.notes) notes << QString::fromStdString(note);
  notes_->setText(notes.join(QLatin1Char('\n')));
  notes_->setVisible(!notes.isEmpty());
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
  // Rows that come and go with an edit change nothing for whoever holds one prism of a zone.
  if (zones == selected_zones(*bench_)) return;
  select_zones(*bench_, zones, zones_->zoneAt(table_->currentIndex().row()));
}

}  // namespace prismwright
