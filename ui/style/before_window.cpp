#include "ui/style/before_window.h"

#include <QCoreApplication>
#include <QSurfaceFormat>

namespace prismwright {

void prepare_for_drawing() {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "xcb");
  qputenv("QT_XCB_GL_INTEGRATION", "xcb_glx");
  QCoreApplication::setAttribute(Qt::AA_ShareOpenGLContexts);
  QSurfaceFormat format;
  format.setDepthBufferSize(24);
  format.setStencilBufferSize(8);
  format.setSamples(0);
  format.setProfile(QSurfaceFormat::CompatibilityProfile);
  format.setSwapInterval(0);
  QSurfaceFormat::setDefaultFormat(format);
}

}  // namespace prismwright
