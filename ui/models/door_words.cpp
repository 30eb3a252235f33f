#include "ui/models/door_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("DoorWords", text); }

QString degrees_shown(double deg) { return tr("%1°").arg(deg, 0, 'f', 1); }

QString pair_words(const DoorStep& step) {
  return tr("%1 to %2").arg(QString::fromStdString(step.first), QString::fromStdString(step.second));
}

}  // namespace

const DoorStep* door_step_at(const DoorSweep& sweep, double angle_deg) {
  if (sweep.steps.empty() || angle_deg > sweep.free_deg + kDoorFree_deg) return nullptr;
  const auto nearer = [&](const DoorStep& a, const DoorStep& b) {
    return std::abs(a.angle_deg - angle_deg) < std::abs(b.angle_deg - angle_deg);
  };
  return &*std::min_element(sweep.steps.begin(), sweep.steps.end(), nearer);
}

QString door_words(const DoorSweep& sweep, double angle_deg, bool inches) {
  if (sweep.steps.empty()) return tr("nothing stands near");
  const DoorStep* step = door_step_at(sweep, angle_deg);
  if (!step) return tr("stopped at %1: %2").arg(degrees_shown(sweep.free_deg), pair_words(sweep.steps.back()));
  return tr("gap %1, %2; free to %3")
      .arg(length_text(step->gap_mm, inches), pair_words(*step), degrees_shown(sweep.free_deg));
}

QString door_free_words(const DoorSweep& sweep, double wanted_deg) {
  return tr("%1 of %2").arg(degrees_shown(sweep.free_deg), degrees_shown(wanted_deg));
}

}  // namespace prismwright
