#include "ui/views/light_figures.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "ui/models/light_numbers.h"

namespace prismwright {
namespace {

const QString kDash = QStringLiteral("–");

QString sentence(const std::string& text) {
  QString words = QString::fromStdString(text);
  if (!words.isEmpty()) words[0] = words.at(0).toUpper();
  if (!words.isEmpty() && !words.endsWith('.')) words += '.';
  return words;
}

}  // namespace

LightFigures::LightFigures(QWidget* parent) : QWidget(parent), grid_(new QGridLayout) {
  setObjectName(QStringLiteral("light.figures"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* title = new QLabel(tr("Character"), this);
  title->setProperty("muted", true);
  column->addWidget(title);
  character_ = new QLabel(this);
  character_->setObjectName(QStringLiteral("figure.light.character"));
  character_->setProperty("figure", true);
  character_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(character_);
  differs_ = addSentence("light.differs");
  grid_->setHorizontalSpacing(12);
  grid_->setVerticalSpacing(3);
  grid_->setColumnStretch(0, 1);
  column->addLayout(grid_);
  add("peak", tr("Peak intensity"), tr("Over the whole rhythm, of the lens alone"));
  add("service", tr("In service"), tr("Through the lantern's glazing, less the service factor"));
  add("nominal", tr("Nominal range"), tr("From the effective intensity by Blondel and Rey, visibility 10 nmi"));
  add("luminous", tr("Luminous range"), tr("The same at the visibility and threshold of the settings"));
  add("geographic", tr("Over the sea's edge"), tr("Geographic range, by the heights of light and eye"));
  addHead(tr("Effective intensity in service"));
  add("blondelRey", tr("Blondel and Rey"), tr("Greatest integral over a + its time"));
  add("formFactor", tr("Form factor"), tr("Schmidt-Clausen"));
  add("allard", tr("Allard"), tr("Greatest answer of an eye that lags by a"));
  add("modifiedAllard", tr("Modified Allard"), tr("Ohno and Couzin 2002, CIE 229:2018"));
  addHead(tr("Beam"));
  add("beamPeak", tr("Peak of the mapped panel"),
      tr("Its screen included; without glazing and service factor"));
  add("width", tr("Wide at half"), tr("Between the half peaks, level"));
  add("height", tr("High at half"), tr("Between the half peaks, upright"));
  add("error", tr("Stated error"), tr("Standard error of the beam's peak, from four independent sets"));
  add("flux", tr("Lamp"), tr("Flux and luminance of what shines"));
  warnings_ = addSentence("light.warnings");
  sun_ = addSentence("light.sun");
  for (QLabel* label : {differs_, warnings_, sun_}) column->addWidget(label);
  column->insertWidget(2, differs_);
  setReport(nullptr);
}

QLabel* LightFigures::addSentence(const char* name) {
  auto* label = new QLabel(this);
  label->setObjectName(QLatin1String(name));
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}

void LightFigures::add(const char* name, const QString& label, const QString& meaning) {
  const int row = grid_->rowCount();
  auto* head = new QLabel(label, this);
  head->setToolTip(meaning);
  auto* value = new QLabel(this);
  value->setObjectName(QStringLiteral("figure.light.") + QLatin1String(name));
  value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  value->setTextInteractionFlags(Qt::TextSelectableByMouse);
  value->setToolTip(meaning);
  grid_->addWidget(head, row, 0);
  grid_->addWidget(value, row, 1);
}

void LightFigures::addHead(const QString& head) {
  auto* label = new QLabel(head, this);
  label->setProperty("muted", true);
  label->setContentsMargins(0, 8, 0, 0);
  grid_->addWidget(label, grid_->rowCount(), 0, 1, 2);
}

void LightFigures::set(const char* name, const QString& words) {
  if (auto* label = findChild<QLabel*>(QStringLiteral("figure.light.") + QLatin1String(name)))
    label->setText(words);
}

void LightFigures::setReport(std::shared_ptr<const LightReport> report) {
  if (report) {
    setBeam(*report);
    setSight(*report);
  } else {
    for (QLabel* label : findChildren<QLabel*>())
      if (label->objectName().startsWith(QLatin1String("figure.light."))) label->setText(kDash);
  }
  setSentences(report.get());
}

void LightFigures::setBeam(const LightReport& report) {
  const auto width = [](double deg) { return deg > 0 ? degrees_text(deg) : tr("beyond the map"); };
  set("beamPeak", candela_text(report.beam.peak_cd));
  set("width", width(report.half_width_deg));
  set("height", width(report.half_height_deg));
  set("error", percent_text(report.beam.peak_error));
  set("flux", tr("%1 lm, %2 cd/mm²").arg(light_number(report.flux_lm), light_number(report.luminance_cd_mm2)));
}

void LightFigures::setSight(const LightReport& report) {
  character_->setText(QString::fromStdString(report.character));
  set("peak", candela_text(report.rhythm.peak_cd));
  set("service", candela_text(report.service_cd));
  set("blondelRey", candela_text(report.effective.blondel_rey_cd));
  set("formFactor", candela_text(report.effective.form_factor_cd));
  set("allard", candela_text(report.effective.allard_cd));
  set("modifiedAllard", candela_text(report.effective.modified_allard_cd));
  set("nominal", miles_text(report.nominal_range_nmi));
  set("luminous", miles_text(report.luminous_range_nmi));
  set("geographic", report.geographic_range_nmi > 0 ? miles_text(report.geographic_range_nmi) : kDash);
}

void LightFigures::setSentences(const LightReport* report) {
  QString differs;
  QStringList warnings;
  QString sun;
  if (report) {
    if (!report->differs.empty()) differs = tr("✕ %1").arg(sentence(report->differs));
    for (const std::string& warning : report->warnings) warnings << tr("✕ %1").arg(sentence(warning));
    if (report->sun.panel > 0)
      sun = tr("Sun in the beam of panel %1: up to %2 kW/m² at the focus.")
                .arg(report->sun.panel)
                .arg(light_number(report->sun.worst_kw_m2));
    if (report->sun.kindles)
      sun += ' ' + tr("Wood takes fire from %1 kW/m²: keep the lens covered whenever the sun can reach it.")
                       .arg(kWoodKindles_kw_m2);
  }
  differs_->setText(differs);
  warnings_->setText(warnings.join(QStringLiteral("\n\n")));
  sun_->setText(sun);
  differs_->setProperty("refusal", true);
  warnings_->setProperty("refusal", true);
  sun_->setProperty("refusal", report && report->sun.kindles);
  for (QLabel* label : {differs_, warnings_, sun_}) {
    label->setVisible(!label->text().isEmpty());
    label->setStyleSheet(label->styleSheet());
  }
}

void LightFigures::setStale(bool stale) {
  // Grey says, with the sentence over the plots, that these are the figures of earlier values.
  for (QLabel* label : findChildren<QLabel*>()) {
    if (!label->objectName().startsWith(QLatin1String("figure.light."))) continue;
    label->setProperty("muted", stale);
    label->setStyleSheet(label->styleSheet());
  }
}

}  // namespace prismwright
