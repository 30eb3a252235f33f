#include "ui/models/errors_words.h"

#include <QCoreApplication>
#include <array>

#include "core/lens/quantities.h"
#include "ui/models/light_numbers.h"

namespace prismwright {
namespace {

constexpr double kIndexUnit = 0.001;  ///< for which turns by the index are shown

QString words(const char* text) { return QCoreApplication::translate("errors", text); }
QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
QString exact(double value) { return QString::fromStdString(number_text(value)); }
QString none() { return QStringLiteral("–"); }

QString fixed(double value, int decimals) {
  QString text = QString::number(value, 'f', decimals);
  if (text.startsWith('-') && text.toDouble() == 0) text.remove(0, 1);
  return text.replace('-', QChar(0x2212));
}

QString unit_words(ErrorKind kind) {
  const QString unit = text_of(unit_of(kind));
  return unit.isEmpty() ? unit : ' ' + unit;
}

/// Which turn of the beam an error is shown by: up, about the upright, or the root mean square all round.
enum class Shown { up, level, round };

struct TurnColumn {
  SettingMove move;
  Shown shown;
  const char* head;
  const char* key;
};
constexpr std::array<TurnColumn, 12> kTurns{
    {{SettingMove::tilt, Shown::up, QT_TRANSLATE_NOOP("errors", "tilt\n/deg"), "tilt_up_deg_per_deg"},
     {SettingMove::roll, Shown::level, QT_TRANSLATE_NOOP("errors", "roll\n/deg"), "roll_level_deg_per_deg"},
     {SettingMove::turn, Shown::level, QT_TRANSLATE_NOOP("errors", "turn\n/deg"), "turn_level_deg_per_deg"},
     {SettingMove::shift_seaward, Shown::round, QT_TRANSLATE_NOOP("errors", "sea-\nward\n/mm"),
      "seaward_round_deg_per_mm"},
     {SettingMove::shift_sideways, Shown::level, QT_TRANSLATE_NOOP("errors", "side-\nways\n/mm"),
      "sideways_level_deg_per_mm"},
     {SettingMove::shift_up, Shown::up, QT_TRANSLATE_NOOP("errors", "up\n/mm"), "up_up_deg_per_mm"},
     {SettingMove::first_face, Shown::round, QT_TRANSLATE_NOOP("errors", "first\nface\n/deg"),
      "first_face_round_deg_per_deg"},
     {SettingMove::reflecting_face, Shown::round, QT_TRANSLATE_NOOP("errors", "reflect.\nface\n/deg"),
      "reflecting_face_round_deg_per_deg"},
     {SettingMove::last_face, Shown::round, QT_TRANSLATE_NOOP("errors", "last\nface\n/deg"),
      "last_face_round_deg_per_deg"},
     {SettingMove::index, Shown::round, QT_TRANSLATE_NOOP("errors", "index\n/0.001"),
      "index_round_deg_per_thousandth"},
     {SettingMove::lamp_seaward, Shown::round, QT_TRANSLATE_NOOP("errors", "lamp\nsea.\n/mm"),
      "lamp_seaward_round_deg_per_mm"},
     {SettingMove::lamp_up, Shown::up, QT_TRANSLATE_NOOP("errors", "lamp\nup\n/mm"), "lamp_up_up_deg_per_mm"}}};

double turn_of(const PrismSensitivity& prism, const TurnColumn& column) {
  const double unit = column.move == SettingMove::index ? kIndexUnit : 1;
  const BeamTurn& turn = prism.mean[at_of(column.move)];
  if (column.shown == Shown::round) return unit * prism.spread_deg[at_of(column.move)];
  return unit * (column.shown == Shown::level ? turn.level_deg : turn.upright_deg);
}

QString tip_of(const TurnColumn& column) {
  const char* shown = column.shown == Shown::up      ? QT_TRANSLATE_NOOP("errors", "the beam turns up by")
                      : column.shown == Shown::level ? QT_TRANSLATE_NOOP("errors", "the beam turns level by")
                                                     : QT_TRANSLATE_NOOP("errors", "root mean square turn");
  return words("%1: %2").arg(text_of(name_of(column.move)), words(shown));
}

QString range_words(const TrialSpread& spread, int decimals) {
  return words("%1 to %2").arg(fixed(spread.p5, decimals), fixed(spread.p95, decimals));
}

}  // namespace

QString error_words(ErrorKind kind) { return words(std::string(name_of(kind)).c_str()); }

QStringList errors_words(const SettingErrors& errors) {
  QStringList drawn;
  for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
    drawn << words("%1 %2%3").arg(error_words(kErrorKinds[k]), exact(errors.deviations[k]),
                                  unit_words(kErrorKinds[k]));
  return {words("Peak %1 of the planned on average; 5 to 95 % of the trials %2")
              .arg(fixed(errors.peak_share.mean, 3), range_words(errors.peak_share, 3)),
          words("Elevation of the peak %1 (planned %2 deg)")
              .arg(words("%1 deg").arg(range_words(errors.elevation_deg, 3)),
                   fixed(errors.planned.elevation_deg, 3)),
          words("Height at half peak %1 (planned %2 deg)")
              .arg(words("%1 deg").arg(range_words(errors.height_deg, 3)), fixed(errors.planned.height_deg, 3)),
          words("Panel %1, %2 trials, seed %3: %4; planned peak %5, read within %6")
              .arg(errors.panel)
              .arg(errors.trials)
              .arg(errors.seed)
              .arg(drawn.join(QStringLiteral(", ")), candela_text(errors.planned.cd),
                   percent_text(errors.map_error))};
}

ErrorsTable tolerances_table(const SettingErrors& errors) {
  ErrorsTable table;
  table.heads = {words("zone"), words("of peak\n%")};
  table.keys = {"zone", "share_of_peak"};
  table.tips = {{}, words("Share of the panel's peak that the zone adds")};
  for (const ErrorKind kind : kErrorKinds) {
    table.heads << error_words(kind).replace(' ', '\n') + '\n' + text_of(unit_of(kind));
    table.keys << error_words(kind).replace(' ', '_') +
                      (unit_of(kind).empty() ? QString() : '_' + text_of(unit_of(kind)));
    table.tips << words("Standard deviation that alone leaves %1 % on average; – where it is over %2%3")
                      .arg(100 * kToleratedShare)
                      .arg(exact(bound_of(kind)), unit_words(kind));
  }
  for (const ToleranceRow& tolerance : errors.tolerances) {
    const QString zone = QString::fromStdString(tolerance.zone);
    ErrorsRow row{zone, {zone.isEmpty() ? words("panel") : zone, fixed(100 * tolerance.peak_share, 1)}, {}};
    row.saved = {zone.isEmpty() ? QStringLiteral("panel") : zone, exact(tolerance.peak_share)};
    for (std::size_t k = 0; k < kErrorKinds.size(); ++k) {
      const int decimals = kErrorKinds[k] == ErrorKind::index ? 4 : kErrorKinds[k] == ErrorKind::lamp ? 2 : 3;
      const std::optional<double>& deviation = tolerance.deviation[k];
      row.shown << (deviation ? fixed(*deviation, decimals) : none());
      row.saved << (deviation ? exact(*deviation) : QString());
    }
    table.rows.push_back(row);
  }
  return table;
}

ErrorsTable turns_table(const SettingErrors& errors, int panel) {
  ErrorsTable table;
  table.heads = {words("prism")};
  table.keys = {"prism"};
  table.tips = {{}};
  for (const TurnColumn& column : kTurns) {
    table.heads << words(column.head);
    table.keys << QLatin1String(column.key);
    table.tips << tip_of(column);
  }
  for (const PrismSensitivity& prism : errors.prisms) {
    if (prism.panel != panel) continue;
    const QString mark = QString::fromStdString(prism.mark);
    ErrorsRow row{mark, {mark}, {mark}};
    for (const TurnColumn& column : kTurns) {
      const bool shines = prism.flux_lm > 0;
      row.shown << (shines ? fixed(turn_of(prism, column), 3) : none());
      row.saved << (shines ? exact(turn_of(prism, column)) : QString());
    }
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace prismwright
