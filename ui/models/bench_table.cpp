#include "ui/models/bench_table.h"

#include <QBrush>
#include <algorithm>

#include "ui/models/bench_words.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kLast = 1e300;  // what is not known sorts behind everything that is

QString dash() { return QStringLiteral("–"); }
QString figure(double value, int places) {
  const QString text = QString::number(value, 'f', places);
  // A mere rounding of nothing has no side.
  return text.startsWith('-') && text.toDouble() == 0 ? text.mid(1) : text;
}
QString text_of(const std::string& text) { return QString::fromStdString(text); }
bool no_spot(const BenchedPrism& prism) { return !prism.aim->trouble.empty(); }

QString verdict_text(const BenchedPrism& prism) {
  if (no_spot(prism)) return BenchTable::tr("no spot");
  if (!prism.now) return BenchTable::tr("not read");
  const Verdict verdict = prism.now->within ? Verdict::clear : Verdict::clash;
  return QStringLiteral("%1 %2").arg(palette::verdict_sign(verdict),
                                     prism.now->within ? BenchTable::tr("within") : BenchTable::tr("off"));
}

int verdict_order(const BenchedPrism& prism) {
  if (no_spot(prism)) return 2;
  if (!prism.now) return 3;
  return prism.now->within ? 1 : 0;
}

}  // namespace

BenchTable::BenchTable(QObject* parent) : QAbstractTableModel(parent) {}

void BenchTable::show(const BenchMaker& maker, bool inches) {
  const std::vector<BenchedPrism>& rows = maker.prisms();
  const bool same_prisms =
      std::equal(rows.begin(), rows.end(), rows_.begin(), rows_.end(),
                 [](const BenchedPrism& a, const BenchedPrism& b) { return a.aim->mark == b.aim->mark; });
  if (!same_prisms) beginResetModel();
  rows_ = rows;
  plan_ = maker.plan();
  inches_ = inches;
  if (same_prisms) {
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
    emit headerDataChanged(Qt::Horizontal, 0, kColumns - 1);
    return;
  }
  lines_.clear();
  for (int i = 0; i < rowCount(); ++i) lines_.insert(markOf(i), i);
  endResetModel();
}

bool BenchTable::laserLeavesFocus() const {
  return std::any_of(rows_.begin(), rows_.end(),
                     [](const BenchedPrism& prism) { return prism.aim->stands_over_mm != 0; });
}

int BenchTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int BenchTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : kColumns; }

QString BenchTable::words(const BenchedPrism& prism, int column) const {
  const BenchAim& aim = *prism.aim;
  if (no_spot(prism) && column >= spot_up && column <= off_before)
    return column == verdict ? verdict_text(prism) : column == mend ? text_of(aim.trouble) : dash();
  switch (column) {
    case mark:
      return text_of(aim.mark);
    case azimuth:
      return figure(aim.azimuth_deg, 2);
    case elevation:
      return figure(aim.elevation_deg, 2);
    case laser_over:
      return length_number(aim.stands_over_mm, inches_, 1);
    case spot_up:
      return length_number(aim.spot_at(board_mm()).height_mm, inches_, 1);
    case spot_left:
      return figure(length_number(aim.spot_at(board_mm()).aside_mm, inches_, 1).toDouble(), inches_ ? 3 : 1);
    case turn:
      return figure(aim.turn_per_tilt, 3);
    case read_up:
      return prism.last ? length_number(prism.last->height_mm, inches_, 1) : dash();
    case read_left:
      return prism.last ? length_number(prism.last->aside_mm, inches_, 1) : dash();
    case off_now:
      return prism.now ? figure(prism.now->off_deg(), 3) : dash();
    case off_before:
      return prism.before ? figure(prism.before->off_deg(), 3) : dash();
    case mend:
      return prism.now ? text_of(prism.now->words) : dash();
    case verdict:
      return verdict_text(prism);
    default:
      return {};
  }
}

QString BenchTable::tip(const BenchedPrism& prism, int column) const {
  if (no_spot(prism)) return text_of(prism.aim->trouble);
  const bool earlier = column == off_before;
  if (!prism.now || column < read_up) return {};
  const BenchReading& reading = earlier ? *prism.first : *prism.last;
  QString text = mend_sentence(earlier ? *prism.before : *prism.now);
  text += tr("\nBoard at %1").arg(length_text(reading.board_mm, inches_, 0));
  if (!reading.by.empty()) text += tr("\nRead by %1").arg(text_of(reading.by));
  if (!reading.note.empty()) text += QLatin1Char('\n') + text_of(reading.note);
  return text;
}

QVariant BenchTable::sortValue(const BenchedPrism& prism, int column) const {
  const BenchAim& aim = *prism.aim;
  switch (column) {
    case azimuth:
      return aim.azimuth_deg;
    case elevation:
      return aim.elevation_deg;
    case laser_over:
      return aim.stands_over_mm;
    case spot_up:
      return no_spot(prism) ? kLast : aim.spot_at(board_mm()).height_mm;
    case spot_left:
      return no_spot(prism) ? kLast : aim.spot_at(board_mm()).aside_mm;
    case turn:
      return no_spot(prism) ? kLast : aim.turn_per_tilt;
    case read_up:
      return prism.now ? prism.last->height_mm : kLast;
    case read_left:
      return prism.now ? prism.last->aside_mm : kLast;
    case off_now:
      return prism.now ? prism.now->off_deg() : kLast;
    case off_before:
      return prism.before ? prism.before->off_deg() : kLast;
    case verdict:
      return verdict_order(prism);
    case mend:
      // What is to be done comes before what is well and what is not known.
      return QString::number(verdict_order(prism)) + words(prism, column);
    default:
      return text_of(aim.mark);
  }
}

QVariant BenchTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const BenchedPrism& of = row(index.row());
  const int column = index.column();
  switch (role) {
    case Qt::DisplayRole:
      return words(of, column);
    case kSortRole:
      return sortValue(of, column);
    case Qt::ToolTipRole:
      return tip(of, column);
    case Qt::TextAlignmentRole: {
      const bool left = column == mark || column == verdict || column == mend;
      return QVariant((left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
    case Qt::ForegroundRole:
      if (column == verdict && of.now) return QBrush(of.now->within ? palette::well() : palette::amiss());
      return {};
    default:
      return {};
  }
}

MarkFilter::MarkFilter(QObject* parent) : QSortFilterProxyModel(parent) {
  setSortRole(BenchTable::kSortRole);
  setDynamicSortFilter(true);
}

void MarkFilter::setWords(const QString& text) {
  words_ = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  invalidateFilter();
}

bool MarkFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  const QString mark = sourceModel()->index(row, BenchTable::mark, parent).data().toString();
  return std::all_of(words_.begin(), words_.end(),
                     [&](const QString& word) { return mark.contains(word, Qt::CaseInsensitive); });
}

}  // namespace prismwright
