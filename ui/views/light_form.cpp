#include "ui/views/light_form.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/lens/generic_lamps.h"
#include "ui/models/setting_reasons.h"
#include "ui/views/fold.h"
#include "ui/views/quantity_editor.h"

namespace prismwright {
namespace {

QString words_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

bool is_of_one_light(std::string_view key) {
  return key == "lamp.temperature_k" || key == "lamp.line_nm" || key == "lamp.spectrum";
}

LensValues with_lamp(const LensValues& values, const GenericLamp& generic) {
  LensValues wanted = values;
  wanted.lamp = with_generic(values.lamp, generic);
  return wanted;
}

}  // namespace

LightForm::LightForm(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("light.form"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  column->addWidget(
      makeFold("light.lamp", tr("Lamp"),
               {"lamp.shape", "lamp.width_mm", "lamp.height_mm", "lamp.known", "lamp.flux_lm",
                "lamp.luminance_cd_mm2", "lamp.light", "lamp.temperature_k", "lamp.line_nm", "lamp.spectrum"},
               true));
  column->addWidget(makeFold("light.turn", tr("Turn and screens"),
                             {"light.turn_s", "light.turn_way", "panels.red", "panels.green", "panels.yellow"},
                             true));
  column->addWidget(makeFold("light.place", tr("Place of the lamp"),
                             {"lamp.above_mm", "lamp.aside_x_mm", "lamp.aside_y_mm", "lamp.set", "lamp.count",
                              "lamp.ring_mm", "lamp.facing_deg", "lamp.facing_up_deg"},
                             false));
  column->addWidget(
      makeFold("light.judged", tr("Judged by"),
               {"light.glazing_factor", "light.service_factor", "light.visibility_nmi", "light.threshold_lux",
                "light.integration_s", "light.eye_height_m", "brief.height_m", "light.sun_w_m2"},
               false));
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &LightForm::follow);
  follow();
}

QWidget* LightForm::makeFold(const char* name, const QString& title, const std::vector<const char*>& keys,
                             bool open) {
  auto* body = new QWidget(this);
  QFormLayout* form = make_value_form(body);
  if (std::string_view(name) == "light.lamp") {
    QWidget* generic = makeGeneric();
    form->addRow(tr("&Generic"), generic);
  }
  const std::vector<ValueRow> rows = add_value_rows(*form, bench_, keys);
  rows_.insert(rows_.end(), rows.begin(), rows.end());
  auto* fold = new Fold(QLatin1String(name), title, body, this);
  fold->setOpen(open);
  return fold;
}

QWidget* LightForm::makeGeneric() {
  generic_ = new QComboBox(this);
  generic_->setObjectName(QStringLiteral("light.generic"));
  generic_->setToolTip(
      tr("Sets shape, size, flux and light of a typical lamp of its kind, in one step; measured "
         "values of the lamp in hand win over them"));
  generic_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  generic_->setMinimumContentsLength(12);
  generic_->addItem(tr("none: own values"));
  for (const GenericLamp& lamp : generic_lamps()) generic_->addItem(words_of(lamp.words));
  connect(generic_, &QComboBox::activated, this, &LightForm::takeGeneric);
  return generic_;
}

void LightForm::takeGeneric(int index) {
  if (index <= 0) return follow();
  const GenericLamp& generic = generic_lamps()[static_cast<std::size_t>(index - 1)];
  const LensValues wanted = with_lamp(bench_->values(), generic);
  std::vector<Assignment> assignments;
  for (const std::string& key : changed_keys(bench_->values(), wanted))
    assignments.emplace_back(key, value_text(wanted, key));
  (void)bench_->assign(assignments, tr("lamp: %1").arg(words_of(generic.words)));
  follow();
}

void LightForm::followIdle() {
  for (const ValueRow& row : rows_) {
    const std::string& key = row.editor->quantity().key;
    const QString reason = idle_reason(bench_->values(), key);
    row.editor->setIdle(reason);
    // Each kind of light has one value of its own; the others' are out of place.
    const bool shown = reason.isEmpty() || !is_of_one_light(key);
    row.label->setVisible(shown);
    row.editor->setVisible(shown);
  }
}

/// Shows the generic lamp that the present one is, if it is one.
void LightForm::follow() {
  if (!bench_->hasBook()) return;
  followIdle();
  const QSignalBlocker quiet(generic_);
  generic_->setEnabled(!bench_->book().read_only());
  int shown = 0;
  const std::vector<GenericLamp>& lamps = generic_lamps();
  for (std::size_t i = 0; i < lamps.size() && shown == 0; ++i)
    if (changed_keys(bench_->values(), with_lamp(bench_->values(), lamps[i])).empty())
      shown = static_cast<int>(i) + 1;
  generic_->setCurrentIndex(shown);
}

}  // namespace prismwright
