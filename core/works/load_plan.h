#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/works/prism_size.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// Outside of a closed mould, mm.
struct MouldBox {
  double length_mm = 0;
  double depth_mm = 0;
  double height_mm = 0;
};
/// The box of a prism with mould walls all round.
MouldBox mould_box(const PrismSize& prism, double wall_mm);

/// Castings of one kind that are still to be made.
struct LoadPiece {
  std::string name;        ///< of the master
  int count = 0;           ///< castings, spares included
  MouldBox mould;          ///< outside
  double thickest_mm = 0;  ///< of the casting
  double casting_mm3 = 0;  ///< its own volume
  int moulds = 1;          ///< that there are of it: each fills once in a load
  /// Which way its gate looks is not known, so that it is laid whichever way fits. False: the box is the
  /// mould's own, its height upright with the gate up, and it is only ever turned about the upright.
  bool any_side_up = true;
};
/// A sentence on which moulds stand gate up by their own plans and which are laid as they fit because that is
/// not known; blank where nothing is to be cast.
std::string way_up_note(const std::vector<LoadPiece>& pieces);

/// What of the mould's box stands upright.
enum class Upward { height, depth, length };
const char* name_of(Upward upward);  ///< "standing", "on its back", "on end"

/// A mould in the vessel. x and y in mm from the vessel's axis, z from its floor.
struct LoadPlace {
  std::size_t piece = 0;  ///< index into the list that was planned
  int shelf = 0;          ///< from the floor, 0 first
  double x_mm = 0;        ///< middle of the box
  double y_mm = 0;
  double z_mm = 0;     ///< its foot
  double wide_mm = 0;  ///< along x
  double long_mm = 0;  ///< along y
  double high_mm = 0;
  Upward upward = Upward::height;
  bool turned = false;  ///< the longer of its two level edges lies along y
};

/// What is weighed out for one filling.
struct LoadMasses {
  double castings_mm3 = 0;
  double resin_g = 0;      ///< castings x (1 + head) x density of the syrup
  double initiator_g = 0;  ///< on the resin
  double tint_g = 0;       ///< on the resin
};

/// One filling of the vessel.
struct PlannedLoad {
  std::vector<LoadPlace> places;
  std::vector<double> shelf_foot_mm;  ///< height of each shelf's floor
  double thickest_mm = 0;
  double thinnest_mm = 0;
  LoadMasses masses;
  double filled_share = 0;  ///< moulds' volume on that of the vessel

  [[nodiscard]] int count_of(std::size_t piece) const;
};

/// Why the pieces of one kind fit in no load.
struct UnfitPiece {
  std::size_t piece = 0;
  double needs_diameter_mm = 0;  ///< least vessel that takes one, by its own best stand; spacing included
  double needs_height_mm = 0;
  std::string words;  ///< a sentence with sizes
};

struct LoadPlan {
  std::vector<PlannedLoad> loads;  ///< thickest castings first
  std::vector<UnfitPiece> unfit;
  int castings = 0;     ///< planned into loads
  int least_loads = 0;  ///< no plan can have fewer: by room, thickness and moulds (bounds, not a plan)
  LoadMasses masses;    ///< of all loads
};

/// Plans castings into fillings of the vessel: boxes upright on level shelves, set square to x or y, no nearer
/// than works.load_spacing_mm to each other, to the vessel's wall and to the shelf above (which takes that
/// room; the floor and the lid's height are the vessel's own). In one load the thickest casting is no more
/// than works.thickness_ratio times the thinnest, and no mould is filled twice.
///
/// A rule of thumb, not the best there is: shelves are filled row by row, best of several orders. Refuses
/// pieces with a count below 0, no moulds, or a box, thickness or volume that is not a number above 0.
Outcome<LoadPlan> plan_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works);

/// Masses for castings of this volume.
LoadMasses masses_for(double castings_mm3, const WorksSettings& works);

}  // namespace prismwright
