#include "ui/models/loads_table.h"

#include <QCoreApplication>
#include <map>

#include "ui/models/local_time.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("LoadsTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }
/// A sentence of the core with the labels of the fields in place of their keys.
QString told(const std::string& sentence) { return sentence_of(request_problem({}, {}, sentence)); }

/// Castings of each master in the load, in the order of the make list.
std::map<std::size_t, int> counts_of(const PlannedLoad& load) {
  std::map<std::size_t, int> counts;
  for (const LoadPlace& place : load.places) ++counts[place.piece];
  return counts;
}

QString hours_text(double hours) { return QString::number(hours, 'f', 1); }

QString span_text(const CureStep& step) {
  if (step.to_h <= step.from_h) return tr("at %1 h").arg(hours_text(step.from_h));
  return tr("%1 to %2 h").arg(hours_text(step.from_h), hours_text(step.to_h));
}

}  // namespace

CellSheet loads_sheet(const WorksReckoning& works, bool inches) {
  const QString unit = length_unit(inches);
  CellSheet sheet;
  sheet.heads = {{tr("Load"), "load", {}, true},
                 {tr("Castings"), "castings", {}, true},
                 {tr("Thick\n%1").arg(unit), "thickest_mm", tr("Thickest section in it"), true},
                 {tr("Resin\ng"), "resin_g", tr("Poured, shrinkage and gate counted in"), true},
                 {tr("Initiator\ng"), "initiator_g", {}, true},
                 {tr("Tint\ng"), "tint_g", {}, true},
                 {tr("Hours"), "hours", tr("From filling to taking out, annealing too"), true},
                 {tr("Filled\n%"), "filled_percent", tr("Moulds as a share of the vessel"), true},
                 {{}, "masters", {}, false}};
  if (!works.loads) return sheet;
  for (std::size_t i = 0; i < works.loads->loads.size(); ++i) {
    const PlannedLoad& load = works.loads->loads[i];
    CellRow row;
    for (const auto& [piece, count] : counts_of(load)) row.marks << qt(works.pieces[piece].name);
    const double number = static_cast<double>(i) + 1;
    const LoadMasses& masses = load.masses;
    const double hours = works.cures[i].total_h;
    row.cells = {number_cell(QString::number(i + 1), number),
                 number_cell(QString::number(load.places.size()), static_cast<double>(load.places.size())),
                 number_cell(length_number(load.thickest_mm, inches, 1), load.thickest_mm),
                 number_cell(QString::number(masses.resin_g, 'f', 0), masses.resin_g),
                 number_cell(QString::number(masses.initiator_g, 'f', 1), masses.initiator_g),
                 number_cell(QString::number(masses.tint_g, 'f', 1), masses.tint_g),
                 number_cell(hours_text(hours), hours),
                 number_cell(QString::number(100 * load.filled_share, 'f', 0), 100 * load.filled_share),
                 word_cell(contents_words(works, i))};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

QString loads_words(const WorksReckoning& works) {
  if (!works.loads) return told(works.no_loads);
  const LoadPlan& plan = *works.loads;
  QStringList words;
  if (plan.castings == 0 && plan.unfit.empty())
    return tr("Every prism has its casting: nothing is to be poured.");
  words << tr("%1 loads for %2 castings; no plan can have fewer than %3.")
               .arg(plan.loads.size())
               .arg(plan.castings)
               .arg(plan.least_loads);
  for (const UnfitPiece& piece : plan.unfit) words << told(piece.words);
  if (const std::string note = way_up_note(works.pieces); !note.empty()) words << told(note);
  return words.join(' ');
}

QString contents_words(const WorksReckoning& works, std::size_t load) {
  QStringList words;
  for (const auto& [piece, count] : counts_of(works.loads->loads[load]))
    words << QStringLiteral("%1 × %2").arg(count).arg(qt(works.pieces[piece].name));
  return words.join(QStringLiteral(", "));
}

QStringList cure_words(const CurePlan& cure) {
  QStringList lines;
  for (const CureStep& step : cure.steps) lines << tr("%1: %2").arg(span_text(step), qt(step.what));
  for (const std::string& note : cure.notes) lines << told(note);
  return lines;
}

CellSheet made_loads_sheet(const Lensbook& book) {
  CellSheet sheet;
  sheet.heads = {{tr("Load"), "load", {}, true},        {tr("When"), "when_utc", {}, false},
                 {tr("Resin"), "resin", {}, false},     {tr("Lot"), "resin_lot", {}, false},
                 {tr("Tint"), "tint", {}, false},       {tr("Castings"), "castings", {}, true},
                 {tr("Resin\ng"), "resin_g", {}, true}, {tr("By"), "by", {}, false},
                 {tr("Note"), "note", {}, false}};
  std::map<long long, QStringList> cast;
  for (const LedgerEntry& line : book.ledger())
    if (line.load != 0 && line.to == Stage::cast) cast[line.load] << qt(line.mark);
  const std::vector<VesselLoad>& loads = book.works_log().loads;
  for (auto load = loads.rbegin(); load != loads.rend(); ++load) {
    CellRow row;
    row.marks = cast[load->number];
    row.cells = {number_cell(QString::number(load->number), static_cast<double>(load->number)),
                 Cell{local_time(load->when_utc), qt(load->when_utc), qt(load->when_utc)},
                 word_cell(qt(load->resin)),
                 word_cell(qt(load->resin_lot)),
                 word_cell(qt(load->tint)),
                 number_cell(QString::number(row.marks.size()), static_cast<double>(row.marks.size())),
                 number_cell(QString::number(load->resin_g, 'f', 0), load->resin_g),
                 word_cell(qt(load->by)),
                 word_cell(qt(load->note))};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

}  // namespace prismwright
