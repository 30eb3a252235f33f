#include "ui/views/nest_picture.h"

#include <QPainter>
#include <QToolTip>

#include "ui/style/palette.h"
#include "ui/views/chain_path.h"

namespace prismwright {
namespace {

QPainterPath circle(const PlateHole& hole) {
  QPainterPath path;
  path.addEllipse(QPointF(hole.centre.u, hole.centre.v), 0.5 * hole.diameter_mm, 0.5 * hole.diameter_mm);
  return path;
}

/// A place within the brass to write at: the widest run of a few level lines.
QPointF inner_place(const QPainterPath& brass) {
  const QRectF box = brass.boundingRect();
  QPointF best = box.center();
  double widest = -1;
  constexpr int kLines = 9;
  constexpr int kSteps = 24;
  for (int i = 1; i < kLines; ++i) {
    const double v = box.top() + box.height() * i / kLines;
    int run = 0;
    for (int k = 1; k <= kSteps; ++k) {
      const bool inside = k < kSteps && brass.contains(QPointF(box.left() + box.width() * k / kSteps, v));
      if (inside) {
        ++run;
        continue;
      }
      const double width = run * box.width() / kSteps;
      if (run > 0 && width > widest) {
        widest = width;
        best = {box.left() + box.width() * (k - 0.5 * (run + 1)) / kSteps, v};
      }
      run = 0;
    }
  }
  return best;
}

}  // namespace

NestPicture::NestPicture(QWidget* parent) : ZoomCanvas(parent) {
  setObjectName(QStringLiteral("frame.nest"));
  setMinimumSize(240, 160);
  connect(this, &ZoomCanvas::clicked, this, [this](const QPointF& place) {
    const QString mark = markAt(place);
    if (!mark.isEmpty()) emit chosen(mark);
  });
}

void NestPicture::setSheet(const NestSheet* sheet, const std::vector<FlatPart>& flats, const QString& reason) {
  plates_.clear();
  reason_ = reason;
  size_ = sheet ? QSizeF(sheet->width_mm, sheet->height_mm) : QSizeF();
  if (sheet) {
    for (const NestedPart& nested : sheet->parts) {
      if (nested.flat >= flats.size()) continue;
      const FlatPart laid = laid_out(flats[nested.flat], nested);
      Plate plate;
      plate.mark = QString::fromStdString(nested.mark);
      plate.brass = chain_path(laid.outline);
      plate.brass.setFillRule(Qt::OddEvenFill);
      for (const PlateChain& opening : laid.openings) plate.brass.addPath(chain_path(opening));
      for (const PlateHole& hole : laid.holes) plate.brass.addPath(circle(hole));
      for (const PlatePocket& pocket : laid.pockets) plate.pockets.addPath(chain_path(pocket.outline));
      plate.middle = inner_place(plate.brass);
      plates_.push_back(std::move(plate));
    }
  }
  boxChanged(false);
}

void NestPicture::setChosen(const QStringList& marks) {
  chosen_ = marks;
  update();
}

QString NestPicture::markAt(const QPointF& place_mm) const {
  for (const Plate& plate : plates_)
    if (plate.brass.contains(place_mm)) return plate.mark;
  return {};
}

std::optional<QPointF> NestPicture::placeOf(const QString& mark) const {
  for (const Plate& plate : plates_)
    if (plate.mark == mark) return toPixels().map(plate.middle);
  return {};
}

QRectF NestPicture::box() const { return {QPointF(0, 0), size_}; }

void NestPicture::paintMark(QPainter& painter, const Plate& plate, const QTransform& to_pixels) const {
  const QRectF box = to_pixels.mapRect(plate.brass.boundingRect());
  const QFontMetrics metrics = painter.fontMetrics();
  const bool chosen = chosen_.contains(plate.mark);
  const int width = metrics.horizontalAdvance(plate.mark);
  // A plate too small for its mark stays bare; it is told of by the pointer and in the table.
  if (!chosen && (box.width() < 0.6 * width || box.height() < metrics.height())) return;
  const QPointF at = to_pixels.map(plate.middle);
  const QRectF ground(at.x() - 0.5 * width - 3, at.y() - 0.5 * metrics.height(), width + 6, metrics.height());
  QColor paper = palette::surface();
  paper.setAlphaF(0.85F);
  painter.fillRect(ground, chosen ? palette::sea() : paper);
  painter.setPen(chosen ? palette::on_sea() : palette::ink());
  painter.drawText(ground, Qt::AlignCenter, plate.mark);
}

void NestPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::paper());
  if (size_.isEmpty()) {
    painter.setPen(palette::muted_ink());
    painter.drawText(rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, reason_);
    return;
  }
  const QTransform to = toPixels();
  painter.setPen(QPen(palette::muted_ink(), 1.5));
  painter.setBrush(palette::surface());
  painter.drawRect(to.mapRect(box()));
  painter.setRenderHint(QPainter::Antialiasing);
  QColor brass = palette::brass();
  brass.setAlphaF(0.35F);
  for (const Plate& plate : plates_) {
    const bool chosen = chosen_.contains(plate.mark);
    painter.setPen(QPen(chosen ? palette::sea() : palette::ink(), chosen ? 2 : 1));
    painter.setBrush(brass);
    painter.drawPath(to.map(plate.brass));
    painter.setPen(QPen(palette::muted_ink(), 0.8));
    painter.setBrush(QBrush(palette::hairline(), Qt::BDiagPattern));
    painter.drawPath(to.map(plate.pockets));
  }
  for (const Plate& plate : plates_) paintMark(painter, plate, to);
}

}  // namespace prismwright
