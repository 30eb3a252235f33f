#pragma once

#include "core/optics/profile.h"
#include "core/optics/section.h"

namespace prismwright {

/// The frame of a band: its focal point at the origin, its beam along +r. The section's frame is reached by
/// turning down by the aim and moving up to the focal point. Angles in radians.
class BandFrame {
 public:
  BandFrame() = default;
  BandFrame(double focus_z_mm, double aim) : focus_z_mm_(focus_z_mm), aim_(aim) {}

  [[nodiscard]] SectionPoint out_of(SectionPoint section) const;  ///< from the section's frame into this one
  [[nodiscard]] SectionPoint into_section(SectionPoint p) const;
  [[nodiscard]] SectionDirection into_section(SectionDirection d) const;
  [[nodiscard]] Profile into_section(Profile profile) const;
  [[nodiscard]] Profile out_of(Profile section) const;
  [[nodiscard]] ReflectingCorners into_section(ReflectingCorners corners) const;
  [[nodiscard]] bool is_section() const { return focus_z_mm_ == 0 && aim_ == 0; }
  [[nodiscard]] double aim() const { return aim_; }
  [[nodiscard]] double focus_z_mm() const { return focus_z_mm_; }

 private:
  double focus_z_mm_ = 0;
  double aim_ = 0;
};

/// The frame in which a panel-turned band's zones are whole rings about the turning axis.
BandFrame turning_frame(const SectionInput& input, Band band);

}  // namespace prismwright
