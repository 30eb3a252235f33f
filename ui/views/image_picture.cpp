#include "ui/views/image_picture.h"

#include <QPainter>

#include "ui/style/palette.h"

namespace prismwright {

void ImagePicture::setImage(const QImage& image) {
  const bool same_size = image.size() == image_.size();
  image_ = image;
  boxChanged(same_size);
}

QRectF ImagePicture::box() const { return {0, 0, double(image_.width()), double(image_.height())}; }

void ImagePicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::paper());
  if (image_.isNull()) return;
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.drawImage(toPixels().mapRect(box()), image_);
}

}  // namespace prismwright
