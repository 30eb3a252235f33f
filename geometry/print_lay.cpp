#include "geometry/print_lay.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "geometry/print_search.h"

namespace prismwright {

namespace {

PrintedFace printed(const MasterFace& face, const std::vector<SkinSample>& samples, std::size_t number,
                    SpaceVector up, double layer_mm) {
  PrintedFace printed{face, 0, 90, 0, 0, 0};
  for (const SkinSample& sample : samples) {
    if (sample.face != number) continue;
    const double level = std::min(1.0, std::abs(dot(sample.normal, up)));
    const double steep = degrees(std::acos(level));
    printed.area_mm2 += sample.area_mm2;
    printed.least_steep_deg = std::min(printed.least_steep_deg, steep);
    printed.most_steep_deg = std::max(printed.most_steep_deg, steep);
    printed.most_step_mm = std::max(printed.most_step_mm, layer_mm * level);
    printed.mean_step_mm += layer_mm * level * sample.area_mm2;
  }
  if (printed.area_mm2 > 0) printed.mean_step_mm /= printed.area_mm2;
  return printed;
}

gp_Trsf placed(const FoundLay& found, const PrintRoom& room) {
  gp_Trsf place;
  const double x = (room.width_mm - found.width_mm) / 2 - found.low_x_mm;
  const double y = (room.depth_mm - found.depth_mm) / 2 - found.low_y_mm;
  const SpaceFrame& f = found.frame;
  place.SetValues(f.first.x, f.first.y, f.first.z, x, f.second.x, f.second.y, f.second.z, y, f.third.x,
                  f.third.y, f.third.z, -found.low_z_mm);
  return place;
}

}  // namespace

PrintRoom print_room(const WorksSettings& settings) {
  return {settings.print_width_mm, settings.print_depth_mm, settings.print_height_mm};
}

std::optional<PrintLay> lay_solid(const TopoDS_Shape& solid, const std::vector<MasterFace>& faces,
                                  const PrintRoom& room, double layer_mm) {
  const PrintSearch search(solid, faces);
  const auto found = search.best(room);
  if (!found) return std::nullopt;
  PrintLay lay;
  lay.place = placed(*found, room);
  lay.width_mm = found->width_mm;
  lay.depth_mm = found->depth_mm;
  lay.height_mm = found->height_mm;
  double area = 0;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const PrintedFace face = printed(faces[i], search.samples(), i, found->frame.third, layer_mm);
    if (face.area_mm2 <= 0) continue;
    lay.faces.push_back(face);
    if (!face.face.optical) continue;
    area += face.area_mm2;
    lay.mean_optical_step_mm += face.mean_step_mm * face.area_mm2;
    lay.most_optical_step_mm = std::max(lay.most_optical_step_mm, face.most_step_mm);
  }
  if (area > 0) lay.mean_optical_step_mm /= area;
  return lay;
}

}  // namespace prismwright
