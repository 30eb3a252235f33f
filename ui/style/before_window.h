#pragma once

namespace prismwright {

/// What has to stand before the QApplication is made: the 3D view draws through GLX, so the window speaks X11,
/// shares its OpenGL contexts and asks for a compatible surface.
void prepare_for_drawing();

}  // namespace prismwright
