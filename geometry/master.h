#pragma once

#include <memory>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/lens/plan.h"
#include "core/works/master_stretch.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// What a face of a master is.
struct MasterFace {
  std::string
      name;  ///< "outer", "entry", ..., of the profile; "end", "level joint" and "flat inner" of the trim
  bool optical = false;
  double stock_mm = 0;
};

/// The master of a prism: its solid with stock, stretched for shrinkage, in the frame in which the prism's own
/// solid is made (panel's axis = +X, origin at the focus; `stretch` says along what).
struct MasterBody {
  std::string name;      ///< as the caller calls it
  PlannedPrism prism;    ///< as designed
  PlannedPrism stocked;  ///< with stock: the casting as it leaves the mould
  TopoDS_Shape casting;  ///< solid of `stocked`
  TopoDS_Shape shape;    ///< the master: one valid closed solid
  MasterStretch stretch;
  double prism_mm3 = 0;
  double casting_mm3 = 0;
  double master_mm3 = 0;
  std::vector<MasterFace>
      faces;  ///< of `shape` (and of `casting`), in the order in which TopExp_Explorer meets them
};

/// The master of one prism. With equal factors it keeps analytic faces; else they are NURBS, which a stretch
/// carries exactly. Its volume is the casting's times the factors, the kernel's own within 1e-4 of it (code
/// "solid"), and it is checked as every prism's solid is. Refused: stock that cannot be put on
/// (stock_profile.h), a solid that cannot be made (code "solid").
Outcome<MasterBody> make_master(const PlannedPrism& prism, const std::string& name,
                                const WorksSettings& settings);

/// A word that is equal for prisms and settings that give the same master.
std::string master_key(const PlannedPrism& prism, const WorksSettings& settings);

/// Makes masters and keeps them by their key, so that prisms of one shape, and edits that do not touch them,
/// cost nothing. Answers share the solids. Safe to use from one thread at a time.
class MasterShop {
 public:
  MasterShop();
  ~MasterShop();
  Outcome<std::shared_ptr<const MasterBody>> make(const PlannedPrism& prism, const std::string& name,
                                                  const WorksSettings& settings);
  /// How many solids were made anew since the shop was opened.
  [[nodiscard]] int made_anew() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
