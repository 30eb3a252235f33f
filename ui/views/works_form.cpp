#include "ui/views/works_form.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/views/fold.h"
#include "ui/views/quantity_editor.h"
#include "ui/views/value_rows.h"

namespace prismwright {

WorksForm::WorksForm(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("works.form"));
  auto* holder = new QWidget(this);
  auto* row = new QHBoxLayout(holder);
  row->setContentsMargins(0, 8, 8, 8);
  row->setSpacing(24);
  QVBoxLayout* column = nullptr;
  const auto next_column = [&] {
    column = new QVBoxLayout;
    column->setSpacing(8);
    column->setAlignment(Qt::AlignTop);
    row->addLayout(column, 1);
  };
  const auto add = [&](const char* name, const QString& title, const std::vector<const char*>& keys) {
    column->addWidget(makeFold(name, title, keys));
  };
  next_column();
  add("works.resin", tr("Resin"),
      {"works.resin", "works.resin_batch", "works.resin_density_g_cm3", "works.resin_head_percent",
       "works.initiator_percent", "works.tint_percent", "works.tint_name"});
  add("works.shrinkage", tr("Shrinkage"),
      {"works.shrink_length_percent", "works.shrink_depth_percent", "works.shrink_height_percent"});
  add("works.masters", tr("Masters"),
      {"works.stock_mm", "works.stock_faces", "works.print_width_mm", "works.print_depth_mm",
       "works.print_height_mm", "works.layer_mm", "works.key_mm", "works.key_gap_mm"});
  next_column();
  add("works.moulds", tr("Moulds"),
      {"works.mould_wall_mm", "works.mould_draft_deg", "works.gate_mm", "works.vent_mm", "works.pin_mm",
       "works.pin_gap_mm", "works.mould_life", "works.half_turn"});
  add("works.castings", tr("Vessel and castings"),
      {"works.scrap_percent", "works.vessel_diameter_mm", "works.vessel_height_mm", "works.load_spacing_mm",
       "works.thickness_ratio", "works.vessel_max_bar", "works.vessel_max_c", "works.cure_bar", "works.cure_c",
       "works.cure_h"});
  add("works.annealing", tr("Annealing"),
      {"works.anneal_c", "works.anneal_h_per_mm", "works.anneal_least_h", "works.heating_c_per_h",
       "works.cooling_c_per_h", "works.take_out_c", "works.room_c"});
  next_column();
  add("works.inspection", tr("Tolerances"),
      {"works.width_within_mm", "works.angle_within_deg", "works.radius_within_percent",
       "works.length_within_mm", "works.laser_within_deg"});
  add("works.hours", tr("Working time"),
      {"works.master_h", "works.print_cm3_per_h", "works.mould_h", "works.load_h", "works.anneal_hand_h",
       "works.polish_h_per_dm2", "works.prove_h", "works.glaze_h", "works.frame_h", "works.hours_a_week",
       "works.start_date"});
  add("works.money", tr("Money"),
      {"works.currency", "works.hour_cost", "works.resin_cost_per_kg", "works.print_cost_per_kg",
       "works.print_density_g_cm3", "works.tooling_cost_per_l", "works.brass_cost_per_kg"});
  auto* scroll = new QScrollArea(this);
  scroll->setWidget(holder);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->addWidget(scroll);
}

QWidget* WorksForm::makeFold(const char* name, const QString& title, const std::vector<const char*>& keys) {
  auto* body = new QWidget(this);
  add_value_rows(*make_value_form(body), bench_, keys);
  auto* fold = new Fold(QLatin1String(name), title, body, this);
  fold->setOpen(true);
  return fold;
}

}  // namespace prismwright
