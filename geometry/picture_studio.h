#pragma once

#include <memory>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/drawing/drawing.h"
#include "core/drawing/line_view.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "geometry/step_writer.h"

namespace prismwright {

/// A solid to be pictured, where it stands.
struct PicturePart {
  std::string name;
  TopoDS_Shape shape;  ///< congruent parts share it, each with its own location: meshed once
  PartStuff stuff = PartStuff::glass;
};
std::vector<PicturePart> picture_parts(const LensBodies& bodies, const std::vector<FrameBody>& metal);

/// From where a thing is looked at with parallel rays: the eye stands at this azimuth (anticlockwise from X)
/// and this elevation (90: from above, X to the right and Y up on the picture), far away.
struct PictureEye {
  double azimuth_deg = 0;
  double elevation_deg = 0;

  bool operator==(const PictureEye&) const = default;
};

/// Pictures and line views of solids, made without a screen. Solids are meshed once, when the studio is made;
/// each picture then takes a second or so. Rays are cast by Embree through the meshes.
class PictureStudio {
 public:
  /// `chord_mm`: greatest distance of a facet from its face. Refused: a solid that cannot be meshed; stopped.
  static Outcome<PictureStudio> of(const std::vector<PicturePart>& parts, double chord_mm,
                                   const Progress& progress = {});
  PictureStudio(PictureStudio&&) noexcept;
  PictureStudio& operator=(PictureStudio&&) noexcept;
  ~PictureStudio();

  /// A shaded picture on white paper, `wide` by `high` points, the whole thing in it with a margin: glass let
  /// through and layered, brass solid, fine edges, soft even light. The same solids give the same points.
  [[nodiscard]] Outcome<PointImage> picture(const PictureEye& eye, int wide, int high,
                                            const Progress& progress = {}) const;
  /// The visible edges (those of the solids' own edges, and the outlines of round faces), hidden ones left out.
  /// The lens's origin is the view's origin.
  [[nodiscard]] Outcome<LineView> lines(const PictureEye& eye, const Progress& progress = {}) const;

 private:
  struct Inside;
  explicit PictureStudio(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// The picture as a PNG file's bytes.
Outcome<std::string> png_bytes(const PointImage& image);

}  // namespace prismwright
