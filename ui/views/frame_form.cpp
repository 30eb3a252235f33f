#include "ui/views/frame_form.h"

#include <QVBoxLayout>

#include "ui/models/setting_reasons.h"
#include "ui/views/fold.h"
#include "ui/views/quantity_editor.h"
#include "ui/views/value_rows.h"

namespace prismwright {
FrameForm::FrameForm(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("frame.form"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  column->addWidget(
      makeFold("frame.ribs", tr("Ribs"), {"frame.rib_mm", "frame.pocket_mm", "frame.rib_margin_mm"}, true));
  column->addWidget(makeFold("frame.setting", tr("Setting"),
                             {"frame.setting_gap_mm", "frame.end_gap_mm", "frame.heat_range_k", "frame.shim_mm",
                              "frame.glazing_mm", "frame.moisture_percent"},
                             true));
  column->addWidget(makeFold("frame.door", tr("Door"),
                             {"frame.door_panel", "frame.door_hinge", "frame.door_gap_mm", "frame.hinge_pin_mm",
                              "frame.door_open_deg"},
                             true));
  column->addWidget(makeFold("frame.parts", tr("Parts"),
                             {"frame.ring_mm", "frame.rail_mm", "frame.base_mm", "frame.finial_mm",
                              "frame.spacer_mm", "frame.screw_mm", "frame.dowel_mm"},
                             false));
  column->addWidget(makeFold(
      "frame.round", tr("Surroundings"),
      {"frame.changer_radius_mm", "frame.changer_from_mm", "frame.changer_to_mm", "frame.lantern_radius_mm",
       "frame.pedestal_radius_mm", "frame.pedestal_top_mm", "frame.room_round_mm"},
      false));
  column->addWidget(makeFold("frame.cutting", tr("Cutting and sheets"),
                             {"frame.least_brass_mm", "frame.least_landing_mm", "frame.inside_radius_mm",
                              "frame.sheet_width_mm", "frame.sheet_height_mm", "frame.sheet_spacing_mm"},
                             false));
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &FrameForm::follow);
  follow();
}

QWidget* FrameForm::makeFold(const char* name, const QString& title, const std::vector<const char*>& keys,
                             bool open) {
  auto* body = new QWidget(this);
  for (const ValueRow& row : add_value_rows(*make_value_form(body), bench_, keys))
    editors_.push_back(row.editor);
  auto* fold = new Fold(QLatin1String(name), title, body, this);
  fold->setOpen(open);
  return fold;
}

void FrameForm::follow() {
  if (!bench_->hasBook()) return;
  for (QuantityEditor* editor : editors_)
    editor->setIdle(idle_reason(bench_->values(), editor->quantity().key));
}

}  // namespace prismwright
