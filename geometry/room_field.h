#pragma once

#include <vector>

#include <gp_Pnt.hxx>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Distance from a place in a plane to a region bounded by polygons; exact, in about the time that a look at
/// the few segments near it takes. Holes run clockwise.
class RegionField {
 public:
  explicit RegionField(const PlateRegion& region);
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

 private:
  struct Segment {
    PlatePoint from;
    PlatePoint to;
  };
  RegionField() = default;
  void lay_bands();
  [[nodiscard]] int band_of(double v) const;

  std::vector<Segment> segments_;
  std::vector<std::vector<int>> bands_;  // segments by height
  double low_ = 0;
  double band_mm_ = 1;
};

/// A part as the room round it: how far any place is from it, and where its nearest place is. The distance
/// never changes faster than the place does.
class RoomField {
 public:
  struct Hit {
    double distance_mm = 0;
    gp_Pnt foot;
  };
  virtual ~RoomField() = default;
  [[nodiscard]] virtual Hit at(const gp_Pnt& p) const = 0;
};

/// A layer of a plate in the plate's own frame (plate_solid.h): a region from one depth to another.
class LayerField : public RoomField {
 public:
  LayerField(const PlateRegion& region, double from_mm, double to_mm, Side side)
      : region_(region), from_(from_mm), to_(to_mm), hand_(side == Side::clockwise ? 1 : -1) {}
  [[nodiscard]] Hit at(const gp_Pnt& p) const override;

 private:
  RegionField region_;
  double from_;
  double to_;
  double hand_;
};

/// A section turned all the way round: about Z (u the radius, v the height) or about X (u along it, v the
/// distance from it).
class TurnedField : public RoomField {
 public:
  TurnedField(const PlateRegion& section, bool about_z) : section_(section), about_z_(about_z) {}
  [[nodiscard]] Hit at(const gp_Pnt& p) const override;
  /// How far a place stands from the turned outline itself, inside or out.
  [[nodiscard]] double to_boundary(const gp_Pnt& p) const { return section_.to_boundary(flat(p)).distance_mm; }

 private:
  [[nodiscard]] PlatePoint flat(const gp_Pnt& p) const;

  RegionField section_;
  bool about_z_;
};

}  // namespace prismwright
