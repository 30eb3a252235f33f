#include "ui/views/sheet_picture.h"

#include <QPainter>

#include "ui/style/palette.h"
#include "ui/views/sheet_painter.h"

namespace prismwright {

void SheetPicture::setSheet(std::optional<Sheet> sheet, bool keeps_view) {
  sheet_ = std::move(sheet);
  if (sheet_) reason_.clear();
  boxChanged(keeps_view);
}

void SheetPicture::setReason(const QString& reason) {
  reason_ = reason;
  sheet_.reset();
  boxChanged(false);
}

QRectF SheetPicture::box() const {
  return sheet_ ? QRectF(0, 0, sheet_->size.width_mm(), sheet_->size.height_mm()) : QRectF();
}

void SheetPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::paper());
  if (sheet_) return paint_sheet(painter, *sheet_, toPixels());
  painter.setPen(palette::muted_ink());
  painter.drawText(rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, reason_);
}

}  // namespace prismwright
