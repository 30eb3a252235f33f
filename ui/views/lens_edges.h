#pragma once

#include <Graphic3d_ArrayOfSegments.hxx>

namespace prismwright {

/// The same lines with fewer segments: chains of segments are drawn through as few of their points as keep
/// every left-out point within `within_mm` of the line. Ends and forks stay. Null stays null.
///
/// A drawn pocket is a polygon of thousands of short sides; each side costs as much to draw as a long line.
Handle(Graphic3d_ArrayOfSegments) simplified(const Handle(Graphic3d_ArrayOfSegments) & lines, double within_mm);

}  // namespace prismwright
