#include "geometry/clearance_csv.h"

#include <fmt/format.h>

namespace prismwright {

std::string clearances_csv(const std::vector<Clearance>& clearances) {
  std::string text =
      "first,second,kind,gap_mm,needed_mm,overlap_mm3,verdict,first_x_mm,first_y_mm,first_z_mm,second_x_mm,"
      "second_y_mm,second_z_mm\n";
  for (const Clearance& c : clearances) {
    text += fmt::format("{},{},{},{:.4f},{:.4f},{:.4f},{},{:.4f},{:.4f},{:.4f},{:.4f},{:.4f},{:.4f}\n", c.first,
                        c.second, name_of(c.kind), c.gap_mm, c.needed_mm, c.overlap_mm3, name_of(c.verdict),
                        c.first_point.X(), c.first_point.Y(), c.first_point.Z(), c.second_point.X(),
                        c.second_point.Y(), c.second_point.Z());
  }
  return text;
}

}  // namespace prismwright
