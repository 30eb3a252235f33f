#include "ui/pages/lens_page.h"

#include <QSplitter>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/pages/lens_controls.h"
#include "ui/pages/lens_tables.h"
#include "ui/pages/pages.h"
#include "ui/style/palette.h"
#include "ui/views/lens_view.h"
#include "ui/views/panel_chart.h"

namespace prismwright {

QWidget* make_lens_page(Workbench* bench, QWidget* parent) { return new LensPage(bench, parent); }

LensPage::LensPage(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("lensPage"));
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setObjectName(QStringLiteral("lens.halves"));
  halves->setChildrenCollapsible(false);
  halves->addWidget(makeLeft());
  halves->addWidget(makeRight());
  halves->setStretchFactor(0, 5);
  halves->setStretchFactor(1, 2);
  halves->setSizes({710, 480});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(halves);
  setFocusProxy(view_);
  listen();
  takeMade();
  takeSelection();
}

QWidget* LensPage::makeLeft() {
  auto* left = new QWidget(this);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  view_ = new LensView(left);
  controls_ = new LensControls(view_, this);
  column->addWidget(controls_);
  column->addWidget(view_, 1);
  return left;
}

QWidget* LensPage::makeRight() {
  auto* stack = new QSplitter(Qt::Vertical, this);
  stack->setChildrenCollapsible(false);
  tables_ = new LensTables(bench_, stack);
  tables_->setMinimumWidth(320);
  chart_ = new PanelChart(bench_, stack);
  chart_->setMinimumHeight(160);
  chart_->setColouring(controls_->colouring());
  stack->addWidget(tables_);
  stack->addWidget(chart_);
  stack->setStretchFactor(0, 2);
  stack->setStretchFactor(1, 1);
  // The chart keeps its true proportions: more height than this would only be empty.
  stack->setSizes({470, 210});
  return stack;
}

void LensPage::listen() {
  connect(bench_, &Workbench::bookChanged, this, [this] {
    view_->showLens(nullptr);
    takeMade();
  });
  connect(bench_, &Workbench::valuesChanged, this, &LensPage::takeMade);
  connect(bench_, &Workbench::madeChanged, this, &LensPage::takeMade);
  connect(bench_, &Workbench::makingProgress, this, &LensPage::tellProgress);
  connect(bench_, &Workbench::makingFinished, this, &LensPage::tellFinished);
  connect(bench_, &Workbench::selectionChanged, this, &LensPage::takeSelection);
  connect(bench_, &Workbench::ledgerChanged, this, [this] {
    tables_->refresh();
    takeLooks();
  });
  connect(bench_, &Workbench::unitsChanged, this, [this] {
    tables_->refresh();
    takeLooks();
  });
  connect(view_, &LensView::picked, this, &LensPage::pick);
  connect(view_, &LensView::shown, this, [this] {
    if (const MeshedLens* lens = view_->lens()) controls_->setLens(lens->panels, lens->low_mm, lens->high_mm);
  });
  connect(controls_, &LensControls::colouringChanged, this, [this](Colouring colouring) {
    chart_->setColouring(colouring);
    takeLooks();
  });
  connect(tables_, &LensTables::gapChosen, this, [this](const std::optional<Clearance>& gap) {
    const QString words =
        gap ? tr("%1, %2").arg(length_text(gap->gap_mm, bench_->inches()), palette::verdict_words(gap->verdict))
            : QString();
    view_->setGap(gap, words);
  });
}

void LensPage::takeMade() {
  if (bench_->hasBook()) view_->showLens(bench_->made());
  tables_->refresh();
  takeLooks();
}

void LensPage::takeLooks() {
  if (!bench_->hasBook()) return;
  const Colouring colouring = controls_->colouring();
  LensLooks looks;
  looks.of = [this, colouring](const QString& mark) { return look_of(*bench_, mark.toStdString(), colouring); };
  looks.plain_glass = colouring == Colouring::material;
  looks.stale = bench_->madeIsStale();
  view_->setLooks(std::move(looks));
  view_->setLegend(legend_of(*bench_, colouring));
}

void LensPage::takeSelection() {
  view_->setSelection(bench_->selection());
  tables_->followSelection();
}

void LensPage::pick(const QString& mark, bool add) {
  if (mark.isEmpty()) return bench_->select({});
  if (!add) return bench_->select({mark});
  QStringList marks = bench_->selection();
  if (!marks.removeOne(mark)) marks.prepend(mark);
  bench_->select(marks);
}

void LensPage::tellProgress(double share, const QString& what) {
  const QString words = tr("Making solids: %1, %2 %").arg(what).arg(qRound(100 * share));
  view_->setProgress(share,
                     bench_->madeIsStale() && bench_->made() ? words + tr(" (grey: the last ones)") : words);
}

void LensPage::tellFinished(bool done, const QString& message) {
  view_->setProgress(-1, done ? QString() : message);
}

}  // namespace prismwright
