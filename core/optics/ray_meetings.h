#pragma once

#include <optional>

#include "core/optics/section_pieces.h"

namespace prismwright {

/// A face that a ray meets.
struct FoundFace {
  std::size_t face = 0;
  FaceHit hit;
};

/// The face through which a ray enters (from outside) or next meets (from inside, having left `leaving`) a
/// piece. A ray that runs along a face does not meet it.
std::optional<FoundFace> nearest_face(const PieceCurves& piece, SectionPoint from, SectionDirection ray,
                                      bool entering, const FoundFace* leaving = nullptr);

/// Where a ray first meets the metal of a rib.
struct RibHit {
  const SectionRib* rib = nullptr;
  double along_mm = 0;
};

RibHit first_rib(const std::vector<SectionRib>& ribs, SectionPoint from, SectionDirection ray);

/// Where a ray that left `piece` along its aim (within the level tolerance) runs into other glass. Exact, yet
/// cheap: only pieces that reach before the beam of `piece` are looked at, and of these only the ones whose
/// extent the ray cuts.
std::optional<FaceHit> glass_before(const PieceCurves& piece, SectionPoint from, SectionDirection ray);

}  // namespace prismwright
