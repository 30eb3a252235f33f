#pragma once

#include <array>
#include <memory>
#include <string>

namespace step_tracer {

using Vector = std::array<double, 3>;

/// What became of a ray that was sent through a solid.
struct TracedRay {
  bool met = false;    ///< the ray met the solid at all
  bool left = false;   ///< it came out again (not caught inside after twenty faces)
  int faces = 0;       ///< faces met on the way, the last one included
  int total = 0;       ///< of these, total reflections
  Vector direction{};  ///< unit vector after the last face
  Vector place{};      ///< where the last face was met, mm
};

/// A solid read from a STEP file, and rays traced through its faces as they stand in the file.
///
/// It shares no code with the designer: it knows nothing of sections, zones and profiles, and takes the places
/// and normals of the kernel's faces alone.
class StepTracer {
 public:
  explicit StepTracer(const std::string& step_path);
  ~StepTracer();

  /// The file held exactly one solid.
  [[nodiscard]] bool ready() const;
  /// Follows a ray from a place, unless said from the origin. `index` is that of the solid, in air of index 1.
  [[nodiscard]] TracedRay trace(const Vector& direction, double index, const Vector& from = {}) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace step_tracer
