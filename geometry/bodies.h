#pragma once

#include <memory>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A prism as a solid in the lens frame, mm.
struct PrismBody {
  std::string mark;
  TopoDS_Shape shape;  ///< one valid closed solid
  double volume_mm3 = 0;
  double mass_g = 0;
  gp_Pnt centre_of_gravity_mm;
  double greatest_length_mm =
      0;  ///< longest edge of the smallest upright-turned box: what the printer must take
};

/// Every prism of a lens as a solid, in the order of the plan.
struct LensBodies {
  std::vector<PrismBody> prisms;
  [[nodiscard]] const PrismBody* find(std::string_view mark) const;
};

/// The solid of one prism in its panel's own frame (panel axis = +X), before it is turned to its azimuth.
///
/// True curves become B-splines through the profile's points with its end tangents. The trimmed volume is held
/// against the closed integral of the trimmed ring (trimmed_volume_mm3); a solid that differs by more than
/// 1e-4, is not closed, not valid or not exactly one is refused with its mark.
Outcome<TopoDS_Shape> prism_shape(const PlannedPrism& prism);

/// Volume of a trimmed ring by quadrature over its section, independent of the solid modeller, mm3 (within
/// 1e-5).
double trimmed_volume_mm3(const PlannedPrism& prism);

/// Makes the solids of a plan. Congruent prisms (same shape_key) share one shape; shapes made before are kept
/// by key, so that an edit remakes what it touched and nothing else. Safe to use from one worker thread at a
/// time.
class BodyShop {
 public:
  BodyShop();
  ~BodyShop();
  Outcome<LensBodies> make(const LensPlan& plan, const Progress& progress = {});

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
