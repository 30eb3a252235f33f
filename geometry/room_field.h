#pragma once

#include <functional>
#include <limits>
#include <vector>

#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "core/frame/plate_chain.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Distance from a place in a plane to a region bounded by lines and arcs; exact, in about the time that a look
/// at the few steps near it takes. Holes run clockwise.
class RegionField {
 public:
  explicit RegionField(const PlateRegion& region);
  /// Chains in any order; which side is inside is told by counting crossings.
  explicit RegionField(const std::vector<PlateChain>& chains);
  /// A region given by lines that together close round it, in any order and direction.
  static RegionField within(const std::vector<std::vector<PlatePoint>>& lines);

  struct Hit {
    double distance_mm = 0;
    PlatePoint foot;  ///< nearest place of the region
  };
  /// 0 inside the region.
  [[nodiscard]] Hit at(PlatePoint p) const;
  [[nodiscard]] bool holds(PlatePoint p) const;
  /// To the region's boundary, from either side of it.
  [[nodiscard]] Hit to_boundary(PlatePoint p) const;

  /// One step of the boundary as a place sees it. Over moves of up to a given reach the distance to the step
  /// changes by its slope, `turn` / 2 times the square of the move across the slope, and falls at most by `sag`
  /// / 2 times the move squared beside; its slope turns at most by `swing` times the move beside what `turn`
  /// says (1/mm; infinite where nothing can be said).
  struct Piece {
    double distance_mm = 0;
    PlatePoint foot;
    double turn_per_mm = 0;
    double sag_per_mm = 0;
    double swing_per_mm = 0;
  };
  /// Every step of the boundary within `within_mm` of the place.
  void each_near(PlatePoint p, double within_mm, double reach_mm,
                 const std::function<void(const Piece&)>& take) const;
  [[nodiscard]] const std::vector<PlateStep>& steps() const { return steps_; }
  [[nodiscard]] const std::vector<PlateExtent>& boxes() const { return boxes_; }  ///< of the steps

 private:
  RegionField() = default;
  void lay_bands();
  [[nodiscard]] int band_of(double v) const;

  std::vector<PlateStep> steps_;
  std::vector<PlateExtent> boxes_;
  std::vector<std::vector<int>> bands_;  // steps by height
  double low_ = 0;
  double band_mm_ = 1;
};

/// A smooth piece of a part as a place sees it. After a move m the distance to it is no less than
/// distance + away.m + sum of turns (per_mm (along.m)^2 / 2) - sag |m|^2 / 2, third order aside.
struct RoomPiece {
  double distance_mm = 0;
  gp_Vec away;  ///< unit vector from the foot
  struct Turn {
    gp_Vec along{0, 0, 0};  ///< unit vector
    double per_mm = 0;
  };
  Turn turns[2];
  double sag_per_mm = 0;    ///< infinite where nothing can be said
  double swing_per_mm = 0;  ///< how fast `away` turns beside what `turns` say
};

/// A part as the room round it: how far any place is from it, and where its nearest place is. The distance
/// never changes faster than the place does.
class RoomField {
 public:
  struct Hit {
    double distance_mm = 0;  ///< 0 within the part
    gp_Pnt foot;
  };
  virtual ~RoomField() = default;
  [[nodiscard]] virtual Hit at(const gp_Pnt& p) const = 0;
  /// False for a foot where the part has more cut away than the field knows of.
  [[nodiscard]] virtual bool counts(const gp_Pnt& /*foot*/) const { return true; }
  /// Pieces of the part's surface of which one is nearest wherever a move of up to `reach_mm` from the place
  /// leads, as far as they lie within `within_mm` of it. The place lies outside the part.
  virtual void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                         const std::function<void(const RoomPiece&)>& take) const = 0;
};

/// A layer of a plate in a frame of its own: a region of x and y, from one height z to another.
class LayerField : public RoomField {
 public:
  LayerField(const std::vector<PlateChain>& chains, double from_mm, double to_mm)
      : region_(chains), from_(from_mm), to_(to_mm) {}
  [[nodiscard]] Hit at(const gp_Pnt& p) const override;
  void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                 const std::function<void(const RoomPiece&)>& take) const override;
  [[nodiscard]] const RegionField& region() const { return region_; }
  [[nodiscard]] double from_mm() const { return from_; }
  [[nodiscard]] double to_mm() const { return to_; }

 private:
  void each_wall(const gp_Pnt& p, double off, double within_mm, double reach_mm,
                 const std::function<void(const RoomPiece&)>& take) const;

  RegionField region_;
  double from_;
  double to_;
};

/// A section turned all the way round: about Z (u the radius, v the height) or about X (u along it, v the
/// distance from it).
class TurnedField : public RoomField {
 public:
  TurnedField(const std::vector<PlateChain>& section, bool about_z) : section_(section), about_z_(about_z) {}
  [[nodiscard]] Hit at(const gp_Pnt& p) const override;
  void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                 const std::function<void(const RoomPiece&)>& take) const override;
  /// How far a place stands from the turned outline itself, inside or out.
  [[nodiscard]] double to_boundary(const gp_Pnt& p) const { return section_.to_boundary(flat(p)).distance_mm; }
  [[nodiscard]] const RegionField& section() const { return section_; }

 private:
  [[nodiscard]] PlatePoint flat(const gp_Pnt& p) const;

  RegionField section_;
  bool about_z_;
};

}  // namespace prismwright
