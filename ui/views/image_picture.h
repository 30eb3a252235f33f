#pragma once

#include <QImage>

#include "ui/views/zoom_canvas.h"

namespace prismwright {

/// A picture of pixels, enlarged and moved by hand.
class ImagePicture : public ZoomCanvas {
  Q_OBJECT

 public:
  explicit ImagePicture(QWidget* parent) : ZoomCanvas(parent) {}

  void setImage(const QImage& image);
  [[nodiscard]] const QImage& image() const { return image_; }

 protected:
  [[nodiscard]] QRectF box() const override;  ///< one unit a pixel
  void paintEvent(QPaintEvent* event) override;

 private:
  QImage image_;
};

}  // namespace prismwright
