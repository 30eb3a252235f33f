#include "ui/pages/frame_scene.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>
#include <cmath>

#include <gp.hxx>

#include "core/base/angle.h"
#include "ui/models/door_words.h"
#include "ui/models/shown_numbers.h"
#include "ui/pages/lens_controls.h"
#include "ui/style/palette.h"
#include "ui/views/lens_view.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

constexpr int kStepsOfDegree = 4;  // of the slider

/// What opens with the door: everything that belongs to its panel. A positive angle opens it.
std::optional<DoorTurn> door_turn(const MadeLens& made) {
  if (!made.frame || !made.frame->hinge) return {};
  const FramePlan::Hinge& hinge = *made.frame->hinge;
  const int panel = made.plan->values.frame.door_panel;
  DoorTurn turn;
  turn.hinge = gp_Ax1(gp_Pnt(hinge.place.x, hinge.place.y, hinge.place.z),
                      hinge.opens_clockwise ? gp::DZ().Reversed() : gp::DZ());
  for (const PlannedPrism& prism : made.plan->prisms)
    if (prism.panel == panel) turn.marks.insert(QString::fromStdString(prism.mark));
  for (const FrameBody& body : *made.metal)
    if (body.panel == panel) turn.marks.insert(QString::fromStdString(body.mark));
  return turn;
}

/// The step's gap with the door's own point as it lies when the door is shut: the view turns it with the door.
Clearance gap_of(const DoorStep& step, const DoorTurn& shut) {
  Clearance gap;
  gap.first = step.first;
  gap.second = step.second;
  gap.gap_mm = step.gap_mm;
  gap.needed_mm = kMetalApart_mm;
  gap.verdict = step.gap_mm <= 0               ? Verdict::clash
                : step.gap_mm < kMetalApart_mm ? Verdict::tight
                                               : Verdict::clear;
  gap.first_point = step.first_point.Rotated(shut.hinge, -radians(step.angle_deg));
  gap.second_point = step.second_point;
  return gap;
}

}  // namespace

FrameScene::FrameScene(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("frame.scene"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(makeDoorRow());
  connect(bench_, &Workbench::bookChanged, this, [this] {
    if (view_) view_->showLens(nullptr);
    takeMade();
  });
  for (const auto signal : {&Workbench::valuesChanged, &Workbench::madeChanged})
    connect(bench_, signal, this, &FrameScene::takeMade);
  for (const auto signal : {&Workbench::ledgerChanged, &Workbench::unitsChanged})
    connect(bench_, signal, this, &FrameScene::takeLooks);
  connect(bench_, &Workbench::unitsChanged, this, &FrameScene::turnDoor);
  connect(bench_, &Workbench::selectionChanged, this, [this] {
    if (view_) view_->setSelection(bench_->selection());
  });
  takeMade();
}

QWidget* FrameScene::makeDoorRow() {
  auto* host = new QWidget(this);
  auto* row = new QHBoxLayout(host);
  row->setContentsMargins(8, 0, 8, 8);
  row->setSpacing(8);
  ghosted_ = named(new QCheckBox(tr("G&hosted prisms"), host), "frame.ghosted");
  ghosted_->setChecked(true);
  ghosted_->setToolTip(tr("Prisms as faint outlines; clicks go through them to the brass"));
  connect(ghosted_, &QCheckBox::toggled, this, [this](bool on) {
    if (view_) view_->setGhosted(on);
  });
  slider_ = named(new QSlider(Qt::Horizontal, host), "frame.door");
  slider_->setMinimumWidth(120);
  slider_->setMaximumWidth(320);
  slider_->setPageStep(5 * kStepsOfDegree);
  auto* caption = new QLabel(tr("&Door"), host);
  caption->setBuddy(slider_);
  connect(slider_, &QSlider::valueChanged, this, &FrameScene::turnDoor);
  reading_ = named(new QLabel(host), "frame.door.reading");
  reading_->setMinimumWidth(160);
  chosen_ = named(new QLabel(host), "frame.chosen");
  chosen_->setProperty("muted", true);
  chosen_->setMinimumWidth(80);
  chosen_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  row->addWidget(ghosted_);
  row->addSpacing(8);
  row->addWidget(caption);
  row->addWidget(slider_, 2);
  row->addWidget(reading_, 4);
  row->addWidget(chosen_, 2);
  return host;
}

void FrameScene::makeView() {
  view_ = new LensView(this);
  controls_ = new LensControls(view_, QStringLiteral("frame.scene"), this);
  auto* column = static_cast<QVBoxLayout*>(layout());
  column->insertWidget(0, controls_);
  column->addWidget(view_, 1);
  setFocusProxy(view_);
  connect(view_, &LensView::picked, this, &FrameScene::pick);
  connect(view_, &LensView::partPicked, this, &FrameScene::partPicked);
  connect(view_, &LensView::shown, this, [this] {
    if (const MeshedLens* lens = view_->lens()) controls_->setLens(lens->panels, lens->low_mm, lens->high_mm);
    if (std::exchange(look_when_shown_, false)) view_->showSelected();
  });
  connect(controls_, &LensControls::colouringChanged, this, &FrameScene::takeLooks);
  connect(bench_, &Workbench::makingProgress, view_, [this](double share, const QString& what) {
    view_->setProgress(share, tr("Making solids: %1, %2 %").arg(what).arg(qRound(100 * share)));
  });
  connect(bench_, &Workbench::makingFinished, view_,
          [this](bool done, const QString& message) { view_->setProgress(-1, done ? QString() : message); });
  view_->setGhosted(ghosted_->isChecked());
  view_->setSelection(bench_->selection());
}

void FrameScene::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (!view_) makeView();
  takeMade();
  followChosen();
  turnDoor();
  if (look_when_shown_ && view_->isCurrent()) look();
}

