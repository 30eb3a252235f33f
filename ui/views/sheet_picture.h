#pragma once

#include <optional>

#include "core/drawing/drawing.h"
#include "ui/views/zoom_canvas.h"

namespace prismwright {

/// A sheet of a drawing as it will come on paper, enlarged and moved by hand; a sentence where there is none.
class SheetPicture : public ZoomCanvas {
  Q_OBJECT

 public:
  explicit SheetPicture(QWidget* parent) : ZoomCanvas(parent) {}

  /// `keeps_view`: the same thing, drawn anew.
  void setSheet(std::optional<Sheet> sheet, bool keeps_view);
  void setReason(const QString& reason);
  [[nodiscard]] const std::optional<Sheet>& sheet() const { return sheet_; }
  [[nodiscard]] const QString& reason() const { return reason_; }

 protected:
  [[nodiscard]] QRectF box() const override;
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<Sheet> sheet_;
  QString reason_;
};

}  // namespace prismwright
