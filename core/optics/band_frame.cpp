#include "core/optics/band_frame.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

SectionOffset turned(SectionOffset d, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * d.r - s * d.z, s * d.r + c * d.z};
}

template <class OfPoint, class OfDirection>
Profile moved(Profile profile, OfPoint point, OfDirection direction) {
  for (Face& face : profile.faces) {
    for (SectionPoint& p : face.points) p = point(p);
    for (SectionDirection& t : face.tangents) t = direction(t);
    face.centre = point(face.centre);
  }
  return profile;
}

}  // namespace

SectionPoint BandFrame::out_of(SectionPoint section) const {
  if (is_section()) return section;
  return SectionPoint{} + turned(section - SectionPoint{0, focus_z_mm_}, aim_);
}

SectionPoint BandFrame::into_section(SectionPoint p) const {
  if (is_section()) return p;
  return SectionPoint{0, focus_z_mm_} + turned(p - SectionPoint{}, -aim_);
}

SectionDirection BandFrame::into_section(SectionDirection d) const {
  if (is_section()) return d;
  return SectionDirection::along(turned(1.0 * d, -aim_));
}

Profile BandFrame::into_section(Profile profile) const {
  if (is_section()) return profile;
  return moved(
      std::move(profile), [this](SectionPoint p) { return into_section(p); },
      [this](SectionDirection d) { return into_section(d); });
}

Profile BandFrame::out_of(Profile section) const {
  if (is_section()) return section;
  return moved(
      std::move(section), [this](SectionPoint p) { return out_of(p); },
      [this](SectionDirection d) { return SectionDirection::along(turned(1.0 * d, aim_)); });
}

ReflectingCorners BandFrame::into_section(ReflectingCorners k) const {
  return {into_section(k.a), into_section(k.b), into_section(k.c), k.beta - aim_, k.gamma - aim_};
}

BandFrame turning_frame(const SectionInput& input, Band band) {
  const BandAim aim = band_aim(input, band);
  return {aim.focus_z_mm, radians(aim.aim_deg)};
}

}  // namespace prismwright
