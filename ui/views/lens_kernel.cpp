#include "ui/views/lens_kernel.h"

#include <QCoreApplication>
#include <QGuiApplication>
#include <cmath>

#include <Aspect_DisplayConnection.hxx>
#include <Aspect_NeutralWindow.hxx>
#include <OpenGl_Context.hxx>
#include <OpenGl_FrameBuffer.hxx>
#include <OpenGl_View.hxx>
#include <OpenGl_Window.hxx>
#include <Standard_Failure.hxx>
#include <StdSelect_ViewerSelector3d.hxx>
#include <V3d_AmbientLight.hxx>
#include <V3d_DirectionalLight.hxx>

#include "ui/style/palette.h"
#include "ui/views/lens_colour.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("LensGl", text); }

QString no_start() {
  return words(
      QT_TRANSLATE_NOOP("LensGl",
                        "The 3D view could not start OpenGL on this display. Check the graphics driver; "
                        "every other page works without it."));
}

/// The window's frame buffer holds finished colours: the hardware must not turn them once more.
class WindowFrameBuffer : public OpenGl_FrameBuffer {
  DEFINE_STANDARD_RTTI_INLINE(WindowFrameBuffer, OpenGl_FrameBuffer)

 public:
  void BindBuffer(const Handle(OpenGl_Context) & gl) override {
    OpenGl_FrameBuffer::BindBuffer(gl);
    gl->SetFrameBufferSRGB(true, false);
  }
  void BindDrawBuffer(const Handle(OpenGl_Context) & gl) override {
    OpenGl_FrameBuffer::BindDrawBuffer(gl);
    gl->SetFrameBufferSRGB(true, false);
  }
};

/// The window's own connection: one that we opened and closed would take the window's OpenGL context with it.
Handle(Aspect_DisplayConnection) display_of_window() {
  const auto* x11 = qApp->nativeInterface<QNativeInterface::QX11Application>();
  if (!x11 || !x11->display()) return nullptr;
  return new Aspect_DisplayConnection(reinterpret_cast<Aspect_XDisplay*>(x11->display()));
}

void light(const Handle(V3d_Viewer) & viewer) {
  const Handle(V3d_DirectionalLight) eye = new V3d_DirectionalLight(gp_Dir(0.25, -0.3, -1), Quantity_NOC_WHITE);
  eye->SetHeadlight(true);
  eye->SetIntensity(0.7f);
  const Handle(V3d_AmbientLight) all_round = new V3d_AmbientLight(Quantity_NOC_WHITE);
  all_round->SetIntensity(0.4f);
  viewer->AddLight(eye);
  viewer->AddLight(all_round);
  viewer->SetLightOn(eye);
  viewer->SetLightOn(all_round);
}

}  // namespace

QString LensGl::Kernel::open() {
  try {
    const Handle(Aspect_DisplayConnection) display = display_of_window();
    if (display.IsNull()) return no_start();
    driver = new OpenGl_GraphicDriver(display, false);
    driver->ChangeOptions().buffersNoSwap = true;
    driver->ChangeOptions().buffersOpaqueAlpha = true;
    driver->ChangeOptions().useSystemBuffer = false;
    viewer = new V3d_Viewer(driver);
    viewer->SetDefaultBackgroundColor(kernel_colour(palette::surface()));
    light(viewer);
    context = new AIS_InteractiveContext(viewer);
    view = viewer->CreateView();
    view->SetImmediateUpdate(false);
    view->ChangeRenderingParams().ToShowStats = false;
    return {};
  } catch (const Standard_Failure&) {
    return no_start();
  }
}

QString LensGl::Kernel::start(bool core_profile, WId window, QSize size_px) {
  try {
    const Handle(OpenGl_Context) gl = new OpenGl_Context();
    if (!gl->Init(core_profile)) return no_start();
    const Handle(Aspect_NeutralWindow) pane = new Aspect_NeutralWindow();
    pane->SetVirtual(true);
    pane->SetNativeHandle(static_cast<Aspect_Drawable>(window));
    pane->SetSize(size_px.width(), size_px.height());
    view->SetWindow(pane, gl->RenderingContext());
    return {};
  } catch (const Standard_Failure&) {
    return no_start();
  }
}

QString LensGl::Kernel::draw(bool quick, double sharpness) {
  try {
    const Handle(OpenGl_View) drawing = Handle(OpenGl_View)::DownCast(view->View());
    const Handle(OpenGl_Context) gl = drawing->GlWindow()->GetGlContext();
    Handle(OpenGl_FrameBuffer) buffer = gl->DefaultFrameBuffer();
    if (buffer.IsNull()) {
      buffer = new WindowFrameBuffer();
      gl->SetDefaultFrameBuffer(buffer);
    }
    if (!buffer->InitWrapper(gl)) return no_start();
    Graphic3d_Vec2i before;
    view->Window()->Size(before.x(), before.y());
    const Graphic3d_Vec2i now(buffer->GetVPSizeX(), buffer->GetVPSizeY());
    if (now != before) {
      Handle(Aspect_NeutralWindow)::DownCast(view->Window())->SetSize(now.x(), now.y());
      view->MustBeResized();
    }
    Graphic3d_RenderingParams& how = view->ChangeRenderingParams();
    how.NbMsaaSamples = quick ? 0 : 4;
    how.RenderResolutionScale = quick ? static_cast<float>(sharpness) : 1.0f;
    how.TransparencyMethod = quick ? Graphic3d_RTM_BLEND_UNORDERED : Graphic3d_RTM_BLEND_OIT;
    view->Invalidate();
    view->Redraw();
    gl->BindProgram(Handle(OpenGl_ShaderProgram)());
    return {};
  } catch (const Standard_Failure&) {
    return no_start();
  }
}

void LensGl::Kernel::close() {
  try {
    if (!context.IsNull()) context->RemoveAll(false);
    if (!view.IsNull()) view->Remove();
  } catch (const Standard_Failure&) {  // nothing is left to be done for a view that is going
  }
  context.Nullify();
  view.Nullify();
  viewer.Nullify();
  driver.Nullify();
}

Handle(Standard_Transient) LensGl::Kernel::pick(const QPointF& place_px) {
  try {
    const Handle(StdSelect_ViewerSelector3d)& selector = context->MainSelector();
    view->AutoZFit();  // the eye may have moved since the last picture
    selector->Pick(static_cast<int>(place_px.x()), static_cast<int>(place_px.y()), view);
    if (selector->NbPicked() == 0) return nullptr;
    return selector->Picked(1)->Selectable();
  } catch (const Standard_Failure&) {
    return nullptr;
  }
}

}  // namespace prismwright
