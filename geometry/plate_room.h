#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <gp_Trsf.hxx>

#include "core/frame/frame_plan.h"
#include "geometry/room_field.h"
#include "geometry/solid_form.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// The room round a flat part. Its brass is layers of flat outlines of lines and arcs, so the distance of a
/// place from it is exact and quick, where the kernel would look at a thousand faces. Sunk cones and bores are
/// no layers: places that come nearest to the brass that they take away do not count. Points are in the
/// plate's own frame (FlatPart). One PlateRoom may be asked from several threads.
class PlateRoom {
 public:
  /// `to_made` takes the plate's frame to the one in which its solid was made. Null where the solid is not the
  /// planned one: its corners must lie on the layers within 2e-4 mm and fill the same box.
  static std::shared_ptr<const PlateRoom> of(const FlatPart& part, const gp_Trsf& to_made,
                                             const SolidForm& form);

  [[nodiscard]] const gp_Trsf& to_made() const { return to_made_; }
  [[nodiscard]] const FlatPart& part() const { return part_; }
  /// The solid is taken by `place` from the frame that it was made in to the plate's. Blank where the nearest
  /// place cannot be told by layers, or is farther than `no_farther_mm`. Where they meet the gap is 0; the
  /// overlap is not worked out. Throws Standard_Failure.
  struct Found {
    std::optional<SolidGap> floor;  ///< to the brass under blind pockets
    std::optional<SolidGap> walls;  ///< to the rest
    bool sure = true;               ///< false: a nearest place could not be told
    std::vector<std::size_t>
        met;  ///< the layers that are nearer than kMeets_mm, or that it could not be told of
  };
  [[nodiscard]] Found gaps_to(const SolidForm& solid, const gp_Trsf& place) const;
  /// The gap to the nearest of the layers, sunk cones and bores filled: never too great by more than the search
  /// allows. Blank where it is over `no_farther_mm`.
  [[nodiscard]] std::optional<SolidGap> gap_filled(const SolidForm& solid, const gp_Trsf& place,
                                                   double no_farther_mm) const;
  /// Volume that the solid has in common with those layers that it was found to meet, mm3; what sunk cones and
  /// bores take away counts as brass. Blank where it surely has none in any of them, as it rests there with a
  /// flat face. Throws Standard_Failure.
  [[nodiscard]] std::optional<double> overlap_mm3(const SolidForm& solid, const gp_Trsf& place,
                                                  const std::vector<std::size_t>& met) const;
  [[nodiscard]] bool has_floor() const;

 private:
  // A layer that refuses feet in sunk cones and bores.
  class Layer : public LayerField {
   public:
    Layer(const std::vector<PlateChain>& chains, double from_mm, double to_mm, bool floor,
          const PlateRoom& room)
        : LayerField(chains, from_mm, to_mm), chains_(chains), floor_(floor), room_(room) {}
    [[nodiscard]] bool counts(const gp_Pnt& foot) const override { return !room_.is_taken_away(foot); }
    [[nodiscard]] bool is_floor() const { return floor_; }
    [[nodiscard]] const std::vector<PlateChain>& chains() const { return chains_; }

   private:
    std::vector<PlateChain> chains_;
    bool floor_;
    const PlateRoom& room_;
  };
  PlateRoom(const FlatPart& part, const gp_Trsf& to_made);
  [[nodiscard]] bool is_taken_away(const gp_Pnt& p) const;
  [[nodiscard]] bool fits(const SolidForm& form) const;

  FlatPart part_;
  gp_Trsf to_made_;
  std::vector<std::unique_ptr<Layer>> layers_;
};

/// A rib as it is planned without holes, as a flat part; its own frame is placed in the frame of plate_solid.
FlatPart flat_of(const RibPlan& rib);
/// From a rib's flat part's frame to the one of plate_solid.
gp_Trsf flat_to_rib(const RibPlan& rib);

}  // namespace prismwright
