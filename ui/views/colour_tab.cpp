#include "ui/views/colour_tab.h"

#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"
#include "ui/views/chromaticity_plot.h"
#include "ui/views/light_tables.h"
#include "ui/views/quantity_editor.h"
#include "ui/views/transmittance_plot.h"

namespace prismwright {
namespace {

constexpr int kSideWidth = 350;
constexpr int kRows = 6;  // the lamp, white, red by two rules, green, yellow

QString none() { return QStringLiteral("–"); }
QString digits(double value, int decimals = 4) {
  return QString::number(value, 'f', decimals).replace('-', QChar(0x2212));
}

/// Panels that hold prisms and show this light.
int panels_with(Screen screen, const std::vector<Panel>& panels) {
  return static_cast<int>(std::count_if(panels.begin(), panels.end(), [&](const Panel& panel) {
    return !panel.blind && panel.screen == screen;
  }));
}

QString verdict_words(const RegionVerdict& verdict) {
  const std::string_view rule = verdict.region->rule;
  return (verdict.held ? ColourTab::tr("✓ inside, %1") : ColourTab::tr("✕ outside, %1"))
      .arg(QString::fromUtf8(rule.data(), static_cast<qsizetype>(rule.size())));
}

}  // namespace

ColourTab::ColourTab(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("light.colour"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* top = new QSplitter(Qt::Horizontal);
  top->setChildrenCollapsible(false);
  diagram_ = new ChromaticityPlot(top);
  top->addWidget(diagram_);
  top->addWidget(makeSide());
  top->setSizes({10000, kSideWidth});
  top->setStretchFactor(0, 3);
  top->setStretchFactor(1, 1);
  column->addWidget(top, 1);
  column->addWidget(makeFoot());
}

QWidget* ColourTab::makeSide() {
  auto* side = new QWidget(this);
  side->setMinimumWidth(kSideWidth);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(8, 8, 0, 0);
  column->setSpacing(8);
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(12);
  form->setVerticalSpacing(4);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  for (const char* key : {"material.tint", "material.tint_mm", "material.absorption_per_m", "light.red_screen",
                          "light.green_screen", "light.yellow_screen"}) {
    auto* editor = new QuantityEditor(bench_, key, side);
    form->addRow(editor->makeLabel(side), editor);
  }
  column->addLayout(form);
  column->addWidget(new TransmittancePlot(bench_, side), 1);
  return side;
}

QWidget* ColourTab::makeFoot() {
  auto* foot = new QWidget(this);
  auto* column = new QVBoxLayout(foot);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  words_ = new QLabel(foot);
  words_->setObjectName(QStringLiteral("light.colour.words"));
  words_->setWordWrap(true);
  words_->setProperty("muted", true);
  words_->setContentsMargins(8, 0, 8, 0);
  column->addWidget(words_);
  table_ = new FigureTable(QStringLiteral("light.colours"), tr("The lights and their published regions"),
                           {tr("light"), tr("panels"), tr("of white, %"), tr("x"), tr("y"), tr("margin"),
                            tr("region of its colour")},
                           foot);
  table_->setLeastRows(kRows);
  table_->setMaximumHeight(table_->minimumHeight());
  table_->horizontalHeader()->setSectionResizeMode(table_->columnCount() - 1, QHeaderView::ResizeToContents);
  table_->horizontalHeaderItem(5)->setToolTip(
      tr("Distance in x, y from the boundary of the region, positive inside; half of the last published digit "
         "outside "
         "still counts as inside"));
  column->addWidget(table_);
  return foot;
}

void ColourTab::setReport(const std::shared_ptr<const LightReport>& report,
                          const std::shared_ptr<const LensPlan>& plan) {
  table_->clearRows();
  words_->clear();
  std::set<Screen> used;
  if (plan)
    for (const Panel& panel : plan->values.panels)
      if (!panel.blind) used.insert(panel.screen);
  diagram_->setReport(report, std::move(used));
  if (report && plan) fill(report->colours, plan->values.panels);
}

void ColourTab::fill(const LightColours& colours, const std::vector<Panel>& panels) {
  table_->addRow(
      {tr("lamp itself"), none(), none(), digits(colours.lamp.x), digits(colours.lamp.y), none(), none()});
  for (const ScreenColour& light : colours.screens) {
    const int count = panels_with(light.screen, panels);
    const QStringList head{palette::screen_words(light.screen), count ? QString::number(count) : tr("none"),
                           digits(100 * light.factor, 1), digits(light.at.x), digits(light.at.y)};
    for (const RegionVerdict& verdict : light.regions)
      table_->addRow(head + QStringList{digits(verdict.margin), verdict_words(verdict)});
  }
  QStringList lines;
  for (const double nm : colours.lines_nm) lines << QString::number(nm, 'f', 0);
  words_->setText(
      tr("At the peak of the beam: mean path in the glass %1 mm, of which the tint leaves %2 of the "
         "lamp's light; traced at %3 nm")
          .arg(digits(colours.glass_mm, 1), percent_text(colours.tint_factor), lines.join(", ")));
}

}  // namespace prismwright
