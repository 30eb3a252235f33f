// The lines of the scene that follow from its state: rose, outline of the selection, cut, gap.
#include <AIS_InteractiveContext.hxx>
#include <Graphic3d_SequenceOfHClipPlane.hxx>

#include "core/base/angle.h"
#include "ui/style/palette.h"
#include "ui/views/lens_colour.h"
#include "ui/views/lens_scene.h"

namespace prismwright {
namespace {

constexpr int kNotPickable = -1;

Handle(LensLines)
    lines_of(const Handle(Graphic3d_ArrayOfPrimitives) & segments, const QColor& colour, double width) {
  return new LensLines(segments, kernel_colour(colour), width);
}

/// A short line with a cross at each end, so that a gap of a tenth of a millimetre is seen at all.
Handle(Graphic3d_ArrayOfSegments) gap_segments(const gp_Pnt& a, const gp_Pnt& b, double arm_mm) {
  Handle(Graphic3d_ArrayOfSegments) lines = new Graphic3d_ArrayOfSegments(14);
  lines->AddVertex(a);
  lines->AddVertex(b);
  for (const gp_Pnt& end : {a, b}) {
    for (const gp_Vec& arm : {gp_Vec(arm_mm, 0, 0), gp_Vec(0, arm_mm, 0), gp_Vec(0, 0, arm_mm)}) {
      lines->AddVertex(end.Translated(arm));
      lines->AddVertex(end.Translated(arm.Reversed()));
    }
  }
  return lines;
}

}  // namespace

void LensScene::put(Handle(LensLines) & held, const Handle(LensLines) & lines, int layer) {
  if (!held.IsNull()) gl_.scene()->Remove(held, false);
  held = lines;
  if (held.IsNull()) return;
  held->SetZLayer(layer);
  gl_.scene()->Display(held, 0, kNotPickable, false);
}

void LensScene::redrawRose() {
  if (!lens_ || lens_->parts.empty()) return put(rose_lines_, nullptr, Graphic3d_ZLayerId_Default);
  const double height = lens_->high_mm - lens_->low_mm;
  const double apart_mm = apart_ * lens_->focal_mm;
  rose_.radius_mm = 1.1 * (lens_->reach_mm + apart_mm);
  rose_.level_mm = lens_->low_mm - 0.06 * height - 0.5 * apart_mm;
  rose_.panels = lens_->panels;
  const Handle(LensPiece) leading = selection_.isEmpty() ? nullptr : piece(selection_.front());
  rose_.arrow_panel = leading.IsNull() || leading->part().panel == 0 ? 1 : leading->part().panel;
  const Handle(LensLines) rose = lines_of(rose_.lines(), palette::muted_ink(), 1.5);
  rose->setFacets(rose_.arrow(), kernel_colour(palette::sea()));
  put(rose_lines_, rose, Graphic3d_ZLayerId_Default);
}

void LensScene::redrawOutlines() {
  for (const Handle(LensLines) & outline : std::as_const(outlines_)) gl_.scene()->Remove(outline, false);
  outlines_.clear();
  for (const QString& mark : selection_) addOutline(mark, palette::brass());
  for (const QString& mark : chosen_parts_) addOutline(mark, palette::sea());
}

void LensScene::addOutline(const QString& mark, const QColor& colour) {
  const Handle(LensPiece) chosen = piece(mark);
  if (chosen.IsNull() || chosen->part().mesh->edges.IsNull() || !isShown(chosen->part().kind)) return;
  const Handle(LensLines) outline = lines_of(chosen->part().mesh->edges, colour, 3.5);
  outline->SetLocalTransformation(chosen->placeNow());
  outline->SetClipPlanes(planes_);
  outline->SetZLayer(Graphic3d_ZLayerId_Top);
  gl_.scene()->Display(outline, 0, kNotPickable, false);
  outlines_.insert(mark, outline);
}

void LensScene::redrawCut() {
  std::vector<PlacedPart> parts;
  if (cut_.kind != LensCut::Kind::none) {
    for (const Handle(LensPiece) & piece : std::as_const(pieces_))
      if (isShown(piece->part().kind)) parts.push_back({piece->part().mesh.get(), piece->placeNow()});
  }
  const Handle(Graphic3d_ArrayOfSegments) segments = cut_lines(cut_, parts);
  put(cut_lines_, segments.IsNull() ? nullptr : lines_of(segments, palette::ink(), 2), Graphic3d_ZLayerId_Top);
}

void LensScene::redrawGap() {
  const auto ends = gapEnds();
  if (!ends) return put(gap_lines_, nullptr, Graphic3d_ZLayerId_Topmost);
  const double arm_mm = lens_->focal_mm * 0.008;
  // Not the verdict's own colours: brass on a brass rib would not be seen.
  const QColor colour = gap_->verdict == Verdict::clear ? palette::sea() : palette::amiss();
  put(gap_lines_, lines_of(gap_segments(ends->first, ends->second, arm_mm), colour, 3),
      Graphic3d_ZLayerId_Topmost);
}

std::optional<std::pair<gp_Pnt, gp_Pnt>> LensScene::gapEnds() const {
  if (!gap_ || !lens_) return {};
  const auto moved = [&](const std::string& mark, const gp_Pnt& place) {
    const LensPart* part = lens_->find(mark);
    return part ? place.Transformed(moveOf(*part)) : place;
  };
  return std::pair(moved(gap_->first, gap_->first_point), moved(gap_->second, gap_->second_point));
}

std::optional<gp_Pnt> LensScene::anchor(const QString& mark) const {
  const Handle(LensPiece) found = piece(mark);
  if (found.IsNull()) return {};
  return found->part().mesh->anchor.Transformed(found->placeNow());
}

std::vector<gp_Pnt> LensScene::corners(const QStringList& marks) const {
  std::vector<gp_Pnt> points;
  const auto add = [&](const Handle(LensPiece) & of) {
    const gp_Pnt low = of->part().mesh->box.CornerMin();
    const gp_Pnt high = of->part().mesh->box.CornerMax();
    for (int i = 0; i < 8; ++i)
      points.push_back(
          gp_Pnt(i & 1 ? high.X() : low.X(), i & 2 ? high.Y() : low.Y(), i & 4 ? high.Z() : low.Z())
              .Transformed(of->placeNow()));
  };
  if (!marks.isEmpty()) {
    for (const QString& mark : marks)
      if (has(mark)) add(piece(mark));
    return points;
  }
  if (!lens_ || lens_->parts.empty()) return points;
  points = rose_.reach();
  const double reach_mm = lens_->reach_mm + apart_ * lens_->focal_mm;
  for (int i = 0; i < 24; ++i) {
    const double a = radians(15.0 * i);
    points.emplace_back(reach_mm * std::cos(a), reach_mm * std::sin(a),
                        lens_->high_mm + 0.5 * apart_ * lens_->focal_mm);
  }
  return points;
}

}  // namespace prismwright
