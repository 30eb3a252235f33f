#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/optics/band_settings.h"
#include "core/optics/profile.h"

namespace prismwright {

/// How the power of a zone is put into its curved face.
enum class Faces { true_curve, arc };
/// How neighbouring refracting rings part: along the ray inside the glass, or level (older practice).
enum class Joint { along_ray, level };
/// The inner face of a refracting band that is turned about the lens axis: a hollow cylinder about that axis,
/// or in each panel one flat upright face square to the panel's axis at the focal distance.
enum class InnerFace { hollow, flat };

/// What the designer chooses about the section. Lengths in mm, angles in degrees seen from the focus.
/// Ranges and meanings stand in the quantity table (core/lens/quantities.h).
struct SectionSettings {
  Faces faces = Faces::true_curve;
  Joint joint = Joint::along_ray;
  InnerFace inner_face = InnerFace::hollow;
  double edge_mm = 4;                 ///< thickness of a refracting ring at its thin upper edge, along r
  double ring_growth_mm = 6.5;        ///< how much thicker than the edge a ring may get (division by thickness)
  double land_mm = 0.5;               ///< land of each corner of a reflecting prism that has none of its own
  CornerLand land_a, land_b, land_c;  ///< lands of the corners one by one
  double gap_mm = 0.5;                ///< setting gap between neighbours
  double refracting_to_deg = 28.5;    ///< the refracting band reaches this far above and below level
  std::vector<double> refracting_margins_mm;  ///< rising margins at the edge depth; empty: divided by the rule
  BandSettings refracting = divided(Division::thickness, 6);
  BandSettings upper = divided(Division::side, 12);
  BandSettings lower = divided(Division::side, 6);
  double upper_to_deg = 76.5;       ///< upper reflecting prisms reach this elevation; = refracting: none
  double lower_to_deg = 49.5;       ///< lower reflecting prisms reach this depression; = refracting: none
  double reflecting_chord_mm = 30;  ///< length of the entry side AB (division by entry side)
  std::optional<double>
      pair_radius_mm;  ///< of the hollow and full sides; blank: 4000 mm of the first order, scaled
  std::optional<double> upper_start_r_mm;  ///< corner A of the first upper prism; blank: from the last ring
  std::optional<double> upper_start_z_mm;
  double upper_rib_mm = 0;               ///< metal between the refracting band and the upper prisms; 0: none
  double lower_rib_mm = 0;               ///< the same below
  std::optional<double> rib_inner_r_mm;  ///< where those ribs begin, from the lens axis; blank: focal distance
  std::optional<double> rib_outer_r_mm;  ///< where they end; blank: at the outer edge of the last ring
  AimAt aim_at = AimAt::level;           ///< where the beam of every band goes that has no aim of its own
  double level_within_deg = 0.5;         ///< a ray that departs from its aim by no more counts as level

  [[nodiscard]] const BandSettings& of(Band band) const {
    return band == Band::refracting ? refracting : band == Band::upper ? upper : lower;
  }
  /// Curves of a band: its own, or the section's.
  [[nodiscard]] Faces faces_of(Band band) const {
    const BandFaces own = of(band).faces;
    if (own == BandFaces::as_section) return faces;
    return own == BandFaces::arc ? Faces::arc : Faces::true_curve;
  }
  [[nodiscard]] BandSettings& of(Band band) {
    return band == Band::refracting ? refracting : band == Band::upper ? upper : lower;
  }
};

struct SectionInput {
  double focal_mm = 250;
  double index = 1.4925;
  SectionSettings settings;
  double dip_deg = 0;  ///< of the sea horizon, for AimAt::horizon
  /// The refracting band turns about the upright lens axis: its inner face stays upright when the beam is
  /// aimed, and the lower image of a ring is worked out by itself. Else the band is turned as a whole.
  bool refracting_about_lens = false;
};

enum class ZoneKind { centre, ring, upper, lower };
std::string_view name_of(ZoneKind kind);  ///< "centre", "refracting", "upper reflecting", "lower reflecting"
inline bool is_refracting(ZoneKind kind) { return kind == ZoneKind::centre || kind == ZoneKind::ring; }

/// The three corners of a reflecting prism before lands are taken off, and its exact angles.
struct ReflectingCorners {
  SectionPoint a;    ///< outer-lower: entry and exit face meet
  SectionPoint b;    ///< inner: entry and reflecting face meet
  SectionPoint c;    ///< outer-upper: reflecting and exit face meet
  double beta = 0;   ///< direction of AB, radians
  double gamma = 0;  ///< direction of AC, radians
};

/// One zone of the section. A `ring` stands for its mirror image below the focal plane too; a `centre`
/// reaches from -to to +to. Lower prisms have negative elevations.
struct Zone {
  std::string mark;  ///< "C", "R1", "U01", "L01"
  ZoneKind kind = ZoneKind::centre;
  int number = 0;
  double from_deg = 0;  ///< lowest elevation served (from_deg < to_deg always)
  double to_deg = 0;
  Profile profile;                           ///< in the section frame; a ring's is its upper image
  std::optional<Profile> lower_image;        ///< of a ring where it is not the mirror image of `profile`
  std::optional<ReflectingCorners> corners;  ///< reflecting zones only (mirrored for lower ones)
  double thickness_mm = 0;  ///< greatest glass thickness along r (refracting) or |BC| chord (reflecting)
  double section_thickness_mm = 0;  ///< what the caster cares for: as thickness_mm (refracting), or the
                                    ///< diameter of the circle inside the three corners (reflecting)
  SectionPoint start_a;  ///< reflecting: the corner from which the prism was worked out (see PrismShape)
  double side_mm = 0;    ///< reflecting: length of the entry side it was worked out with
  bool locked = false;
};

/// The image of a ring below the focal plane.
Profile lower_image_of(const Zone& zone);

/// A horizontal metal rib between two bands, a rectangle of the section.
struct SectionRib {
  std::string mark;  ///< "upper rib", "lower rib"
  SectionPoint low;  ///< its corner of least r and z
  SectionPoint high;
};

/// A solved section: zones from the centre outward, then upper, then lower prisms.
struct Section {
  SectionInput input;
  std::vector<Zone> zones;
  double lowest_deg = 0;   ///< lowest elevation that any zone serves
  double highest_deg = 0;  ///< highest elevation that any zone serves
  std::vector<SectionRib> ribs;
  std::vector<std::string> notes;  ///< sentences on what could not be met as asked

  /// Focal point and aim of a zone's band. Elevations of a zone are seen from its band's focal point.
  [[nodiscard]] BandAim aim_of(ZoneKind kind) const;
  [[nodiscard]] const Zone* find(std::string_view mark) const;
};

/// Works out every zone of the section.
///
/// Refuses, with the zone and the reason, what cannot exist: margins that do not rise, lands that eat a
/// face, elevations at which the reflecting face would not reflect totally, a stack that cannot start.
/// Source of the equations: refracting_zone.h and reflecting_zone.h.
Outcome<Section> solve_section(const SectionInput& input);

/// Focal point and aim of a band as the settings have it.
BandAim band_aim(const SectionInput& input, Band band);
Band band_of(ZoneKind kind);

}  // namespace prismwright
