#include "ui/views/lens_view.h"

#include <QResizeEvent>
#include <QToolTip>
#include <QVBoxLayout>
#include <QtConcurrent/QtConcurrentRun>

#include "ui/style/palette.h"

namespace prismwright {

LensView::LensView(QWidget* parent) : LensView(LensGl::troubleBeforehand(), parent) {}

LensView::LensView(const QString& trouble, QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("lensView"));
  setMinimumSize(240, 180);
  sentence_ = new QLabel(this);
  sentence_->setObjectName(QStringLiteral("lensViewSentence"));
  sentence_->setAlignment(Qt::AlignCenter);
  sentence_->setWordWrap(true);
  sentence_->hide();
  if (!trouble.isEmpty()) {
    sayTrouble(trouble);
    return;
  }
  gl_ = new LensGl(this);
  if (!gl_->trouble().isEmpty()) {
    sayTrouble(gl_->trouble());
    return;
  }
  setFocusProxy(gl_);
  scene_ = std::make_unique<LensScene>(*gl_);
  overlay_ = new LensOverlay(this);
  connect(gl_, &LensGl::failed, this, &LensView::sayTrouble);
  connect(gl_, &LensGl::drawn, this, &LensView::onDrawn);
  connect(gl_, &LensGl::clicked, this, &LensView::onClicked);
  connect(gl_, &LensGl::hovered, this, [this](const QPointF& place) {
    hover_ = place;
    QToolTip::hideText();
    hover_timer_.start();
  });
  hover_timer_.setSingleShot(true);
  hover_timer_.setInterval(350);
  connect(&hover_timer_, &QTimer::timeout, this, &LensView::tellUnderPointer);
  connect(&watcher_, &QFutureWatcherBase::finished, this, &LensView::takeMeshes);
}

LensView::~LensView() {
  if (stop_) *stop_ = true;
  watcher_.disconnect(this);
  watcher_.waitForFinished();
  scene_.reset();
}

void LensView::sayTrouble(const QString& sentence) {
  sentence_->setText(sentence);
  sentence_->show();
  sentence_->raise();
  if (gl_) gl_->hide();
  if (overlay_) overlay_->hide();
}

QString LensView::trouble() const { return sentence_->isHidden() ? QString() : sentence_->text(); }

void LensView::resizeEvent(QResizeEvent*) {
  if (gl_) gl_->setGeometry(rect());
  if (overlay_) overlay_->setGeometry(rect());
  sentence_->setGeometry(rect().adjusted(24, 24, -24, -24));
}

void LensView::showLens(std::shared_ptr<const MadeLens> made) {
  if (!scene_) return;
  const bool same = made && wanted_ && made->bodies == wanted_->bodies && made->metal == wanted_->metal;
  if (same || made == wanted_) return;
  wanted_ = std::move(made);
  clock_.start();
  if (stop_) *stop_ = true;
  if (!wanted_) {
    scene_->show(nullptr);
    framed_at_mm_.reset();
    return;
  }
  if (!is_meshing_) startMeshing();
}

void LensView::startMeshing() {
  is_meshing_ = true;
  meshing_ = wanted_;
  // An empty view gets its glass first: brass plates with their pockets take the longer part of the time.
  glass_first_ = !scene_->lens() && meshing_->metal && !meshing_->metal->empty();
  auto made = std::make_shared<MadeLens>(*meshing_);
  if (glass_first_) made->metal = nullptr;
  stop_ = std::make_shared<std::atomic<bool>>(false);
  watcher_.setFuture(QtConcurrent::run([this, made, stop = stop_] {
    return mesher_.mesh(*made, [stop](double, std::string_view) { return !*stop; });
  }));
}

