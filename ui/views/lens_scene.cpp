#include "ui/views/lens_scene.h"

#include <AIS_InteractiveContext.hxx>
#include <Graphic3d_ClipPlane.hxx>
#include <Graphic3d_SequenceOfHClipPlane.hxx>

#include "core/base/angle.h"
#include "ui/style/palette.h"
#include "ui/views/lens_colour.h"

namespace prismwright {
namespace {

constexpr int kPickable = 0;
constexpr double kGhost = 0.06;
constexpr double kGhostEdge = 0.22;

QColor greyed(const QColor& colour) {
  const int grey = qGray(colour.rgb());
  return palette::between(colour, QColor(grey, grey, grey), 0.8);
}

}  // namespace

LensScene::LensScene(LensGl& gl) : gl_(gl), plane_(new Graphic3d_ClipPlane()) {
  plane_->SetCapping(false);
  plane_->SetOn(false);
  planes_ = new Graphic3d_SequenceOfHClipPlane();
  planes_->Append(plane_);
}

void LensScene::show(std::shared_ptr<const MeshedLens> lens) {
  const auto guard = gl_.begin();
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) gl_.scene()->Remove(piece, false);
  pieces_.clear();
  lens_ = std::move(lens);
  if (lens_) {
    for (const LensPart& part : lens_->parts) {
      Handle(LensPiece) piece = new LensPiece(part);
      piece->SetClipPlanes(planes_);
      piece->move(moveOf(part));
      piece->showInside(cut_.kind != LensCut::Kind::none);
      paint(*piece);
      pieces_.insert(QString::fromStdString(part.mark), piece);
      if (isShown(part.kind)) gl_.scene()->Display(piece, 0, kPickable, false);
    }
  }
  redrawRose();
  redrawOutlines();
  redrawCut();
  redrawGap();
}

gp_Vec LensScene::shiftOf(const LensPart& part) const {
  if (apart_ <= 0 || !lens_) return {0, 0, 0};
  const double by_mm = apart_ * lens_->focal_mm;
  if (part.panel == 0) {
    const double middle = part.place.TranslationPart().Z() + part.mesh->anchor.Z();
    return {0, 0, middle > 0 ? by_mm * 0.5 : -by_mm * 0.5};
  }
  return {by_mm * std::cos(radians(part.axis_deg)), by_mm * std::sin(radians(part.axis_deg)), 0};
}

gp_Trsf LensScene::moveOf(const LensPart& part) const {
  gp_Trsf away;
  away.SetTranslation(shiftOf(part));
  if (door_.angle_deg == 0 || !door_.marks.contains(QString::fromStdString(part.mark))) return away;
  gp_Trsf turn;
  turn.SetRotation(door_.hinge, radians(door_.angle_deg));
  return away * turn;
}

void LensScene::moveAll() {
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) {
    // Else clicks are still sought where the piece stood when the last one was.
    if (piece->move(moveOf(piece->part()))) gl_.scene()->RecomputeSelectionOnly(piece);
  }
  redrawOutlines();
  redrawCut();
  redrawGap();
}

void LensScene::setDoor(const DoorTurn& door) {
  door_ = door;
  const auto guard = gl_.begin();
  moveAll();
}

void LensScene::setGhosted(bool ghosted) {
  if (ghosted == ghosted_) return;
  ghosted_ = ghosted;
  const auto guard = gl_.begin();
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) paint(*piece);
}

void LensScene::setChosenParts(const QStringList& marks) {
  if (marks == chosen_parts_) return;
  const QStringList before = std::exchange(chosen_parts_, marks);
  const auto guard = gl_.begin();
  for (const QString& mark : before + marks)
    if (has(mark)) paint(*pieces_[mark]);
  redrawOutlines();
}

void LensScene::setPickable(SceneKind kind, bool pickable) {
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) {
    if (piece->part().kind != kind) continue;
    pickable ? gl_.scene()->Activate(piece, kPickable) : gl_.scene()->Deactivate(piece);
  }
}

void LensScene::paintGlass(LensPiece& piece) const {
  const QString mark = QString::fromStdString(piece.part().mark);
  const PrismLook look = looks_.of ? looks_.of(mark) : PrismLook{palette::glass_fill(), {}, {}, false};
  const QColor fill = looks_.stale ? greyed(look.fill) : look.fill;
  double opacity = looks_.plain_glass ? palette::glass_fill().alphaF() : 0.82;
  QColor edge = look.hatched ? palette::amiss() : palette::glass_edge();
  if (ghosted_) {
    opacity = kGhost;
    edge = palette::between(palette::surface(), edge, kGhostEdge);
  }
  if (selection_.contains(mark)) opacity = std::min(1.0, opacity + 0.3);
  piece.paint(kernel_fill(fill, opacity), kernel_colour(looks_.stale ? greyed(edge) : edge), 1.5);
}

void LensScene::paint(LensPiece& piece) const {
  if (piece.part().kind == SceneKind::glass) return paintGlass(piece);
  const bool chosen = chosen_parts_.contains(QString::fromStdString(piece.part().mark));
  const QColor metal = chosen ? palette::sea() : palette::brass();
  const QColor brass = looks_.stale ? greyed(metal) : metal;
  const QColor edge = palette::between(brass, palette::ink(), 0.55);
  piece.paint(kernel_fill(brass, 1.0), kernel_colour(edge), 1.5);
}

void LensScene::setLooks(LensLooks looks) {
  looks_ = std::move(looks);
  const auto guard = gl_.begin();
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) paint(*piece);
}

void LensScene::setShown(SceneKind kind, bool shown) {
  if (isShown(kind) == shown) return;
  shown_[static_cast<std::size_t>(kind)] = shown;
  const auto guard = gl_.begin();
  for (const Handle(LensPiece) & piece : std::as_const(pieces_)) {
    if (piece->part().kind != kind) continue;
    shown ? gl_.scene()->Display(piece, 0, kPickable, false) : gl_.scene()->Erase(piece, false);
  }
  redrawCut();
  redrawOutlines();
}

void LensScene::setApart(double share) {
  if (share == apart_) return;
  apart_ = share;
  const auto guard = gl_.begin();
  moveAll();
  redrawRose();
}

void LensScene::setSelection(const QStringList& marks) {
  const QStringList before = std::exchange(selection_, marks);
  const auto guard = gl_.begin();
  for (const QString& mark : before + marks)
    if (has(mark)) paint(*pieces_[mark]);
  redrawOutlines();
  redrawRose();
}

void LensScene::setCut(const LensCut& cut) {
  cut_ = cut;
  const auto guard = gl_.begin();
  const bool on = cut.kind != LensCut::Kind::none;
  if (on) {
    const gp_Vec kept = cut.away().Reversed();
    plane_->SetEquation(Graphic3d_Vec4d(kept.X(), kept.Y(), kept.Z(), cut.offset_mm()));
  }
  if (plane_->IsOn() != on)
    for (const Handle(LensPiece) & piece : std::as_const(pieces_)) piece->showInside(on);
  plane_->SetOn(on);
  redrawCut();
}

void LensScene::setGap(const std::optional<Clearance>& gap) {
  gap_ = gap;
  const auto guard = gl_.begin();
  redrawGap();
}

}  // namespace prismwright
