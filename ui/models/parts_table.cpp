#include "ui/models/parts_table.h"

#include <QCoreApplication>

#include "geometry/frame_exports.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("PartsTable", text); }

std::vector<CellHead> heads(const QString& unit) {
  return {
      {tr("Part"), "part", tr("Alike parts are made from one drawing"), false},
      {tr("Pieces"), "pieces", {}, true},
      {tr("All\ng"), "mass_all_g", {}, true},
      {tr("Thick\n%1").arg(unit), "thickness_mm", tr("Of a plate"), true},
      {tr("Each\ng"), "mass_each_g", {}, true},
      {tr("Making"), "making", {}, false},
      {tr("Kind"), "kind", {}, false},
      {tr("Metal"), "metal", {}, false},
      {tr("Size"), "size", tr("Of a plate the smallest upright rectangle, else diameter and length"), false},
      {{}, "marks", {}, false}};
}

Cell mass_cell(std::optional<double> mass_g, double pieces) {
  if (!mass_g) return blank_cell();
  return number_cell(QString::number(*mass_g * pieces, 'f', 1), *mass_g * pieces);
}

}  // namespace

std::vector<PartsLine> parts_of(const MadeLens& made) {
  if (!made.frame || !made.metal) return {};
  return listed_parts(*made.frame, *made.metal);
}

QString kind_words(PartKind kind) { return QCoreApplication::translate("PartKind", name_of(kind)); }
QString making_words(PartMaking making) { return QCoreApplication::translate("PartMaking", name_of(making)); }
QString metal_words(PartMetal metal) { return QCoreApplication::translate("PartMetal", name_of(metal)); }

QStringList marks_of(const PartsLine& line) {
  QStringList marks;
  for (const std::string& mark : line.marks) marks << QString::fromStdString(mark);
  return marks;
}

QString marks_words(const QStringList& marks) {
  if (marks.size() < 2) return marks.value(0);
  return tr("%1 and %2 alike").arg(marks.front()).arg(marks.size() - 1);
}

QString total_words(const std::vector<PartsLine>& lines) {
  const PartsTotals totals = totals_of(lines);
  const QString all = mass_text(totals.brass_g + totals.steel_g);
  if (totals.steel_g <= 0) return all;
  return tr("%1, %2 of it steel").arg(all, mass_text(totals.steel_g));
}

CellSheet parts_sheet(const std::vector<PartsLine>& lines, bool inches) {
  CellSheet sheet;
  sheet.heads = heads(length_unit(inches));
  for (const PartsLine& line : lines) {
    const QStringList marks = marks_of(line);
    Cell part = word_cell(marks_words(marks));
    part.saved = marks.value(0);
    sheet.rows.push_back(
        {marks,
         {part, number_cell(QString::number(line.quantity), line.quantity),
          mass_cell(line.mass_g, line.quantity),
          line.thickness_mm > 0 ? number_cell(length_number(line.thickness_mm, inches), line.thickness_mm)
                                : blank_cell(),
          mass_cell(line.mass_g, 1), word_cell(making_words(line.making)), word_cell(kind_words(line.kind)),
          word_cell(metal_words(line.metal)),
          word_cell(QString::fromStdString(inches ? line.size_inches : line.size)),
          word_cell(marks.join(' '))}});
  }
  return sheet;
}

}  // namespace prismwright
