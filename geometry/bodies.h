#pragma once

#include <memory>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/lens/plan.h"
#include "core/lens/trimmed_volume.h"
#include "geometry/prism_shape.h"

namespace prismwright {

/// A prism as a solid in the lens frame, mm.
struct PrismBody {
  std::string mark;
  TopoDS_Shape shape;  ///< one valid closed solid; congruent prisms share it, each with its own location
  double volume_mm3 = 0;
  double mass_g = 0;
  gp_Pnt centre_of_gravity_mm;
  double greatest_length_mm = 0;  ///< longest edge of a tight box round it: see greatest_length.h
};

/// Every prism of a lens as a solid, in the order of the plan.
struct LensBodies {
  std::vector<PrismBody> prisms;
  [[nodiscard]] const PrismBody* find(std::string_view mark) const;
};

/// Makes the solids of a plan. Congruent prisms (same shape_key) share one shape; shapes made before are kept
/// by key, so that an edit remakes what it touched and nothing else. Two threads share the work. Safe to use
/// from one worker thread at a time. A prism that cannot be made refuses the whole lens with its mark; work
/// that Progress stops answers a Problem of Trouble::stopped (what was made until then is kept for the next
/// call). Progress is called from the calling thread and its helper, never from both at once.
class BodyShop {
 public:
  BodyShop();
  ~BodyShop();
  Outcome<LensBodies> make(const LensPlan& plan, const Progress& progress = {});

  /// How many shapes the last call had to make anew.
  [[nodiscard]] int made_anew() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
