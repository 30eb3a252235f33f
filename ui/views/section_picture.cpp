#include "ui/views/section_picture.h"

#include <QPainter>

#include "ui/style/palette.h"
#include "ui/views/section_rays.h"
#include "ui/views/section_scales.h"
#include "ui/views/section_strips.h"

namespace prismwright {
namespace {
// Enough to show every zone's work, few enough to see the glass between them.
constexpr int kFanRays = 84;
// Steps in which runs of one fate are looked for; fewer while a limit is dragged.
constexpr int kSteps = 2400;
constexpr int kQuickSteps = 400;
}  // namespace

void SectionPicture::follow(const Workbench& bench) {
  if (plan_ == bench.plan() && proof_ == bench.proof()) return;
  plan_ = bench.plan();
  proof_ = bench.proof();
  fresh_ = false;
  prisms_.clear();
  fan_ = {};
  if (!plan_) return;
  prisms_ = drawn_prisms(plan_->section);
  if (bench.tracer())
    fan_ = fan_of_rays(*bench.tracer(), plan_->section, kFanRays, bench.isPreviewing() ? kQuickSteps : kSteps);
}

void SectionPicture::setOverlay(std::shared_ptr<const Section> overlay) {
  if (!overlay && overlay_.empty()) return;
  overlay_.clear();
  if (overlay) overlay_ = drawn_prisms(*overlay);
  fresh_ = false;
}

const std::vector<LightStrip>& SectionPicture::beam() const {
  static const std::vector<LightStrip> kNone;
  return proof_ ? proof_->beam : kNone;
}

const QPixmap& SectionPicture::pixmap(const Look& look) {
  if (!fresh_ || !(look == look_)) draw(look);
  look_ = look;
  fresh_ = true;
  return pixmap_;
}

void SectionPicture::draw(const Look& look) {
  pixmap_ = QPixmap(look.size * look.ratio);
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
  paint_overlay(painter, overlay_, look.map);
  paint_marks(painter, prisms_, look.map, view.adjusted(kScaleLeft, 0, -kStripWidth, -kScaleFoot),
              look.selected);
  paint_strip(painter, beam(), look.map, view.adjusted(0, 0, 0, -kScaleFoot));
  painter.setOpacity(1);
  paint_scales(painter, look.map, view, look.inches);
}

}  // namespace prismwright
