#pragma once

#include <optional>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/space.h"
#include "geometry/print_lay.h"

namespace prismwright {

/// A small piece of a solid's skin.
struct SkinSample {
  SpaceVector normal;  ///< unit, out of the solid
  double area_mm2 = 0;
  std::size_t face = 0;  ///< in the order of TopExp_Explorer
};

/// A way to lay a solid: its upright is `frame.third`. Lows and sizes are those of its box along the frame.
struct FoundLay {
  SpaceFrame frame;
  double low_x_mm = 0;
  double low_y_mm = 0;
  double low_z_mm = 0;
  double width_mm = 0;
  double depth_mm = 0;
  double height_mm = 0;
  double level = 0;  ///< mean over the optical faces of the cosine of their steepness
};

/// Looks for the best way to lay a solid in a printer (print_lay.h).
class PrintSearch {
 public:
  PrintSearch(const TopoDS_Shape& solid, const std::vector<MasterFace>& faces);

  [[nodiscard]] std::optional<FoundLay> best(const PrintRoom& room) const;
  [[nodiscard]] const std::vector<SkinSample>& samples() const { return samples_; }

 private:
  void take_face(const TopoDS_Shape& face, std::size_t number);
  [[nodiscard]] std::vector<SpaceVector> directions() const;
  [[nodiscard]] double level_of(SpaceVector up) const;
  [[nodiscard]] std::optional<FoundLay> fitted(SpaceVector up, double level, const PrintRoom& room) const;
  [[nodiscard]] FoundLay followed(FoundLay found, const PrintRoom& room) const;

  std::vector<SkinSample> samples_;
  std::vector<SkinSample> optical_;
  std::vector<SpacePoint> places_;
  double optical_mm2_ = 0;
};

}  // namespace prismwright
