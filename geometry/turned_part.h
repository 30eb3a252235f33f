#pragma once

#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/room_field.h"
#include "geometry/solid_form.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// A prism, a screw, a tube or a turned bar as what it is: a section turned about a line, and for prisms cut.
/// The distance of any place from it is that from the turned section, as long as the nearest place lies within
/// the cuts; where it is cut away, that from the flat faces that the cuts leave.
class TurnedPart {
 public:
  /// The modeller may set a cut back by a thousandth where it must: places so near a cut count as within, mm.
  static constexpr double kCutSlack_mm = 2e-3;

  /// The prism or turned bar by its plan and the solid as it was made (panel's axis along +X), or null where
  /// the solid is not the planned one: every corner of it must lie on the turned profile within 2e-4 mm and
  /// within the cuts.
  static std::shared_ptr<const TurnedPart> of(const PlannedPrism& prism,
                                              const std::shared_ptr<const SolidForm>& form);
  /// A turned bar with bores: its corners must not lie outside the turned profile and the cuts.
  static std::shared_ptr<const TurnedPart> of(const TurnedBar& bar,
                                              const std::shared_ptr<const SolidForm>& form);
  /// A screw, pin or tube about the Z axis of `place`, which takes that frame to the one the solid was made in.
  static std::shared_ptr<const TurnedPart> of(const RoundPart& round, const gp_Trsf& place,
                                              const std::shared_ptr<const SolidForm>& form);

  /// From the part's own frame (that of its turning axis) to the frame in which its solid was made.
  [[nodiscard]] const gp_Trsf& to_made() const { return to_made_; }
  [[nodiscard]] const SolidForm& form() const { return *form_; }
  /// No cuts: it looks the same from every side.
  [[nodiscard]] bool is_round() const { return !trim_; }
  /// The screw, pin or tube that it was made from, if it was.
  [[nodiscard]] const std::optional<RoundPart>& round() const { return round_; }
  [[nodiscard]] bool has_bores() const { return !bores_.empty(); }
  /// Whether a place on the turned section, in the part's frame, lies within the cuts.
  [[nodiscard]] bool within_cuts(const gp_Pnt& p, double slack_mm = kCutSlack_mm) const;

  /// Gap to another solid, taken by `place` from the frame that it was made in to this part's; points in this
  /// part's frame. Blank where it is over `no_farther_mm`, or the nearest place lies in a bore. Of two that
  /// meet the overlap is not worked out.
  [[nodiscard]] std::optional<SolidGap> gap_from(
      const SolidForm& other, const gp_Trsf& place,
      double no_farther_mm = std::numeric_limits<double>::max()) const;
  /// Gap to a part that is turned about the same line: that of the two sections, wherever a half plane through
  /// the line meets both within their cuts. Blank where none does, or where the sections meet.
  [[nodiscard]] std::optional<SolidGap> gap_from_coaxial(const TurnedPart& other) const;

 private:
  TurnedPart(const PlateChain& section, bool about_z, std::optional<Trim> trim, double dip,
             const gp_Trsf& to_made, std::shared_ptr<const SolidForm> form);
  [[nodiscard]] bool corners_fit(bool inside_too = false) const;
  [[nodiscard]] bool in_a_bore(const gp_Pnt& p) const;
  [[nodiscard]] gp_Pnt at_angle(PlatePoint p, double angle) const;

  // The turned section within its cuts, and the flat faces that the cuts leave.
  class CutField : public TurnedField {
   public:
    CutField(const PlateChain& section, bool about_z, const TurnedPart& part)
        : TurnedField({section}, about_z), part_(part) {}
    [[nodiscard]] Hit at(const gp_Pnt& p) const override;
    [[nodiscard]] bool counts(const gp_Pnt& foot) const override { return !part_.in_a_bore(foot); }
    void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                   const std::function<void(const RoomPiece&)>& take) const override;

   private:
    const TurnedPart& part_;
  };
  // A flat face that a cut leaves as a layer without thickness, in its own plane's frame. Flat faces of the
  // section itself are part of the turned field: told as well by a rim of chords, they would lie nearer than
  // it.
  struct FlatFace {
    gp_Trsf to_plane;
    gp_Trsf to_part;
    LayerField layer;
  };
  [[nodiscard]] bool is_cut(const CapFace& cap) const;
  void find_flats();

  CutField field_;
  std::vector<FlatFace> flats_;
  bool about_z_;
  std::optional<Trim> trim_;
  double dip_;
  gp_Trsf to_made_;
  std::shared_ptr<const SolidForm> form_;
  std::optional<RoundPart> round_;
  std::vector<PlateBore> bores_;  // in the frame that the solid was made in
};

}  // namespace prismwright