void LensView::takeMeshes() {
  is_meshing_ = false;
  const auto lens = watcher_.result();
  if (wanted_ && wanted_ != meshing_) return startMeshing();
  if (!wanted_ || !lens) return;
  QElapsedTimer building;
  building.start();
  scene_->show(lens);
  // The eye is placed once; again when the brass comes, unless it has been moved since.
  if (!framed_at_mm_ || *framed_at_mm_ == gl_->camera().distance_mm()) {
    showNamed(named_);
    framed_at_mm_ = gl_->camera().distance_mm();
  }
  if (glass_first_) return startMeshing();
  framed_at_mm_ = -1;
  awaits_picture_ = true;
  building_ms_ = building.elapsed();
}

bool LensView::isCurrent() const { return wanted_ && wanted_ == meshing_ && !is_meshing_ && !awaits_picture_; }

void LensView::onDrawn() {
  placeLabels();
  if (!awaits_picture_) return;
  awaits_picture_ = false;
  showing_ms_ = clock_.elapsed();
  emit shown();
}

void LensView::onClicked(const QPointF& place, bool add) {
  if (const auto piece = Handle(LensPiece)::DownCast(pickAt(place)); !piece.IsNull()) {
    // Brass hides what lies behind it and is no prism: a click on it leaves the selection of prisms alone.
    const QString mark = QString::fromStdString(piece->part().mark);
    if (piece->part().kind == SceneKind::glass)
      emit picked(mark, add);
    else
      emit partPicked(mark);
    return;
  }
  if (add) return;
  emit picked({}, false);
  emit partPicked({});
}

Handle(Standard_Transient) LensView::pickAt(const QPointF& place) {
  if (!scene_->isGhosted()) return gl_->pick(place);
  scene_->setPickable(SceneKind::glass, false);
  Handle(Standard_Transient) brass = gl_->pick(place);
  scene_->setPickable(SceneKind::glass, true);
  return brass.IsNull() ? gl_->pick(place) : brass;
}

QString LensView::markAt(const QPoint& place) {
  if (!gl_) return {};
  const auto piece = Handle(LensPiece)::DownCast(pickAt(place));
  return piece.IsNull() ? QString() : QString::fromStdString(piece->part().mark);
}

void LensView::tellUnderPointer() {
  if (!gl_->underMouse()) return;
  const QString mark = markAt(hover_.toPoint());
  if (mark.isEmpty()) return;
  const PrismLook look =
      looks_.of && scene_->piece(mark)->part().kind == SceneKind::glass ? looks_.of(mark) : PrismLook{};
  const QString words = look.meaning.isEmpty() ? mark : mark + QStringLiteral("\n") + look.meaning;
  QToolTip::showText(gl_->mapToGlobal(hover_.toPoint()), words, gl_);
}

void LensView::setLooks(LensLooks looks) {
  looks_ = looks;
  if (scene_) scene_->setLooks(std::move(looks));
}

void LensView::setLegend(std::vector<LegendRow> rows) {
  if (overlay_) overlay_->setLegend(std::move(rows));
}

void LensView::setSelection(const QStringList& marks) {
  if (!scene_ || scene_->selection() == marks) return;
  scene_->setSelection(marks);
}

void LensView::setGhosted(bool ghosted) {
  if (scene_) scene_->setGhosted(ghosted);
}

void LensView::setChosenParts(const QStringList& marks) {
  if (scene_) scene_->setChosenParts(marks);
}

void LensView::setDoor(const DoorTurn& door) {
  if (scene_) scene_->setDoor(door);
}

void LensView::setProgress(double share, const QString& words) {
  if (overlay_) overlay_->setProgress(share, words);
}

void LensView::setGap(const std::optional<Clearance>& gap, const QString& words) {
  gap_words_ = words;
  if (scene_) scene_->setGap(gap);
}

void LensView::setShown(SceneKind kind, bool shown) {
  if (scene_) scene_->setShown(kind, shown);
}

void LensView::setCut(const LensCut& cut) {
  if (scene_) scene_->setCut(cut);
}

void LensView::setApart(double share) {
  if (scene_) scene_->setApart(share);
}

}  // namespace prismwright