void FrameScene::takeMade() {
  takeDoor();
  if (!view_ || !bench_->hasBook()) return;
  // Meshes are made for those who look.
  if (isVisible()) view_->showLens(bench_->made());
  takeLooks();
}

void FrameScene::takeLooks() {
  if (!view_ || !bench_->hasBook()) return;
  const Colouring colouring = controls_->colouring();
  LensLooks looks;
  looks.of = [this, colouring](const QString& mark) { return look_of(*bench_, mark.toStdString(), colouring); };
  looks.plain_glass = colouring == Colouring::material;
  looks.stale = bench_->madeIsStale();
  view_->setLooks(std::move(looks));
  view_->setLegend(legend_of(*bench_, colouring));
}

void FrameScene::pick(const QString& mark, bool add) {
  if (mark.isEmpty()) return bench_->select({});
  if (!add) return bench_->select({mark});
  QStringList marks = bench_->selection();
  if (!marks.removeOne(mark)) marks.prepend(mark);
  bench_->select(marks);
}

void FrameScene::showParts(const QStringList& marks) {
  parts_ = marks;
  followChosen();
}

void FrameScene::showGap(const std::optional<Clearance>& gap) {
  gap_ = gap;
  followChosen();
}

void FrameScene::look() {
  look_when_shown_ = !view_ || !isVisible() || !view_->isCurrent();
  if (!look_when_shown_) view_->showSelected();
}

void FrameScene::followChosen() {
  QString words;
  if (gap_)
    words = tr("%1 to %2").arg(QString::fromStdString(gap_->first), QString::fromStdString(gap_->second));
  else if (!parts_.isEmpty())
    words =
        parts_.size() == 1 ? parts_.front() : tr("%1 and %2 alike").arg(parts_.front()).arg(parts_.size() - 1);
  chosen_->setText(words);
  chosen_->setToolTip(words);
  if (!view_) return;
  view_->setChosenParts(parts_);
  followGap();
}

/// The clearance that is chosen; without one, on an open door, its own least gap at that angle.
void FrameScene::followGap() {
  std::optional<Clearance> gap = gap_;
  const double angle_deg = doorAngle_deg();
  const DoorStep* step = door_ && sweep_ && angle_deg > 0 ? door_step_at(*sweep_, angle_deg) : nullptr;
  if (!gap && step) gap = gap_of(*step, *door_);
  const QString words =
      gap ? tr("%1, %2").arg(length_text(gap->gap_mm, bench_->inches()), palette::verdict_words(gap->verdict))
          : QString();
  view_->setGap(gap, words);
}

/// The door's parts and its hinge, as far as they are made; the slider keeps its place where it can.
void FrameScene::takeDoor() {
  const auto made = bench_->hasBook() ? bench_->made() : nullptr;
  if (made == door_of_ && made) return;
  door_of_ = made;
  door_ = made ? door_turn(*made) : std::nullopt;
  const QSignalBlocker quiet(slider_);
  slider_->setEnabled(door_.has_value());
  const double most_deg = door_ ? made->plan->values.frame.door_open_deg : 0;
  slider_->setRange(0, static_cast<int>(std::lround(most_deg * kStepsOfDegree)));
  turnDoor();
}

void FrameScene::setSweep(std::shared_ptr<const DoorSweep> sweep, const QString& reason) {
  sweep_ = std::move(sweep);
  no_sweep_ = reason;
  turnDoor();
}

double FrameScene::doorAngle_deg() const { return static_cast<double>(slider_->value()) / kStepsOfDegree; }

void FrameScene::turnDoor() {
  QString words = tr("No panel is a door: give its number at the left.");
  if (!door_of_) words = tr("Nothing is made yet.");
  if (door_) {
    words = tr("%1°").arg(doorAngle_deg(), 0, 'f', 1);
    const QString known = sweep_ ? door_words(*sweep_, doorAngle_deg(), bench_->inches()) : no_sweep_;
    if (!known.isEmpty()) words += QStringLiteral(", ") + known;
  }
  reading_->setText(words);
  reading_->setToolTip(words);
  if (!view_) return;
  DoorTurn turn = door_.value_or(DoorTurn{});
  turn.angle_deg = door_ ? doorAngle_deg() : 0;
  view_->setDoor(turn);
  followGap();
}

}  // namespace prismwright
