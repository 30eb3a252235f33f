#include "ui/models/setting_table.h"

#include <QCoreApplication>
#include <algorithm>
#include <limits>
#include <numeric>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("SettingTable", text); }

bool has_end(const SettingCheck& check) { return check.end.length_mm > 0; }

/// Room left over the needed gap, at the end or the sides, whichever is less.
double ease_of(const SettingCheck& check) {
  const double sides = check.sides.drawn_mm - check.sides.needed_mm();
  return has_end(check) ? std::min(sides, check.end.drawn_mm - check.end.needed_mm()) : sides;
}

Cell gap_cell(double mm, bool inches) { return number_cell(length_number(mm, inches), mm); }

std::vector<Cell> cells_of(const SettingCheck& check, bool inches) {
  const bool end = has_end(check);
  Cell verdict = verdict_cell(verdict_of(check));
  verdict.sorts = ease_of(check);
  return {word_cell(QString::fromStdString(check.mark)),
          word_cell(QString::fromStdString(check.rib)),
          verdict,
          end ? gap_cell(check.end.drawn_mm, inches) : blank_cell(),
          end ? gap_cell(check.end.needed_mm(), inches) : blank_cell(),
          gap_cell(check.sides.drawn_mm, inches),
          gap_cell(check.sides.needed_mm(), inches),
          number_cell({}, check.end.heat_mm),
          number_cell({}, check.end.moisture_mm),
          number_cell({}, check.sides.shim_mm),
          number_cell({}, check.sides.glazing_mm),
          number_cell({}, check.sides.heat_mm),
          number_cell({}, check.sides.moisture_mm)};
}

}  // namespace

Verdict verdict_of(const SettingCheck& check) {
  return check.end_enough && check.sides_enough ? Verdict::clear : Verdict::tight;
}

SettingSheet setting_sheet(const std::vector<SettingCheck>& checks, bool inches) {
  const QString unit = length_unit(inches);
  SettingSheet all;
  all.order.resize(checks.size());
  std::iota(all.order.begin(), all.order.end(), std::size_t{0});
  std::stable_sort(all.order.begin(), all.order.end(),
                   [&](std::size_t a, std::size_t b) { return ease_of(checks[a]) < ease_of(checks[b]); });
  all.sheet.heads = {{tr("Prism"), "prism", {}, false},
                     {tr("In rib"), "rib", {}, false},
                     {tr("Verdict"), "verdict", {}, false},
                     {tr("End drawn\n%1").arg(unit), "end_drawn_mm",
                      tr("Room between the end and the floor of its pocket"), true},
                     {tr("needed\n%1").arg(unit), "end_needed_mm", tr("Growth by heat and moisture"), true},
                     {tr("Sides drawn\n%1").arg(unit), "sides_drawn_mm",
                      tr("Room round the prism's sides in its pocket"), true},
                     {tr("needed\n%1").arg(unit), "sides_needed_mm",
                      tr("Shim or glazing, whichever is thicker, with growth by heat and moisture"), true},
                     {{}, "end_heat_mm", {}, true},
                     {{}, "end_moisture_mm", {}, true},
                     {{}, "sides_shim_mm", {}, true},
                     {{}, "sides_glazing_mm", {}, true},
                     {{}, "sides_heat_mm", {}, true},
                     {{}, "sides_moisture_mm", {}, true}};
  for (const std::size_t place : all.order)
    all.sheet.rows.push_back(
        {{QString::fromStdString(checks[place].mark), QString::fromStdString(checks[place].rib)},
         cells_of(checks[place], inches),
         verdict_of(checks[place]) != Verdict::clear});
  return all;
}

QString setting_words(const SettingCheck& check, bool inches) {
  const auto mm = [&](double value) { return length_text(value, inches, 3); };
  QString words;
  if (has_end(check))
    words = tr("%1 is %2 long: at its end heat needs %3, moisture %4.")
                .arg(QString::fromStdString(check.mark), length_text(check.end.length_mm, inches, 1),
                     mm(check.end.heat_mm), mm(check.end.moisture_mm));
  else
    words = tr("%1 leans over the rib and has no end in it.").arg(QString::fromStdString(check.mark));
  words += QLatin1Char(' ') + tr("At its sides the shim needs %1, glazing %2, heat %3, moisture %4.")
                                  .arg(mm(check.sides.shim_mm), mm(check.sides.glazing_mm),
                                       mm(check.sides.heat_mm), mm(check.sides.moisture_mm));
  const std::string advice = advice_on(check);
  if (!advice.empty()) words += QLatin1Char(' ') + QString::fromStdString(advice);
  return words;
}

}  // namespace prismwright
