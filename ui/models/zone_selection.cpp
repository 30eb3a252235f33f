#include "ui/models/zone_selection.h"

namespace prismwright {
namespace {

QString zone_of(const Workbench& bench, const QString& mark) {
  const PlannedPrism* prism = bench.plan() ? bench.plan()->find(mark.toStdString()) : nullptr;
  return prism ? QString::fromStdString(prism->zone) : QString();
}

}  // namespace

QSet<QString> selected_zones(const Workbench& bench) {
  QSet<QString> zones;
  for (const QString& mark : bench.selection())
    if (const QString zone = zone_of(bench, mark); !zone.isEmpty()) zones.insert(zone);
  return zones;
}

QString leading_zone(const Workbench& bench) {
  return bench.selection().isEmpty() ? QString() : zone_of(bench, bench.selection().front());
}

void select_zones(Workbench& bench, const QSet<QString>& zones, const QString& leading) {
  QStringList first, others;
  if (bench.plan()) {
    for (const PlannedPrism& prism : bench.plan()->prisms) {
      const QString zone = QString::fromStdString(prism.zone);
      if (zones.contains(zone)) (zone == leading ? first : others) << QString::fromStdString(prism.mark);
    }
  }
  bench.select(first + others);
}

}  // namespace prismwright
