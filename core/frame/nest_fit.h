#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "core/frame/frame_parts.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Turns are counted in steps of 15 deg.
inline constexpr int kTurnStep_deg = 15;
inline constexpr int kTurnSteps = 360 / kTurnStep_deg;

/// A plate as the nest sees it: its outline grown by half the spacing, with few corners. What is cut out of it
/// stays open where another part may stand in it.
struct NestShape {
  PlateChain outline;                ///< the true one
  PlateRegion ground;                ///< grown, with openings; not turned
  PlateOutline cover;                ///< the same without openings
  std::vector<PlateExtent> extents;  ///< of the true outline, by turn
};

/// The grown outline holds every point nearer to the plate than half of `spacing_mm`, and at most 3.5 mm
/// more (a tenth of a millimetre where the outline is simple).
NestShape nest_shape(const FlatPart& part, double spacing_mm);

/// Where the second of two shapes may not have its origin when the first stands at its own, by the turn of the
/// second against the first. Each pair is worked out once.
class MeetingPlaces {
 public:
  explicit MeetingPlaces(const std::vector<NestShape>& shapes) : shapes_(shapes) {}
  /// For the first shape at the origin turned by `first_turn` steps, the second by `second_turn` steps.
  PlateRegion of(std::size_t first, int first_turn, std::size_t second, int second_turn);

 private:
  const std::vector<NestShape>& shapes_;
  std::map<std::tuple<std::size_t, std::size_t, int>, PlateRegion> known_;
};

/// A shape that stands on a sheet.
struct LaidShape {
  std::size_t shape = 0;
  int turn = 0;
  PlatePoint shift;
};

/// What decides between free places: that the parts on the sheet together keep to the smallest upright
/// rectangle, that they keep low, or that they keep left. Among equals the lowest, then the leftmost is taken.
enum class NestAim { small_box, low, left };

/// One sheet while it fills.
class OpenSheet {
 public:
  OpenSheet(double width_mm, double height_mm, double edge_mm, NestAim aim)
      : width_mm_(width_mm), height_mm_(height_mm), edge_mm_(edge_mm), aim_(aim) {}

  /// The best free place of the shape in one of the turns; blank where there is none.
  std::optional<LaidShape> place(std::size_t shape, const std::vector<NestShape>& shapes,
                                 const std::vector<int>& turns, MeetingPlaces& meetings);
  void put(const LaidShape& standing, const std::vector<NestShape>& shapes);
  /// Area of the smallest upright rectangle round all parts on the sheet, mm2.
  [[nodiscard]] double box_area_mm2() const;

 private:
  struct Free {
    PlateRegion places;
    std::size_t counted = 0;  ///< so many of the parts on the sheet are taken off already
  };
  const PlateRegion& free_places(std::size_t shape, int turn, const std::vector<NestShape>& shapes,
                                 MeetingPlaces& meetings);
  [[nodiscard]] PlateRegion empty_sheet(const PlateExtent& part) const;
  /// The place without the little more than the sheet that lets a part which just fits have one.
  [[nodiscard]] PlatePoint on_sheet(PlatePoint place, const PlateExtent& part) const;

  double width_mm_;
  double height_mm_;
  double edge_mm_;
  NestAim aim_;
  std::vector<LaidShape> standing_;
  std::optional<PlateExtent> used_;
  std::map<std::pair<std::size_t, int>, Free> free_;
};

}  // namespace prismwright
