#include "ui/models/fit_table.h"

#include <QCoreApplication>
#include <map>

#include "ui/models/parts_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("FitTable", text); }

QString way_words(FitWay way) { return QCoreApplication::translate("FitWay", name_of(way)); }

QStringList strings(const std::vector<std::string>& marks) {
  QStringList all;
  for (const std::string& mark : marks) all << QString::fromStdString(mark);
  return all;
}

/// Prisms that are cemented to one another go in together.
QString together(const QStringList& marks) {
  if (marks.size() < 2) return marks.value(0);
  return tr("%1 and %2 more").arg(marks.front()).arg(marks.size() - 1);
}

/// How a prism is changed when all else stands.
QString change_words(const OpenSeat& seat) {
  if (seat.from_sea && seat.from_lamp) return tr("either side");
  return seat.from_sea ? way_words(FitWay::from_sea) : way_words(FitWay::from_lamp);
}

Cell panel_cell(int panel) { return number_cell(QString::number(panel), panel); }

CellRow blocked_row(int panel, const FitBlocked& blocked) {
  CellRow row;
  row.marks = strings(blocked.marks);
  Cell step{palette::verdict_sign(Verdict::clash), 0, QString()};
  row.cells = {panel_cell(panel),
               step,
               word_cell(together(row.marks)),
               word_cell(tr("cannot go in")),
               blank_cell(),
               blank_cell(),
               word_cell(QString::fromStdString(blocked.words)),
               word_cell(row.marks.join(' '))};
  row.amiss = true;
  return row;
}

}  // namespace

CellSheet fit_sheet(const std::vector<PanelFit>& panels, bool inches) {
  CellSheet sheet;
  sheet.heads = {{tr("Panel"), "panel", {}, true},
                 {tr("Step"), "step", {}, true},
                 {tr("Part"), "part", {}, false},
                 {tr("Way in"), "way", {}, false},
                 {tr("Into pocket\n%1").arg(length_unit(inches)), "into_pocket_mm",
                  tr("Last part of the way, square to the rib"), true},
                 {tr("Changed later"), "changed", tr("With both ribs and all other prisms standing"), false},
                 {tr("What to do"), "words", {}, false},
                 {{}, "marks", {}, false}};
  for (const PanelFit& panel : panels) {
    std::map<std::string, QString> changed;
    for (const OpenSeat& seat : panel.open_seats) changed[seat.mark] = change_words(seat);
    for (const FitBlocked& blocked : panel.cannot) sheet.rows.push_back(blocked_row(panel.panel, blocked));
    int number = 0;
    for (const FitStep& step : panel.steps) {
      ++number;
      const QStringList marks = strings(step.marks);
      const auto seat = changed.find(step.marks.empty() ? std::string() : step.marks.front());
      sheet.rows.push_back({marks,
                            {panel_cell(panel.panel), number_cell(QString::number(number), number),
                             word_cell(together(marks)), word_cell(way_words(step.way)),
                             step.into_pocket_mm > 0
                                 ? number_cell(length_number(step.into_pocket_mm, inches), step.into_pocket_mm)
                                 : blank_cell(),
                             seat == changed.end() ? blank_cell() : word_cell(seat->second),
                             word_cell(QString::fromStdString(step.words)), word_cell(marks.join(' '))}});
    }
  }
  return sheet;
}

QString fit_words(const std::vector<PanelFit>& panels, const LensPlan& plan) {
  std::size_t out = 0;
  for (const PanelFit& panel : panels)
    for (const FitBlocked& blocked : panel.cannot)
      for (const std::string& mark : blocked.marks)
        if (plan.find(mark)) ++out;
  return tr("%1 of %2").arg(plan.prisms.size() - out).arg(plan.prisms.size());
}

}  // namespace prismwright
