#include "ui/views/vessel_picture.h"

#include <QPainter>
#include <algorithm>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kBetweenShelves = 0.12;  // of the vessel's width

}  // namespace

VesselPicture::VesselPicture(QWidget* parent) : ZoomCanvas(parent) {
  setObjectName(QStringLiteral("works.vessel"));
  setMinimumSize(240, 160);
  connect(this, &ZoomCanvas::clicked, this, [this](const QPointF& place) {
    const QString master = masterAt(place);
    if (!master.isEmpty()) emit chosen(master);
  });
}

QPointF VesselPicture::shelfMiddle(int shelf) const { return {shelf * vessel_mm_ * (1 + kBetweenShelves), 0}; }

void VesselPicture::setLoad(const PlannedLoad* load, const std::vector<LoadPiece>& pieces, double vessel_mm,
                            const QString& reason) {
  moulds_.clear();
  feet_mm_.clear();
  reason_ = reason;
  vessel_mm_ = load != nullptr ? vessel_mm : 0;
  if (load != nullptr) {
    feet_mm_ = load->shelf_foot_mm;
    for (const LoadPlace& place : load->places) {
      const QPointF middle = shelfMiddle(place.shelf) + QPointF(place.x_mm, place.y_mm);
      moulds_.push_back({QString::fromStdString(pieces[place.piece].name),
                         QRectF(middle.x() - place.wide_mm / 2, middle.y() - place.long_mm / 2, place.wide_mm,
                                place.long_mm)});
    }
  }
  boxChanged(false);
}

void VesselPicture::setChosen(const QString& master) {
  chosen_ = master;
  update();
}

QString VesselPicture::masterAt(const QPointF& place_mm) const {
  for (const Mould& mould : moulds_)
    if (mould.ground.contains(place_mm)) return mould.master;
  return {};
}

QRectF VesselPicture::box() const {
  if (vessel_mm_ <= 0) return {};
  const auto shelves = static_cast<int>(std::max<std::size_t>(1, feet_mm_.size()));
  const double width = shelfMiddle(shelves - 1).x() + vessel_mm_;
  return {-vessel_mm_ / 2, -vessel_mm_ / 2, width, vessel_mm_};
}

void VesselPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::paper());
  if (vessel_mm_ <= 0) {
    painter.setPen(palette::muted_ink());
    painter.drawText(rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, reason_);
    return;
  }
  painter.setRenderHint(QPainter::Antialiasing);
  const QTransform to = toPixels();
  const double radius = pixelsPerMm() * vessel_mm_ / 2;
  for (std::size_t shelf = 0; shelf < feet_mm_.size(); ++shelf) {
    const QPointF middle = to.map(shelfMiddle(static_cast<int>(shelf)));
    painter.setPen(QPen(palette::muted_ink(), 1.5));
    painter.setBrush(palette::surface());
    painter.drawEllipse(middle, radius, radius);
    painter.setPen(palette::muted_ink());
    painter.drawText(QRectF(middle.x() - radius, middle.y() + radius + 2, 2 * radius, 20), Qt::AlignCenter,
                     tr("shelf at %1 mm").arg(feet_mm_[shelf], 0, 'f', 0));
  }
  QColor glass = palette::glass_fill();
  for (const Mould& mould : moulds_) {
    const bool picked = mould.master == chosen_;
    const QRectF ground = to.mapRect(mould.ground);
    painter.setPen(QPen(picked ? palette::sea() : palette::glass_edge(), picked ? 2.5 : 1));
    painter.setBrush(glass);
    painter.drawRect(ground);
    const QFontMetrics metrics = painter.fontMetrics();
    if (ground.width() < metrics.horizontalAdvance(mould.master) || ground.height() < metrics.height())
      continue;
    painter.setPen(palette::ink());
    painter.drawText(ground, Qt::AlignCenter, mould.master);
  }
}

}  // namespace prismwright
