#include "ui/pages/brief_page.h"

#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QTableView>
#include <QVBoxLayout>
#include <cmath>

#include "ui/models/main_figures.h"
#include "ui/models/panels_model.h"
#include "ui/pages/pages.h"
#include "ui/views/notes_field.h"
#include "ui/views/panels_plan.h"
#include "ui/views/quantity_editor.h"

namespace prismwright {
namespace {

constexpr int kFigureColumns = 5;
constexpr int kNarrowColumn = 60;  // number and tick

QLabel* title_label(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setProperty("title", true);
  return label;
}

QLabel* head_label(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setProperty("head", true);
  return label;
}

}  // namespace

QWidget* make_brief_page(Workbench* bench, QWidget* parent) { return new BriefPage(bench, parent); }

BriefPage::BriefPage(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), model_(new PanelsModel(bench, this)) {
  setObjectName(QStringLiteral("page.brief"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(24, 16, 24, 16);
  row->setSpacing(32);
  auto* scroll = new QScrollArea(this);
  scroll->setWidget(makeForm());
  scroll->setWidgetResizable(true);
  scroll->setMinimumWidth(420);
  scroll->setMaximumWidth(560);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  row->addWidget(scroll, 4);
  auto* right = new QVBoxLayout;
  right->setSpacing(16);
  right->addWidget(makePanels(), 1);
  right->addWidget(makeFigures());
  row->addLayout(right, 7);
  connect(model_, &PanelsModel::panelsChanged, this, &BriefPage::followPanels);
  for (const auto signal :
       {&Workbench::bookChanged, &Workbench::valuesChanged, &Workbench::madeChanged, &Workbench::unitsChanged})
    connect(bench_, signal, this, &BriefPage::followFigures);
  connect(bench_, &Workbench::makingFinished, this, &BriefPage::followFigures);
  followPanels();
  followFigures();
}

QWidget* BriefPage::makeForm() {
  auto* holder = new QWidget(this);
  auto* form = new QFormLayout(holder);
  form->setContentsMargins(0, 0, 8, 0);
  form->setHorizontalSpacing(16);
  form->setVerticalSpacing(8);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->addRow(title_label(tr("Brief"), holder));
  for (const char* key :
       {"brief.title", "brief.client", "brief.order", "brief.focal_mm", "brief.work", "brief.character",
        "brief.height_m", "material.name", "material.index", "material.density_g_cm3"}) {
    auto* editor = new QuantityEditor(bench_, key, holder);
    form->addRow(editor->makeLabel(holder), editor);
  }
  auto* notes = new NotesField(bench_, "brief.notes", holder);
  auto* notes_label = new QLabel(tr("&Notes"), holder);
  notes_label->setBuddy(notes);
  form->addRow(notes_label, notes);
  // The label stands at the first line of a field of several.
  notes_label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  notes_label->setContentsMargins(0, 4, 0, 0);
  return holder;
}

QWidget* BriefPage::makePanels() {
  auto* holder = new QWidget(this);
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(24);
  auto* column = new QVBoxLayout;
  column->setSpacing(8);
  column->addWidget(head_label(tr("Panels, anticlockwise seen from above"), holder));
  table_ = new QTableView(holder);
  table_->setObjectName(QStringLiteral("panels"));
  table_->setModel(model_);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(26);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  for (const int narrow : {PanelsModel::number, PanelsModel::blind}) {
    table_->horizontalHeader()->setSectionResizeMode(narrow, QHeaderView::Fixed);
    table_->setColumnWidth(narrow, kNarrowColumn);
  }
  table_->horizontalHeader()->setHighlightSections(false);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setAlternatingRowColors(true);
  table_->setShowGrid(false);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                          QAbstractItemView::AnyKeyPressed);
  table_->setMinimumWidth(360);
  column->addWidget(table_, 1);
  sum_ = new QLabel(holder);
  sum_->setObjectName(QStringLiteral("panels.sum"));
  sum_->setWordWrap(true);
  column->addWidget(sum_);
  auto* tools = new QHBoxLayout;
  count_ = new QSpinBox(holder);
  count_->setObjectName(QStringLiteral("panels.count"));
  const Quantity& panels = *find_quantity("brief.panels");
  count_->setRange(static_cast<int>(panels.min), static_cast<int>(panels.max));
  count_->setAccessibleName(tr("Number of equal panels"));
  equal_ = new QPushButton(tr("Make equal panels"), holder);
  equal_->setObjectName(QStringLiteral("panels.equal"));
  put_back_ = new QPushButton(tr("Put back"), holder);
  put_back_->setObjectName(QStringLiteral("panels.putBack"));
  tools->addWidget(count_);
  tools->addWidget(equal_);
  tools->addWidget(put_back_);
  tools->addStretch(1);
  column->addLayout(tools);
  row->addLayout(column, 5);
  plan_ = new PanelsPlan(bench_, model_, holder);
  row->addWidget(plan_, 6);

  connect(equal_, &QPushButton::clicked, this, [this] { model_->makeEqual(count_->value()); });
  connect(put_back_, &QPushButton::clicked, model_, &PanelsModel::putBack);
  connect(plan_, &PanelsPlan::panelClicked, this, [this](int panel) { table_->selectRow(panel - 1); });
  connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& row_now) { plan_->setMarked(row_now.isValid() ? row_now.row() + 1 : 0); });
  connect(model_, &PanelsModel::modelReset, this, [this] { plan_->setMarked(0); });
  return holder;
}

