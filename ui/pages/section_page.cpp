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

#include "ui/models/slow_pace.h"
#include "ui/models/zone_selection.h"
#include "ui/pages/pages.h"
#include "ui/views/compare_panel.h"
#include "ui/views/drawing_dialog.h"
#include "ui/views/fate_totals.h"
#include "ui/views/lamp_strip.h"
#include "ui/views/laser_readout.h"
#include "ui/views/proof_panel.h"
#include "ui/views/section_drawing.h"
#include "ui/views/section_form.h"
#include "ui/views/zone_actions.h"
#include "ui/views/zone_tools.h"

namespace prismwright {
namespace {

constexpr int kWideEnough = 1600;  // drawing, figures and settings side by side
constexpr int kFiguresWidth = 708;
constexpr int kSettingsWidth = 480;
constexpr int kMarkColumn = 44;
constexpr int kKindColumn = 50;
constexpr int kLockColumn = 64;
constexpr int kLengthColumn = 62;  // four decimals of an inch
constexpr int kRowHeight = 25;
constexpr int kFoldsBeside = 3;  // sub-heads open at first where the settings have a column of their own

}  // namespace

QWidget* make_section_page(Workbench* bench, QWidget* parent) { return new SectionPage(bench, parent); }

SectionPage::SectionPage(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      laser_(new Laser(bench, this)),
      zones_(new ZoneTable(bench, this)),
      actions_(new ZoneActions(bench, this)) {
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
  SlowPace::of(bench_)->add(this, [this] { showNotes(); });
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
  connect(drawing_, &SectionDrawing::zoneMenuWanted, actions_, &ZoneActions::popup);
  auto* row = new QHBoxLayout;
  row->setSpacing(0);
  row->addWidget(new LampStripView(bench_, laser_, side));
  row->addWidget(drawing_, 1);
  column->addLayout(row, 1);
  comparer_ = new SectionComparer(bench_, this);
  connect(comparer_, &SectionComparer::changed, this, [this] { drawing_->setOverlays(comparer_->overlays()); });
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
  tabs_->addTab(makeZones(), tr("Zones"));
  tabs_->addTab(new ProofPanel(bench_, tabs_), tr("Proof"));
  tabs_->addTab(new ComparePanel(bench_, comparer_, tabs_), tr("Compare"));
  column->addWidget(tabs_, 1);
  notes_ = new QLabel(side);
  notes_->setObjectName(QStringLiteral("section.notes"));
  notes_->setWordWrap(true);
  column->addWidget(notes_);
  return side;
}

QWidget* SectionPage::makeZones() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(4);
  auto* tools = new ZoneTools(actions_, holder);
  connect(tools, &ZoneTools::drawingWanted, this, [this] { save_section_drawing(bench_, this); });
  const auto allow = [this, tools] { tools->allowDrawing(bench_->plan() && !bench_->sectionProblem()); };
  connect(bench_, &Workbench::bookChanged, tools, allow);
  connect(bench_, &Workbench::valuesChanged, tools, allow);
  allow();
  column->addWidget(tools);
  column->addWidget(table_, 1);
  return holder;
}

QWidget* SectionPage::makeSettingsSide() {
  settings_side_ = new QWidget(this);
  settings_side_->setMinimumWidth(kSettingsWidth);
  auto* column = new QVBoxLayout(settings_side_);
  column->setContentsMargins(0, 8, 8, 8);
  column->setSpacing(8);
  form_ = new SectionForm(bench_, this);
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
  for (const auto& [column, width] :
       {std::pair(ZoneTable::mark, kMarkColumn), std::pair(ZoneTable::kind, kKindColumn),
        std::pair(ZoneTable::lock, kLockColumn), std::pair(ZoneTable::margin, kLengthColumn),
        std::pair(ZoneTable::breadth, kLengthColumn), std::pair(ZoneTable::thickness, kLengthColumn)}) {
    table_->horizontalHeader()->setSectionResizeMode(column, QHeaderView::Fixed);
    table_->setColumnWidth(column, width);
  }
  table_->setIconSize({14, 14});
  table_->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(table_, &QWidget::customContextMenuRequested, this,
          [this](const QPoint& place) { actions_->popup(table_->viewport()->mapToGlobal(place)); });
  connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
          &SectionPage::tableToSelection);
}

void SectionPage::placeSettings(bool beside) {
  if (settings_placed_ && beside == settings_side_->isVisibleTo(this)) return;
  settings_placed_ = true;
  settings_side_->setVisible(beside);
  if (beside) {
    auto* column = static_cast<QVBoxLayout*>(settings_side_->layout());
    column->addWidget(form_);
    form_->openFirst(kFoldsBeside);
    form_->show();
  } else {
    tabs_->insertTab(1, form_, tr("Settings"));
    form_->openFirst(1);
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
