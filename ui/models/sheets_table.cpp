#include "ui/models/sheets_table.h"

#include <QCoreApplication>

#include "ui/models/parts_table.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("SheetsTable", text); }

}  // namespace

CellSheet sheets_sheet(const Nest& nest, bool inches) {
  const QString unit = length_unit(inches);
  CellSheet all;
  all.heads = {{tr("Sheet"), "sheet", {}, true},
               {tr("Metal"), "metal", {}, false},
               {tr("Thick\n%1").arg(unit), "thickness_mm", {}, true},
               {tr("Plates"), "plates", {}, true},
               {tr("Used\n%"), "used_percent", tr("Brass of the plates as a share of the sheet"), true},
               {{}, "width_mm", {}, true},
               {{}, "height_mm", {}, true},
               {{}, "marks", {}, false}};
  int number = 0;
  for (const NestSheet& sheet : nest.sheets) {
    ++number;
    CellRow row;
    for (const NestedPart& part : sheet.parts) row.marks << QString::fromStdString(part.mark);
    const auto plates = static_cast<double>(sheet.parts.size());
    row.cells = {number_cell(QString::number(number), number),
                 word_cell(metal_words(sheet.metal)),
                 number_cell(length_number(sheet.thickness_mm, inches), sheet.thickness_mm),
                 number_cell(QString::number(sheet.parts.size()), plates),
                 number_cell(QString::number(100 * sheet.used_share, 'f', 1), 100 * sheet.used_share),
                 number_cell({}, sheet.width_mm),
                 number_cell({}, sheet.height_mm),
                 word_cell(row.marks.join(' '))};
    all.rows.push_back(std::move(row));
  }
  return all;
}

QString sheets_words(const Nest& nest) {
  return tr("%1, %2 % used").arg(nest.sheets.size()).arg(100 * nest.used_share(), 0, 'f', 0);
}

}  // namespace prismwright