QWidget* BriefPage::makeFigures() {
  auto* card = new QFrame(this);
  card->setProperty("card", true);
  auto* grid = new QGridLayout(card);
  grid->setContentsMargins(16, 12, 16, 12);
  grid->setHorizontalSpacing(24);
  grid->setVerticalSpacing(2);
  int place = 0;
  for (const MainFigure& figure : main_figures_of(*bench_)) {
    auto* label = new QLabel(figure.label, card);
    label->setProperty("muted", true);
    auto* value = new QLabel(card);
    value->setObjectName(QStringLiteral("figure.") + figure.name);
    value->setProperty("figure", true);
    value->setTextInteractionFlags(Qt::TextSelectableByMouse);
    const int row = 3 * (place / kFigureColumns);
    if (row > 0) grid->setRowMinimumHeight(row - 1, 10);
    grid->addWidget(label, row, place % kFigureColumns);
    grid->addWidget(value, row + 1, place % kFigureColumns);
    grid->setColumnStretch(place % kFigureColumns, 1);
    ++place;
  }
  return card;
}

void BriefPage::followPanels() {
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  const double missing = model_->shortfall_deg();
  const bool closes = std::abs(missing) < 1e-6;
  QString text = tr("✓ Widths add to 360 deg.");
  if (!closes)
    text = missing > 0
               ? tr("✕ Widths add to %1 deg: %2 deg are missing. The edit is taken when they add to 360.")
               : tr("✕ Widths add to %1 deg: %2 deg too many. The edit is taken when they add to 360.");
  if (!closes) text = text.arg(model_->sum_deg()).arg(std::abs(missing));
  if (closes && model_->isHeld()) text = tr("✕ These panels were refused: put them right or put them back.");
  sum_->setText(text);
  sum_->setProperty("refusal", !closes || model_->isHeld());
  sum_->setStyleSheet(sum_->styleSheet());
  put_back_->setVisible(model_->isHeld());
  count_->setEnabled(may_edit);
  equal_->setEnabled(may_edit);
  count_->setValue(static_cast<int>(model_->panels().size()));
}

void BriefPage::followFigures() {
  for (const MainFigure& figure : main_figures_of(*bench_))
    if (auto* label = findChild<QLabel*>(QStringLiteral("figure.") + figure.name)) label->setText(figure.value);
}

}  // namespace prismwright
