#include "ui/models/make_table.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("MakeTable", text); }

QString qt(const std::string& text) { return QString::fromStdString(text); }

Cell count_cell(int count) {
  return count == 0 ? Cell{QString(), 0.0, QStringLiteral("0")} : number_cell(QString::number(count), count);
}

int at(const MakeRow& row, Stage stage) { return row.at[static_cast<std::size_t>(stage)]; }

int sound_castings(const MakeRow& row) {
  int count = 0;
  for (const Stage stage : {Stage::cast, Stage::annealed, Stage::polished, Stage::proved, Stage::glazed})
    count += at(row, stage);
  return count;
}

QString likeness_words(const MakeRow& row) {
  if (!row.mirror_of.empty()) return tr("mirror of %1").arg(qt(row.mirror_of));
  if (!row.turned_twin_of.empty()) return tr("%1 turned").arg(qt(row.turned_twin_of));
  return {};
}

QString panels_words(const std::vector<int>& panels) {
  QStringList words;
  for (const int panel : panels) words << QStringLiteral("P%1").arg(panel, 2, 10, QLatin1Char('0'));
  return words.join(' ');
}

CellRow row_of(const MakeRow& made, bool inches) {
  CellRow row;
  for (const std::string& mark : made.marks) row.marks << qt(mark);
  row.cells = {word_cell(qt(made.master)),
               count_cell(static_cast<int>(made.marks.size())),
               word_cell(likeness_words(made)),
               word_cell(made.has_master ? palette::verdict_sign(Verdict::clear) : QString()),
               word_cell(made.has_mould ? palette::verdict_sign(Verdict::clear) : QString()),
               count_cell(sound_castings(made)),
               count_cell(at(made, Stage::glazed)),
               count_cell(made.castings_scrapped),
               count_cell(made.spares_on_shelf),
               count_cell(made.short_of),
               word_cell(qt(made.next)),
               number_cell(length_number(made.thickness_mm, inches, 1), made.thickness_mm),
               number_cell(QString::number(made.hours_left, 'f', 1), made.hours_left),
               number_cell({}, made.need.chance),
               word_cell({}),
               word_cell({})};
  row.cells[14].saved = panels_words(made.holds_up);
  row.cells[15].saved = row.marks.join(' ');
  return row;
}

}  // namespace

CellSheet make_sheet(const MakeList& list, bool inches) {
  const QString unit = length_unit(inches);
  CellSheet sheet;
  sheet.heads = {
      {tr("Master"), "master", {}, false},
      {tr("Prisms"), "prisms", tr("Prisms of the lens that are cast from it"), true},
      {tr("Likeness"), "likeness",
       tr("A mirror image needs a master of its own; one that is another turned end for end can share "
          "its mould where works allow it"),
       false},
      {tr("Master\nmade"), "has_master", {}, false},
      {tr("Mould\nmade"), "has_mould", {}, false},
      {tr("Cast"), "sound_castings", tr("Prisms with a sound casting, at whatever stage"), true},
      {tr("Glazed"), "glazed", {}, true},
      {tr("Lost"), "castings_scrapped", tr("Castings that were scrapped"), true},
      {tr("Spare"), "spares_on_shelf", tr("Sound spare castings on the shelf"), true},
      {tr("To\npour"), "castings_to_pour", tr("Castings still to pour, the expected loss counted in"), true},
      {tr("Next"), "next", {}, false},
      {tr("Thick\n%1").arg(unit), "thickness_mm", tr("Thickest section"), true},
      {tr("Hours\nleft"), "hours_left", tr("From here to glazed, one step after the other"), true},
      {{}, "chance", {}, true},
      {{}, "holds_up", {}, false},
      {{}, "marks", {}, false}};
  for (const MakeRow& row : list.rows) sheet.rows.push_back(row_of(row, inches));
  return sheet;
}

QString make_words(const MakeList& list) {
  const MakeTotals& all = list.totals;
  QStringList words;
  words << tr("%1 masters for %2 prisms").arg(all.masters).arg(all.prisms) +
               (all.masters_to_make > 0 ? tr(", %1 still to make").arg(all.masters_to_make) : QString());
  words << tr("%1 moulds to make").arg(all.moulds_to_make);
  words << tr("%1 castings to pour").arg(all.short_of) +
               (all.short_of > 0 ? tr(" for %1 sound ones").arg(all.sound_wanted) : QString());
  if (all.half_turn_saves > 0) words << tr("%1 masters fewer if turned twins shared").arg(all.half_turn_saves);
  return words.join(QStringLiteral(" · "));
}

QStringList next_words(const MakeList& list, int lines) {
  QStringList words;
  for (std::size_t i = 0; i < list.order.size() && words.size() < lines; ++i) {
    const MakeRow& row = list.rows[list.order[i]];
    words << tr("%1: %2").arg(qt(row.master), qt(row.next));
  }
  return words;
}

}  // namespace prismwright
