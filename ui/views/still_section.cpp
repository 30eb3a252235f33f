#include "ui/views/still_section.h"

#include <QPainter>

#include "ui/style/palette.h"
#include "ui/views/section_rays.h"
#include "ui/views/section_scales.h"
#include "ui/views/section_strips.h"

namespace prismwright {
namespace {
// Enough to show every zone's work, few enough to see the glass between them.
constexpr int kFanRays = 84;
}  // namespace

void StillSection::follow(const Workbench& bench) {
  if (plan_ == bench.plan() && proof_ == bench.proof()) return;
  plan_ = bench.plan();
  proof_ = bench.proof();
  fresh_ = false;
  prisms_.clear();
  fan_ = {};
  if (!plan_) return;
  prisms_ = drawn_prisms(plan_->section);
  if (bench.tracer() && proof_) fan_ = fan_of_rays(*bench.tracer(), plan_->section, *proof_, kFanRays);
}

void StillSection::setOverlays(const std::vector<SectionOverlay>& overlays) {
  if (overlays.empty() && overlays_.empty()) return;
  overlays_.clear();
  for (const SectionOverlay& overlay : overlays) overlays_.push_back(drawn_prisms(*overlay.section));
  fresh_ = false;
}

const std::vector<LightStrip>& StillSection::beam() const {
  static const std::vector<LightStrip> kNone;
  return proof_ ? proof_->beam : kNone;
}

const QPixmap& StillSection::pixmap(const Look& look) {
  if (!fresh_ || !(look == look_)) draw(look);
  look_ = look;
  fresh_ = true;
  return pixmap_;
}

void StillSection::draw(const Look& look) {
  const QSize pixels = look.size * look.ratio;
  if (pixmap_.size() != pixels) pixmap_ = QPixmap(pixels);
  pixmap_.setDevicePixelRatio(look.ratio);
  pixmap_.fill(palette::surface());
  QPainter painter(&pixmap_);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF view(QPointF(0, 0), QSizeF(look.size));
  paint_grid(painter, look.map, view, look.inches);
  if (look.faded) painter.setOpacity(0.3);
  painter.setRenderHint(QPainter::Antialiasing, !look.moving);
  paint_fan(painter, fan_.rays, look.map, view);
  painter.setRenderHint(QPainter::Antialiasing);
  paint_glass(painter, prisms_, look.map, look.selected);
  if (plan_) paint_ribs(painter, plan_->section.ribs, look.map);
  for (std::size_t i = 0; i < overlays_.size(); ++i)
    paint_overlay(painter, overlays_[i], look.map, i == 0 ? Qt::DashLine : Qt::DotLine);
  paint_marks(painter, prisms_, look.map, view.adjusted(kScaleLeft, 0, -kStripWidth, -kScaleFoot),
              look.selected);
  paint_strip(painter, beam(), look.map, view.adjusted(0, 0, 0, -kScaleFoot));
  painter.setOpacity(1);
  paint_scales(painter, look.map, view, look.inches);
}

}  // namespace prismwright
