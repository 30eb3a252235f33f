#pragma once

#include <QOpenGLWidget>
#include <QTimer>
#include <memory>

#include "ui/views/lens_camera.h"

class AIS_InteractiveContext;

namespace prismwright {

/// Hosts an OpenCASCADE view in the window's own OpenGL widget: context, frame buffer, size, camera, mouse.
///
/// Whoever changes the scene does it between `begin()` and the end of the guard's life, so that what the
/// graphic card holds is freed with its context at hand. While the eye moves, pictures are drawn without
/// smoothing; a fifth of a second after the last move a smooth one follows.
class LensGl : public QOpenGLWidget {
  Q_OBJECT

 public:
  explicit LensGl(QWidget* parent = nullptr);
  ~LensGl() override;

  /// Why no 3D picture can be drawn here, as a sentence; empty when it can (as far as is known so far).
  [[nodiscard]] static QString troubleBeforehand();
  [[nodiscard]] const QString& trouble() const { return trouble_; }
  [[nodiscard]] bool started() const { return started_; }
  /// Pictures drawn so far.
  [[nodiscard]] int pictures() const { return pictures_; }
  /// Nothing moves and no smooth picture is owed.
  [[nodiscard]] bool settled() const { return !moving_; }

  /// Holds the OpenGL context current while the scene is changed.
  class Guard {
   public:
    explicit Guard(LensGl& gl);
    ~Guard();
    Guard(const Guard&) = delete;
    Guard& operator=(const Guard&) = delete;

   private:
    LensGl& gl_;
  };
  [[nodiscard]] Guard begin() { return Guard(*this); }
  [[nodiscard]] const Handle(AIS_InteractiveContext) & scene() const;

  [[nodiscard]] LensCamera& camera() { return camera_; }
  [[nodiscard]] const LensCamera& camera() const { return camera_; }
  /// The camera was changed by hand or by code: draws again.
  void cameraMoved(bool by_hand);

  /// Where a place of the lens frame lies in the widget; `in_front` false when it is behind the eye.
  [[nodiscard]] QPointF project(const gp_Pnt& place, bool* in_front = nullptr) const;
  /// The nearest pickable object under that place of the widget, or null.
  [[nodiscard]] Handle(Standard_Transient) pick(const QPointF& place);

 signals:
  void failed(const QString& sentence);
  void ready();  ///< OpenGL has started
  void drawn();  ///< a picture was drawn: overlays follow
  void clicked(const QPointF& place, bool add);
  void hovered(const QPointF& place);

 protected:
  void initializeGL() override;
  void paintGL() override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  /// Draws quickly now and smoothly a moment later.
  void hurry();
  void measure(qint64 drawing_ms);
  void fail(const QString& sentence);

  struct Kernel;
  std::unique_ptr<Kernel> kernel_;
  LensCamera camera_;
  QString trouble_;
  bool started_ = false;
  bool moving_ = false;
  bool slow_ = false;     ///< smooth pictures take so long that a change shows a quick one first
  double sharpness_ = 1;  ///< of quick pictures: drawn pixels per pixel of the screen, each way
  bool dragged_ = false;
  int pictures_ = 0;
  QPointF press_;
  QPointF last_;
  QTimer settle_;
};

}  // namespace prismwright
