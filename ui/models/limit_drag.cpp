#include "ui/models/limit_drag.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

// No hand sets a limit finer on a screen; keeps the tail of the pointer's place out of the book.
constexpr double kFinest_deg = 0.01;

}  // namespace

std::optional<LimitGrip> limit_grip(const Section& section, const QString& zone) {
  const Zone* found = section.find(zone.toStdString());
  if (!found) return std::nullopt;
  LimitGrip grip;
  grip.focus = {0, section.aim_of(found->kind).focus_z_mm};
  grip.limit_deg = found->kind == ZoneKind::lower ? found->from_deg : found->to_deg;
  if (found->corners) {
    grip.place = found->corners->b;
    return grip;
  }
  const Face* inner = found->profile.find(FaceRole::inner);
  if (!inner) return std::nullopt;
  grip.place = inner->start().z > inner->end().z ? inner->start() : inner->end();
  return grip;
}

LimitDrag::LimitDrag(Workbench* bench, QObject* parent) : QObject(parent), bench_(bench) {
  soon_.setSingleShot(true);
  soon_.setInterval(0);
  connect(&soon_, &QTimer::timeout, this, &LimitDrag::tryWanted);
  // Another edit or book in the middle of a drag: nothing is held any more.
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, [this] {
      plan_.reset();
      good_.reset();
    });
}

bool LimitDrag::allows(const QString& zone) const {
  if (!bench_->hasBook() || bench_->book().read_only() || bench_->sectionProblem() || !bench_->plan())
    return false;
  const Zone* found = bench_->plan()->section.find(zone.toStdString());
  return found && !found->locked;
}

void LimitDrag::take(const QString& zone) {
  if (!allows(zone)) return;
  zone_ = zone;
  plan_ = bench_->plan();
  wanted_deg_.reset();
  good_.reset();
  refusal_.clear();
  emit moved();
}

void LimitDrag::moveTo(SectionPoint place) {
  const auto grip = isHeld() ? limit_grip(plan_->section, zone_) : std::nullopt;
  if (!grip) return;
  const double angle = degrees(std::atan2(place.z - grip->focus.z, std::max(place.r, 1e-6)));
  const double outward = grip->limit_deg < 0 ? -angle : angle;
  wanted_deg_ = std::round(outward / kFinest_deg) * kFinest_deg;
  soon_.start();
}

void LimitDrag::tryWanted() {
  soon_.stop();
  if (!isHeld() || !wanted_deg_) return;
  const double wanted = *std::exchange(wanted_deg_, std::nullopt);
  const auto edit = resize_zone(plan_->values, plan_->section, zone_.toStdString(), SizeBy::to_deg, wanted);
  const Done shown = edit ? bench_->preview(edit->assignments) : Done(edit.problem());
  refusal_ = shown ? QString() : sentence_of(shown.problem());
  if (shown) good_ = *edit;
  emit moved();
}

void LimitDrag::letGo() {
  tryWanted();
  const auto edit = std::exchange(good_, std::nullopt);
  putBack();
  if (edit) (void)bench_->edit(*edit);
}

void LimitDrag::putBack() {
  soon_.stop();
  plan_.reset();
  good_.reset();
  refusal_.clear();
  bench_->dropPreview();
  emit moved();
}

}  // namespace prismwright
