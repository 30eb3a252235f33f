#include "ui/views/errors_tab.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/models/errors_words.h"
#include "ui/models/zone_selection.h"
#include "ui/views/loss_bars.h"
#include "ui/views/named.h"
#include "ui/views/quantity_editor.h"
#include "ui/views/saved_table.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;  // of the bar
constexpr int kFieldsAcross = 2;

QSplitter* split(Qt::Orientation way, std::initializer_list<QWidget*> parts, const QList<int>& sizes) {
  auto* splitter = new QSplitter(way);
  splitter->setChildrenCollapsible(false);
  for (QWidget* part : parts) splitter->addWidget(part);
  QList<int> wanted;
  for (const int size : sizes) wanted << 1000 * size;  // shares of whatever room there is
  splitter->setSizes(wanted);
  for (int i = 0; i < sizes.size(); ++i) splitter->setStretchFactor(i, sizes.at(i));
  return splitter;
}

}  // namespace

ErrorsTab::ErrorsTab(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), maker_(new ErrorsMaker(bench, this)) {
  setObjectName(QStringLiteral("light.errors"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 8, 0, 0);
  column->setSpacing(8);
  column->addWidget(makeFields());
  stack_ = new QStackedWidget(this);
  stack_->addWidget(makeResults());
  reason_ = named(new QLabel(stack_), "errors.reason");
  reason_->setWordWrap(true);
  reason_->setAlignment(Qt::AlignCenter);
  reason_->setMargin(32);
  stack_->addWidget(reason_);
  column->addWidget(stack_, 1);
  connect(maker_, &ErrorsMaker::changed, this, &ErrorsTab::follow);
  connect(maker_, &ErrorsMaker::progress, this, &ErrorsTab::tellProgress);
  connect(bench_, &Workbench::selectionChanged, this, &ErrorsTab::followSelection);
  follow();
}

QWidget* ErrorsTab::makeFields() {
  auto* holder = new QWidget(this);
  auto* grid = new QGridLayout(holder);
  grid->setContentsMargins(8, 0, 0, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(4);
  int place = 0;
  for (const char* key : {"light.tilt_error_deg", "light.shift_error_mm", "light.face_error_deg",
                          "light.index_error", "light.lamp_error_mm", "light.trials", "light.seed"}) {
    auto* editor = new QuantityEditor(bench_, key, holder);
    const int row = place / kFieldsAcross;
    const int at = 2 * (place % kFieldsAcross);
    grid->addWidget(editor->makeLabel(holder), row, at);
    grid->addWidget(editor, row, at + 1);
    grid->setColumnStretch(at + 1, 1);
    ++place;
  }
  grid->addWidget(makeWorkCell(holder), place / kFieldsAcross, 2 * (place % kFieldsAcross), 1, -1);
  return holder;
}

QWidget* ErrorsTab::makeWorkCell(QWidget* parent) {
  auto* cell = new QWidget(parent);
  auto* row = new QHBoxLayout(cell);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  told_ = named(new QLabel(cell), "errors.told");
  told_->setProperty("muted", true);
  told_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  bar_ = named(new QProgressBar(cell), "errors.progress");
  bar_->setRange(0, kSteps);
  bar_->setFixedWidth(140);
  bar_->setTextVisible(false);
  work_ = named(new QPushButton(cell), "errors.work");
  connect(work_, &QPushButton::clicked, this,
          [this] { maker_->isWorking() ? maker_->stop() : maker_->start(); });
  row->addWidget(told_, 1);
  row->addWidget(bar_);
  row->addWidget(work_);
  return cell;
}

QWidget* ErrorsTab::makeResults() {
  auto* results = new QWidget(this);
  auto* column = new QVBoxLayout(results);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  words_ = named(new QLabel(results), "errors.words");
  words_->setWordWrap(true);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  words_->setContentsMargins(8, 0, 8, 0);
  column->addWidget(words_);
  losses_ = new LossBars(bench_, results);
  tolerances_ = new SavedTable(QStringLiteral("errors.tolerances"), tr("Tolerances"), results);
  turns_ = new SavedTable(QStringLiteral("errors.turns"), tr("Turn of each prism's beam"), results);
  turns_->view()->setLeastRows(4);
  connect(tolerances_, &SavedTable::chosen, this, [this] {
    QStringList zones = tolerances_->marks();
    zones.removeAll(QString());  // the row of the whole panel
    select_zones(*bench_, QSet<QString>(zones.begin(), zones.end()), zones.value(0));
  });
  connect(turns_, &SavedTable::chosen, this, [this] { bench_->select(turns_->marks()); });
  column->addWidget(
      split(Qt::Vertical, {split(Qt::Horizontal, {losses_, tolerances_}, {3, 4}), turns_}, {5, 3}), 1);
  return results;
}

void ErrorsTab::setPanel(int panel) {
  ErrorsAsk ask = maker_->ask();
  ask.panel = panel;
  maker_->setAsk(ask);
}

void ErrorsTab::follow() {
  if (maker_->errors() != shown_) showErrors();
  const bool to_see = maker_->reason().isEmpty() && (shown_ || maker_->isWorking());
  reason_->setText(maker_->reason().isEmpty() ? tr("Not worked out yet.") : maker_->reason());
  stack_->setCurrentIndex(to_see ? 0 : 1);
  followWork();
}

void ErrorsTab::followWork() {
  const bool working = maker_->isWorking();
  bar_->setVisible(working);
  work_->setText(working ? tr("Stop") : tr("Work out"));
  work_->setEnabled(working || maker_->isStale());
  words_->setEnabled(!maker_->isStale());
  if (!working)
    told_->setText(maker_->isStale() && shown_ ? tr("These are the results of earlier values.") : QString());
}

void ErrorsTab::tellProgress(double share, const QString& what) {
  bar_->setValue(static_cast<int>(kSteps * share));
  told_->setText(shown_ ? tr("Working out %1 (shown: the last ones)").arg(what)
                        : tr("Working out %1").arg(what));
}

void ErrorsTab::showErrors() {
  shown_ = maker_->errors();
  losses_->setErrors(shown_);
  tolerances_->setTable(shown_ ? tolerances_table(*shown_) : ErrorsTable{});
  const double percent = 100 * kToleratedShare;
  tolerances_->setTitle(tr("Tolerances for %1 % of the peak").arg(percent),
                        tr("Standard deviation of one error alone that leaves %1 % of the panel's peak, or of "
                           "what the zone adds there, on average")
                            .arg(percent));
  words_->setText(shown_ ? errors_words(*shown_).join('\n') : QString());
  shown_panel_ = 0;
  followSelection();
}

/// The panel of the leading selected prism, else that of the trials.
int ErrorsTab::shownPanel() const {
  if (!shown_) return 0;
  if (!bench_->selection().isEmpty() && bench_->plan())
    if (const PlannedPrism* prism = bench_->plan()->find(bench_->selection().front().toStdString()))
      return prism->panel;
  return shown_->panel;
}

void ErrorsTab::showTurns() {
  shown_panel_ = shownPanel();
  turns_->setTable(shown_ ? turns_table(*shown_, shown_panel_) : ErrorsTable{});
  turns_->setTitle(tr("Turn of the beam of each prism of panel %1, deg").arg(shown_panel_),
                   tr("Tilt, up and lamp up: upward; roll, turn and sideways: level, anticlockwise from above; "
                      "the others: root mean square all round"));
}

void ErrorsTab::followSelection() {
  if (shownPanel() != shown_panel_ || !shown_) showTurns();
  const QStringList& selected = bench_->selection();
  const QSet<QString> marks(selected.begin(), selected.end());
  const QSet<QString> zones = selected_zones(*bench_);
  turns_->showMarks([&](const QString& mark) { return marks.contains(mark); });
  tolerances_->showMarks([&](const QString& zone) { return zones.contains(zone); });
}

void ErrorsTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  maker_->setWatched(true);
}

void ErrorsTab::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  maker_->setWatched(false);
}

}  // namespace prismwright
