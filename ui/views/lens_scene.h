#pragma once

#include <QHash>
#include <QSet>
#include <QStringList>
#include <functional>
#include <memory>
#include <optional>

#include <gp_Ax1.hxx>

#include "geometry/clearances.h"
#include "ui/models/colouring.h"
#include "ui/views/lens_cut.h"
#include "ui/views/lens_gl.h"
#include "ui/views/lens_meshes.h"
#include "ui/views/lens_piece.h"
#include "ui/views/lens_rose.h"

class Graphic3d_ClipPlane;

namespace prismwright {

/// How the parts of the lens look.
struct LensLooks {
  std::function<PrismLook(const QString& mark)> of;
  bool plain_glass = true;  ///< colour tells nothing but the material: keep the glass translucent
  bool stale = false;       ///< newer solids are being made: these are greyed
};

/// The door turned about its hinge: these parts move, the others stay.
struct DoorTurn {
  QSet<QString> marks;
  gp_Ax1 hinge;
  double angle_deg = 0;  ///< right-handed about the hinge; 0: shut
};

/// What stands in the 3D view: the pieces of the lens, the rose under it, the outline of the selection, the
/// lines of a cut, a gap. Nothing here moves the eye.
class LensScene {
 public:
  explicit LensScene(LensGl& gl);

  /// Replaces the lens. Everything else (looks, cut, selection, what is shown) stays as it was set.
  void show(std::shared_ptr<const MeshedLens> lens);
  [[nodiscard]] const MeshedLens* lens() const { return lens_.get(); }

  void setLooks(LensLooks looks);
  void setShown(SceneKind kind, bool shown);
  [[nodiscard]] bool isShown(SceneKind kind) const { return shown_[static_cast<std::size_t>(kind)]; }
  void setCut(const LensCut& cut);
  [[nodiscard]] const LensCut& cut() const { return cut_; }
  /// 0: as built; 1: every panel moved outward by the focal distance.
  void setApart(double share);
  void setDoor(const DoorTurn& door);
  /// Glass as faint as a breath on a pane, so that the brass behind it is seen and met by clicks.
  void setGhosted(bool ghosted);
  [[nodiscard]] bool isGhosted() const { return ghosted_; }
  /// Brass parts that stand out.
  void setChosenParts(const QStringList& marks);
  [[nodiscard]] const QStringList& chosenParts() const { return chosen_parts_; }
  /// Whether a click meets these parts.
  void setPickable(SceneKind kind, bool pickable);
  void setSelection(const QStringList& marks);
  [[nodiscard]] const QStringList& selection() const { return selection_; }
  void setGap(const std::optional<Clearance>& gap);

  [[nodiscard]] bool has(const QString& mark) const { return pieces_.contains(mark); }
  [[nodiscard]] Handle(LensPiece) piece(const QString& mark) const { return pieces_.value(mark); }
  /// Where the mark of a part is pinned, lens frame.
  [[nodiscard]] std::optional<gp_Pnt> anchor(const QString& mark) const;
  /// The ends of the gap as they now stand.
  [[nodiscard]] std::optional<std::pair<gp_Pnt, gp_Pnt>> gapEnds() const;
  /// Corners of the boxes of these parts; of everything, rose included, when none is named.
  [[nodiscard]] std::vector<gp_Pnt> corners(const QStringList& marks) const;
  [[nodiscard]] const LensRose& rose() const { return rose_; }

 private:
  [[nodiscard]] gp_Vec shiftOf(const LensPart& part) const;
  [[nodiscard]] gp_Trsf moveOf(const LensPart& part) const;
  void moveAll();
  void paint(LensPiece& piece) const;
  void paintGlass(LensPiece& piece) const;
  void redrawRose();
  void redrawOutlines();
  void addOutline(const QString& mark, const QColor& colour);
  void redrawCut();
  void redrawGap();
  void put(Handle(LensLines) & held, const Handle(LensLines) & lines, int layer);

  LensGl& gl_;
  std::shared_ptr<const MeshedLens> lens_;
  QHash<QString, Handle(LensPiece)> pieces_;
  Handle(Graphic3d_ClipPlane) plane_;
  Handle(Graphic3d_SequenceOfHClipPlane) planes_;
  Handle(LensLines) rose_lines_, cut_lines_, gap_lines_;
  QHash<QString, Handle(LensLines)> outlines_;
  LensRose rose_;
  LensLooks looks_;
  LensCut cut_;
  DoorTurn door_;
  QStringList selection_;
  QStringList chosen_parts_;
  bool ghosted_ = false;
  std::optional<Clearance> gap_;
  double apart_ = 0;
  bool shown_[3] = {true, true, true};
};

}  // namespace prismwright
