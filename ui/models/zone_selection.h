#pragma once

#include <QSet>
#include <QString>

#include "ui/models/workbench.h"

namespace prismwright {

/// The zones of the selected prisms: "P03-R2a" belongs to R2.
QSet<QString> selected_zones(const Workbench& bench);
/// The zone of the leading selected prism; empty when nothing is selected.
QString leading_zone(const Workbench& bench);
/// Selects every prism of these zones in all panels, those of `leading` first.
void select_zones(Workbench& bench, const QSet<QString>& zones, const QString& leading);

}  // namespace prismwright
