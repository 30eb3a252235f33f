#include "ui/models/inspection_table.h"

#include <QCoreApplication>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("InspectionTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

Cell number_or_blank(long long number) {
  return number == 0 ? blank_cell() : number_cell(QString::number(number), static_cast<double>(number));
}

/// Sign and word of how a prism or feature stands, worst first.
Cell standing(const QString& sign, const QString& words, int rank) {
  return {sign.isEmpty() ? words : sign + QLatin1Char(' ') + words, rank, words};
}

Cell standing_of(const InspectedPrism& prism) {
  if (prism.fit) return standing(palette::verdict_sign(Verdict::clear), tr("fit"), 3);
  if (prism.out > 0) return standing(palette::verdict_sign(Verdict::clash), tr("out"), 0);
  const bool begun = prism.within > 0;
  return standing({}, begun ? tr("begun") : tr("not measured"), begun ? 1 : 2);
}

Cell standing_of(const CheckedFeature& checked) {
  switch (checked.verdict) {
    case InspectionVerdict::within:
      return standing(palette::verdict_sign(Verdict::clear), tr("within"), 2);
    case InspectionVerdict::out:
      return standing(palette::verdict_sign(Verdict::clash), tr("out"), 0);
    case InspectionVerdict::not_measured:
      break;
  }
  return standing({}, checked.feature.needed ? tr("not measured") : tr("not needed"),
                  checked.feature.needed ? 1 : 3);
}

QString decision_words(const std::optional<Decision>& decision) {
  if (!decision) return {};
  switch (decision->kind) {
    case DecisionKind::accept:
      return tr("accepted: %1").arg(qt(decision->note));
    case DecisionKind::shim:
      return tr("to be shimmed: %1").arg(qt(decision->note));
    case DecisionKind::scrap:
      return tr("scrapped: %1").arg(qt(decision->note));
  }
  return {};
}

bool in_inches(const Feature& feature, bool inches) { return inches && feature.unit == "mm"; }

QString feature_number(const Feature& feature, double value, bool inches) {
  return feature.unit == "mm" ? length_number(value, inches, 3) : QString::number(value, 'f', 3);
}

Cell feature_cell(const Feature& feature, std::optional<double> value, bool inches) {
  return value ? number_cell(feature_number(feature, *value, inches), *value) : blank_cell();
}

}  // namespace

CellSheet inspected_sheet(const std::vector<InspectedPrism>& prisms) {
  CellSheet sheet;
  sheet.heads = {{tr("Prism"), "mark", {}, false},
                 {tr("Serial"), "serial", tr("Number of its casting"), true},
                 {tr("Standing"), "standing", {}, false},
                 {tr("Within"), "within", tr("Measured features within tolerance"), true},
                 {tr("Out"), "out", {}, true},
                 {tr("Missing"), "missing", tr("Features that must still be measured"), true},
                 {tr("Decision"), "decision", {}, false},
                 {{}, "words", {}, false}};
  for (const InspectedPrism& prism : prisms) {
    CellRow row;
    row.marks = {qt(prism.mark)};
    row.amiss = prism.out > 0 && !prism.fit;
    row.cells = {word_cell(qt(prism.mark)),
                 number_or_blank(prism.serial),
                 standing_of(prism),
                 number_cell(QString::number(prism.within), prism.within),
                 number_cell(QString::number(prism.out), prism.out),
                 number_cell(QString::number(prism.missing), prism.missing),
                 word_cell(decision_words(prism.decision)),
                 word_cell(qt(prism.words))};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

CellSheet features_sheet(const InspectedPrism& prism, bool inches) {
  CellSheet sheet;
  sheet.heads = {{tr("Measure"), "name", {}, false},
                 {tr("Drawn"), "drawn", {}, true},
                 {tr("Within ±"), "tolerance", {}, true},
                 {tr("Unit"), "unit", {}, false},
                 {tr("Measured"), "measured", tr("The newest reading"), true},
                 {tr("Off"), "off", tr("Measured less drawn"), true},
                 {tr("Standing"), "standing", {}, false},
                 {{}, "feature", {}, false}};
  for (const CheckedFeature& checked : prism.features) {
    const Feature& feature = checked.feature;
    CellRow row;
    row.marks = {qt(feature.key)};
    row.amiss = checked.verdict == InspectionVerdict::out;
    row.cells = {word_cell(qt(feature.name)),
                 feature_cell(feature, feature.drawn, inches),
                 feature_cell(feature, feature.within, inches),
                 word_cell(in_inches(feature, inches) ? QStringLiteral("in") : qt(feature.unit)),
                 feature_cell(feature, checked.measured, inches),
                 feature_cell(feature, checked.measured ? std::optional(checked.off) : std::nullopt, inches),
                 standing_of(checked),
                 word_cell(qt(feature.key))};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

QString inspection_words(const std::vector<InspectedPrism>& prisms) {
  const InspectionSummary all = summary_of(prisms);
  return tr("%1 of %2 prisms fit to glaze, %3 measured, %4 out of tolerance and undecided")
      .arg(all.fit)
      .arg(all.prisms)
      .arg(all.measured)
      .arg(all.out);
}

}  // namespace prismwright
