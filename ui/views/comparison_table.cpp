#include "ui/views/comparison_table.h"

#include <QHeaderView>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kRowHeight = 25;

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString true_minus(QString text) { return text.replace('-', QChar(0x2212)); }

QString degrees_text(double deg, int decimals) {
  return true_minus(QStringLiteral("%1 deg").arg(deg, 0, 'f', decimals));
}

QString figure_text(FigureForm form, const std::optional<double>& value, bool inches) {
  if (!value) return QStringLiteral("–");
  switch (form) {
    case FigureForm::count:
      return QString::number(*value, 'f', 0);
    case FigureForm::share:
      return QStringLiteral("%1 %").arg(100 * *value, 0, 'f', 3);
    case FigureForm::degrees:
      return degrees_text(*value, 4);
    case FigureForm::length_mm:
      return length_text(*value, inches);
    case FigureForm::volume_mm3:
      return QStringLiteral("%1 cm³").arg(*value / 1000, 0, 'f', 1);
    case FigureForm::mass_g:
      return mass_text(*value);
  }
  return {};
}

QString zone_text(const std::optional<ZoneFigures>& zone, bool inches) {
  if (!zone) return QStringLiteral("–");
  QString text = ComparisonTable::tr("%1 to %2, %3, thick %4")
                     .arg(true_minus(QString::number(zone->from_deg, 'f', 2)), degrees_text(zone->to_deg, 2),
                          length_text(zone->size_mm, inches), length_text(zone->section_thickness_mm, inches));
  if (zone->locked) text += ComparisonTable::tr(", locked");
  return text;
}

QString setting_text(const SettingDifference& difference, const std::string& text, bool inches) {
  if (text.empty()) return ComparisonTable::tr("automatic");
  const Quantity* quantity = find_quantity(difference.key);
  return quantity ? shown_value(*quantity, text, inches) : QString::fromStdString(text);
}

}  // namespace

ComparisonTable::ComparisonTable(QWidget* parent) : QTableWidget(0, 3, parent) {
  setObjectName(QStringLiteral("compare.table"));
  setAccessibleName(tr("What differs between two sections"));
  setEditTriggers(NoEditTriggers);
  setSelectionMode(NoSelection);
  setProperty("dense", true);
  setShowGrid(false);
  setTabKeyNavigation(false);
  setWordWrap(true);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
}

void ComparisonTable::setComparison(const std::optional<SectionComparison>& comparison, bool inches) {
  inches_ = inches;
  setRowCount(0);
  setVisible(comparison && !comparison->alike());
  if (!comparison) return;
  setHorizontalHeaderLabels({tr("What differs"), QString::fromStdString(comparison->first),
                             QString::fromStdString(comparison->second)});
  addFigures(*comparison);
  addSettings(*comparison);
  addZones(*comparison);
  resizeRowsToContents();
}

void ComparisonTable::addHead(const QString& text) {
  addPair(text, {}, {});
  QTableWidgetItem* head = item(rowCount() - 1, 0);
  QFont font = head->font();
  font.setBold(true);
  head->setFont(font);
  setSpan(rowCount() - 1, 0, 1, 3);
  head->setBackground(palette::paper());
}

void ComparisonTable::addPair(const QString& what, const QString& first, const QString& second) {
  const int row = rowCount();
  insertRow(row);
  int column = 0;
  for (const QString& text : {what, first, second}) setItem(row, column++, new QTableWidgetItem(text));
}

void ComparisonTable::addFigures(const SectionComparison& comparison) {
  bool any = false;
  for (const FigurePair& figure : comparison.figures) {
    if (!figure.differs()) continue;
    if (!std::exchange(any, true)) addHead(tr("Figures"));
    addPair(words(figure.label), figure_text(figure.form, figure.first, inches_),
            figure_text(figure.form, figure.second, inches_));
  }
}

void ComparisonTable::addSettings(const SectionComparison& comparison) {
  bool any = false;
  for (const SettingDifference& setting : comparison.settings) {
    if (!std::exchange(any, true)) addHead(tr("Settings"));
    const Quantity* quantity = find_quantity(setting.key);
    const QString unit = quantity ? shown_unit(*quantity, inches_) : QString::fromStdString(setting.unit);
    const QString label = QString::fromStdString(setting.label);
    addPair(unit.isEmpty() ? label : QStringLiteral("%1, %2").arg(label, unit),
            setting_text(setting, setting.first, inches_), setting_text(setting, setting.second, inches_));
    item(rowCount() - 1, 0)->setToolTip(QString::fromStdString(setting.key));
  }
}

void ComparisonTable::addZones(const SectionComparison& comparison) {
  bool any = false;
  for (const ZonePair& zone : comparison.zones) {
    if (!zone.differs()) continue;
    if (!std::exchange(any, true)) addHead(tr("Zones"));
    addPair(QString::fromStdString(zone.mark), zone_text(zone.first, inches_), zone_text(zone.second, inches_));
  }
}

}  // namespace prismwright
