#pragma once

#include <QtGui/qwindowdefs.h>
#include <QPointF>
#include <QSize>
#include <QString>

#include <AIS_InteractiveContext.hxx>
#include <OpenGl_GraphicDriver.hxx>
#include <V3d_View.hxx>
#include <V3d_Viewer.hxx>

#include "ui/views/lens_gl.h"

namespace prismwright {

/// The OpenCASCADE side of LensGl: viewer, view and interactive context. Nothing here throws; what goes wrong
/// comes back as a sentence for the maker.
struct LensGl::Kernel {
  Handle(OpenGl_GraphicDriver) driver;
  Handle(V3d_Viewer) viewer;
  Handle(V3d_View) view;
  Handle(AIS_InteractiveContext) context;

  /// Makes viewer and context; no OpenGL context is needed yet.
  QString open();
  /// Takes over the current OpenGL context.
  QString start(bool core_profile, WId window, QSize size_px);
  /// Draws into the frame buffer that is bound; `quick` without smoothing and with `sharpness` drawn pixels
  /// per pixel each way.
  QString draw(bool quick, double sharpness);
  void close();

  [[nodiscard]] Handle(Graphic3d_Camera) camera() const { return view->Camera(); }
  Handle(Standard_Transient) pick(const QPointF& place_px);
};

}  // namespace prismwright
