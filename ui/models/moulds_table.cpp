#include "ui/models/moulds_table.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/base/inches.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kMm3PerLitre = 1e6;

QString tr(const char* text) { return QCoreApplication::translate("MouldsTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

/// Nothing undercut is left empty, so that the eye finds the others.
Cell area_cell(double mm2, bool inches) {
  if (mm2 <= 0) return {QString(), 0.0, QStringLiteral("0")};
  return number_cell(inches ? QString::number(mm2 / kSquareInch_mm2, 'f', 3) : QString::number(mm2, 'f', 1),
                     mm2);
}

Cell depth_cell(double mm, bool inches) {
  return mm <= 0 ? Cell{QString(), 0.0, QStringLiteral("0")} : number_cell(length_number(mm, inches, 1), mm);
}

Cell state_cell(const WorkedMould& mould) {
  const bool made = mould.facts() != nullptr;
  const DrawFacts& draw = mould.answer.draw;
  const Verdict verdict = !made || !draw.drawable() ? Verdict::clash
                          : draw.free()             ? Verdict::clear
                                                    : Verdict::tight;
  const QString words = !made ? tr("none") : draw.free() ? tr("made") : tr("steep");
  return {palette::verdict_sign(verdict) + QLatin1Char(' ') + words, -static_cast<int>(verdict), words};
}

CellRow row_of(const WorkedMould& mould, bool inches) {
  const DrawFacts& draw = mould.answer.draw;
  const MouldFacts* facts = mould.facts();
  CellRow row;
  for (const std::string& mark : mould.marks) row.marks << qt(mark);
  row.amiss = facts == nullptr || !draw.drawable();
  QStringList letters;
  for (std::size_t i = 0; i < draw.undercuts.size(); ++i)
    letters << qt(undercut_letter(i) + " " + draw.undercuts[i].face);
  row.cells = {
      word_cell(qt(mould.master)),
      state_cell(mould),
      number_cell(QString::number(draw.draft_deg, 'f', 1), draw.draft_deg),
      area_cell(undercut_mm2(draw, UndercutKind::hidden), inches),
      area_cell(undercut_mm2(draw, UndercutKind::steep), inches),
      depth_cell(deepest_mm(draw), inches),
      facts ? number_cell(length_number(facts->standing_mm, inches, 0), facts->standing_mm) : blank_cell(),
      facts ? number_cell(QString::number((facts->lower_mm3 + facts->upper_mm3) / kMm3PerLitre, 'f', 2),
                          (facts->lower_mm3 + facts->upper_mm3) / kMm3PerLitre)
            : blank_cell(),
      facts ? number_cell(QString::number(facts->resin_g, 'f', 0), facts->resin_g) : blank_cell(),
      word_cell(letters.join(QStringLiteral(", "))),
      word_cell({})};
  row.cells.back().saved = row.marks.join(' ');
  return row;
}

}  // namespace

CellSheet moulds_sheet(const std::vector<WorkedMould>& moulds, bool inches) {
  const QString unit = length_unit(inches);
  const QString area = inches ? QStringLiteral("in²") : QStringLiteral("mm²");
  CellSheet sheet;
  sheet.heads = {
      {tr("Master"), "master", {}, false},
      {tr("Mould"), "mould",
       tr("Steep: it can be made and drawn, with faces of little draft. None: it cannot be made in two halves"),
       false},
      {tr("Draft\ndeg"), "draft_deg", tr("Least of all faces"), true},
      {tr("Hidden\n%1").arg(area), "hidden_mm2", tr("Faces that the draw cannot leave"), true},
      {tr("Steep\n%1").arg(area), "steep_mm2", tr("Faces with less draft than works ask for"), true},
      {tr("Deepest\n%1").arg(unit), "deepest_mm", tr("How far a hidden face reaches under the rest"), true},
      {tr("Stands\n%1").arg(unit), "standing_mm", tr("Its height in the vessel, gate up"), true},
      {{}, "tooling_l", {}, true},
      {{}, "resin_g", {}, true},
      {{}, "undercut_faces", {}, false},
      {{}, "marks", {}, false}};
  for (const WorkedMould& mould : moulds) sheet.rows.push_back(row_of(mould, inches));
  return sheet;
}

QString moulds_words(const std::vector<WorkedMould>& moulds) {
  const auto made = std::count_if(moulds.begin(), moulds.end(),
                                  [](const WorkedMould& mould) { return mould.facts() != nullptr; });
  const auto undercut = std::count_if(moulds.begin(), moulds.end(), [](const WorkedMould& mould) {
    return !mould.answer.draw.undercuts.empty();
  });
  return tr("%1 of %2 moulds can be made in two halves, %3 have undercut faces. Loads and costs reckon with "
            "their own sizes, gates up.")
      .arg(made)
      .arg(moulds.size())
      .arg(undercut);
}

}  // namespace prismwright
