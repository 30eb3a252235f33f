#include "ui/views/section_form.h"

#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <optional>

#include "ui/models/setting_reasons.h"
#include "ui/views/divide_row.h"
#include "ui/views/fold.h"
#include "ui/views/quantity_editor.h"

namespace prismwright {
namespace {

constexpr int kLabelWidth = 112;

}  // namespace

/// One sub-head; its keys stand for the name after "section." unless they hold a point.
struct SectionForm::Group {
  const char* name;
  QString title;
  std::vector<const char*> keys;
  std::optional<Band> divides;
};

SectionForm::SectionForm(Workbench* bench, QWidget* parent)
    : QScrollArea(parent), bench_(bench), inside_(new QWidget(this)) {
  setObjectName(QStringLiteral("section.form"));
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* column = new QVBoxLayout(inside_);
  column->setContentsMargins(0, 4, 8, 8);
  column->setSpacing(4);
  const std::vector<Group> groups = {
      {"faces",
       tr("Curves and faces"),
       {"faces", "upper_power", "upper_faces", "lower_power", "lower_faces", "refracting_faces",
        "pair_radius_mm"},
       {}},
      {"refracting",
       tr("Refracting band"),
       {"refracting_to_deg", "edge_mm", "refracting_division", "ring_growth_mm", "refracting_count",
        "refracting_margins_mm", "refracting_rows", "refracting_turning", "inner_face"},
       Band::refracting},
      {"upper",
       tr("Upper prisms"),
       {"upper_to_deg", "upper_division", "reflecting_chord_mm", "upper_side_mm", "upper_thickness_mm",
        "upper_count", "upper_rows", "upper_turning", "upper_start_r_mm", "upper_start_z_mm"},
       Band::upper},
      {"lower",
       tr("Lower prisms"),
       {"lower_to_deg", "lower_division", "lower_side_mm", "lower_thickness_mm", "lower_count", "lower_rows",
        "lower_turning"},
       Band::lower},
      {"joints",
       tr("Joints, lands, gaps"),
       {"joint", "gap_mm", "land_mm", "land_a_mm", "land_a_shape", "land_b_mm", "land_b_shape", "land_c_mm",
        "land_c_shape"},
       {}},
      {"ribs", tr("Ribs"), {"upper_rib_mm", "lower_rib_mm", "rib_inner_r_mm", "rib_outer_r_mm"}, {}},
      {"aim",
       tr("Aim and focal points"),
       {"aim", "brief.height_m", "refracting_aim_deg", "refracting_focus_mm", "upper_aim_deg", "upper_focus_mm",
        "lower_aim_deg", "lower_focus_mm", "level_within_deg"},
       {}},
      {"material",
       tr("Material and light"),
       {"material.name", "material.index", "material.temperature_c", "material.index_per_k",
        "material.wavelength_nm", "lamp.height_mm", "lamp.above_mm"},
       {}}};
  for (const Group& group : groups) addGroup(group);
  column->addStretch(1);
  setWidget(inside_);
  connect(bench_, &Workbench::bookChanged, this, &SectionForm::follow);
  connect(bench_, &Workbench::valuesChanged, this, &SectionForm::follow);
  openFirst(1);
  follow();
}

void SectionForm::addGroup(const Group& group) {
  auto* body = new QWidget(inside_);
  auto* form = new QFormLayout(body);
  form->setContentsMargins(12, 0, 0, 8);
  form->setHorizontalSpacing(12);
  form->setVerticalSpacing(6);
  form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  form->setRowWrapPolicy(QFormLayout::DontWrapRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  if (group.divides) {
    auto* label = new QLabel(tr("Divide anew by"), body);
    label->setFixedWidth(kLabelWidth);
    form->addRow(label, new DivideRow(bench_, *group.divides, body));
  }
  for (const char* key : group.keys) {
    const std::string whole = std::string_view(key).find('.') == std::string_view::npos
                                  ? std::string("section.") + key
                                  : std::string(key);
    addEditor(form, whole);
  }
  auto* fold = new Fold(QLatin1String(group.name), group.title, body, inside_);
  static_cast<QVBoxLayout*>(inside_->layout())->addWidget(fold);
  folds_.push_back(fold);
}

void SectionForm::addEditor(QFormLayout* form, const std::string& key) {
  auto* editor = new QuantityEditor(bench_, key, form->parentWidget());
  QLabel* label = editor->makeLabel(form->parentWidget());
  // Under one head the bands' own words are told apart by the band.
  const bool of_many_bands = key == "section.upper_power" || key == "section.upper_faces" ||
                             key == "section.lower_power" || key == "section.lower_faces" ||
                             key == "section.refracting_faces" || key.ends_with("_aim_deg") ||
                             key.ends_with("_focus_mm");
  if (of_many_bands) {
    const QString band = key.starts_with("section.upper")   ? tr("Upper: %1")
                         : key.starts_with("section.lower") ? tr("Lower: %1")
                                                            : tr("Band: %1");
    QString words = label->text();
    words[0] = words[0].toLower();
    label->setText(band.arg(words));
  }
  if (key == "section.reflecting_chord_mm") label->setText(tr("Entry side, both bands"));
  if (key == "section.upper_side_mm" || key == "section.lower_side_mm") label->setText(tr("Own entry side"));
  label->setWordWrap(true);
  label->setFixedWidth(kLabelWidth);
  form->addRow(label, editor);
  editors_.push_back(editor);
}

void SectionForm::openFirst(int folds) {
  for (std::size_t i = 0; i < folds_.size(); ++i) folds_[i]->setOpen(static_cast<int>(i) < folds);
}

void SectionForm::follow() {
  for (QuantityEditor* editor : editors_)
    editor->setIdle(idle_reason(bench_->values(), editor->quantity().key));
}

}  // namespace prismwright
