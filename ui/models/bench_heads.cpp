#include "core/lens/quantities.h"
#include "ui/models/bench_table.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString head(int column, const QString& unit) {
  switch (column) {
    case BenchTable::mark:
      return BenchTable::tr("Mark");
    case BenchTable::azimuth:
      return BenchTable::tr("Azimuth\ndeg");
    case BenchTable::elevation:
      return BenchTable::tr("Elevation\ndeg");
    case BenchTable::laser_over:
      return BenchTable::tr("Laser up\n%1").arg(unit);
    case BenchTable::spot_up:
      return BenchTable::tr("Spot up\n%1").arg(unit);
    case BenchTable::spot_left:
      return BenchTable::tr("left\n%1").arg(unit);
    case BenchTable::turn:
      return BenchTable::tr("k\ndeg/deg");
    case BenchTable::read_up:
      return BenchTable::tr("Read up\n%1").arg(unit);
    case BenchTable::read_left:
      return BenchTable::tr("left\n%1").arg(unit);
    case BenchTable::off_now:
      return BenchTable::tr("Off now\ndeg");
    case BenchTable::off_before:
      return BenchTable::tr("Before\ndeg");
    case BenchTable::verdict:
      return BenchTable::tr("Verdict");
    case BenchTable::mend:
      return BenchTable::tr("What to do");
    default:
      return {};
  }
}

QString meaning(int column) {
  switch (column) {
    case BenchTable::azimuth:
    case BenchTable::elevation:
      return BenchTable::tr(
          "The way of the laser, from the focus to the middle of the face where light enters");
    case BenchTable::laser_over:
      return BenchTable::tr("How far over the principal focus the laser stands, on the lens axis");
    case BenchTable::spot_up:
      return BenchTable::tr("Where the spot should fall, over the level mark at the height of the focus");
    case BenchTable::spot_left:
      return BenchTable::tr("Where the spot should fall, left of the panel's axis as seen from the focus");
    case BenchTable::turn:
      return BenchTable::tr("Degrees that the beam rises for each degree that the prism is tilted nose up");
    case BenchTable::read_up:
      return BenchTable::tr("The last reading: how far the spot lies over its place");
    case BenchTable::read_left:
      return BenchTable::tr(
          "The last reading: how far the spot lies left of its place, as seen from the focus");
    case BenchTable::off_now:
      return BenchTable::tr("How far the beam is off its way by the last reading, up and aside together");
    case BenchTable::off_before:
      return BenchTable::tr("The same by the first reading");
    default:
      return {};
  }
}

QString exact(double value) { return QString::fromStdString(number_text(value)); }

/// Words in quotation marks wherever they would break the line into other cells.
QString cell(const std::string& words) {
  QString text = QString::fromStdString(words);
  if (!text.contains(',') && !text.contains('"') && !text.contains('\n')) return text;
  return QLatin1Char('"') + text.replace('"', QStringLiteral("\"\"")) + QLatin1Char('"');
}

QStringList reading_cells(const BenchedPrism& prism) {
  if (!prism.now) return {{}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}};
  const BenchReading& last = *prism.last;
  const BenchMend& now = *prism.now;
  return {exact(last.height_mm),
          exact(last.aside_mm),
          exact(last.board_mm),
          exact(now.error_deg),
          exact(now.aside_deg),
          exact(now.off_deg()),
          now.within ? QStringLiteral("yes") : QStringLiteral("no"),
          cell(now.words),
          exact(prism.before->off_deg()),
          cell(last.by),
          cell(last.note)};
}

}  // namespace

QVariant BenchTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  switch (role) {
    case Qt::DisplayRole:
      return head(section, length_unit(inches_));
    case Qt::ToolTipRole:
      return meaning(section);
    case Qt::TextAlignmentRole: {
      const bool left = section == mark || section == verdict || section == mend;
      return QVariant((left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
    default:
      return {};
  }
}

QString bench_csv(const BenchTable& table, const std::vector<int>& rows) {
  QString text = QStringLiteral(
      "mark,azimuth_deg,elevation_deg,laser_over_focus_mm,spot_height_mm,spot_aside_mm,turn_per_tilt,"
      "read_height_mm,read_aside_mm,read_board_mm,error_deg,aside_deg,off_deg,within,mend,off_before_deg,by,"
      "note\n");
  for (const int index : rows) {
    const BenchedPrism& prism = table.row(index);
    const BenchAim& aim = *prism.aim;
    QStringList cells{QString::fromStdString(aim.mark), exact(aim.azimuth_deg), exact(aim.elevation_deg),
                      exact(aim.stands_over_mm)};
    if (aim.trouble.empty()) {
      const BoardPlace spot = aim.spot_at(table.board_mm());
      cells << exact(spot.height_mm) << exact(spot.aside_mm) << exact(aim.turn_per_tilt);
    } else {
      cells << QString() << QString() << QString();
    }
    text += (cells + reading_cells(prism)).join(',') + '\n';
  }
  return text;
}

}  // namespace prismwright
