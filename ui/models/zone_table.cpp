#include "ui/models/zone_table.h"

#include <QBrush>
#include <QFont>
#include <algorithm>
#include <array>

#include "ui/models/shown_numbers.h"
#include "ui/models/slow_pace.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

/// While a limit is dragged, rows are painted anew a few at a time: a cell takes longer than a ray.
constexpr int kRowsInATurn = 7;

QString kind_word(ZoneKind kind) {
  switch (kind) {
    case ZoneKind::centre:
      return ZoneTable::tr("centre");
    case ZoneKind::ring:
      return ZoneTable::tr("ring");
    case ZoneKind::upper:
      return ZoneTable::tr("upper");
    case ZoneKind::lower:
      return ZoneTable::tr("lower");
  }
  return {};
}

QString fixed(double value, int decimals) {
  QString text = QString::number(value, 'f', decimals);
  if (text.startsWith('-') && text.toDouble() == 0) text.remove(0, 1);
  return text.replace('-', QChar(0x2212));
}

std::optional<ZoneCell> cell_of(int column) {
  switch (column) {
    case ZoneTable::from:
      return ZoneCell::from;
    case ZoneTable::to:
      return ZoneCell::to;
    case ZoneTable::margin:
      return ZoneCell::margin;
    case ZoneTable::breadth:
      return ZoneCell::breadth;
    case ZoneTable::thickness:
      return ZoneCell::thickness;
    default:
      return std::nullopt;
  }
}

/// Higher on the lens comes first: upper prisms from the top, rings inward, the centre, lower prisms down.
double height_key(const Zone& zone) { return zone.kind == ZoneKind::centre ? 0 : zone.from_deg; }

}  // namespace

ZoneTable::ZoneTable(Workbench* bench, QObject* parent)
    : QAbstractTableModel(parent), bench_(bench), lock_icon_(drawn_icon(QStringLiteral("lock"))) {
  SlowPace::of(bench)->add(this, [this] { follow(); });
  connect(bench, &Workbench::unitsChanged, this, [this] {
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
    emit headerDataChanged(Qt::Horizontal, 0, columns - 1);
  });
  follow();
}

void ZoneTable::follow() {
  const bool all = !bench_->isPreviewing();
  if (all || told_ >= rowCount()) rebuild();
  tellNextRows(all ? rowCount() : kRowsInATurn);
  // The section may have moved on while its rows were told.
  if (told_ < rowCount() || plan_ != bench_->plan()) SlowPace::of(bench_)->want(this);
}

void ZoneTable::rebuild() {
  std::vector<Row> rows;
  const auto plan = bench_->plan();
  const auto proof = bench_->proof();
  if (plan) {
    for (const Zone& zone : plan->section.zones) rows.push_back({&zone, nullptr});
    std::stable_sort(rows.begin(), rows.end(),
                     [](const Row& a, const Row& b) { return height_key(*a.zone) > height_key(*b.zone); });
  }
  for (Row& row : rows)
    for (const ZoneProof& zone : proof->zones)
      if (zone.mark == row.zone->mark) row.proof = &zone;
  // Rows come and go singly: an editor that is open, the selection and the place in the list outlive the edit.
  const auto held = plan_;
  plan_ = plan;
  proof_ = proof;
  dropRowsNotIn(rows);
  for (std::size_t place = 0; place < rows.size(); ++place) {
    if (place < rows_.size() && rows_[place].zone->mark == rows[place].zone->mark) continue;
    beginInsertRows({}, static_cast<int>(place), static_cast<int>(place));
    rows_.insert(rows_.begin() + static_cast<std::ptrdiff_t>(place), rows[place]);
    endInsertRows();
  }
  if (rows_.size() > rows.size()) {
    beginRemoveRows({}, static_cast<int>(rows.size()), rowCount() - 1);
    rows_.resize(rows.size());
    endRemoveRows();
  }
  rows_ = std::move(rows);
  told_ = 0;
}

void ZoneTable::tellNextRows(int most) {
  const int first = told_;
  told_ = std::min(told_ + most, rowCount());
  if (first < told_) emit dataChanged(index(first, 0), index(told_ - 1, columns - 1));
}

void ZoneTable::dropRowsNotIn(const std::vector<Row>& wanted) {
  for (int row = rowCount() - 1; row >= 0; --row) {
    const std::string& name = rows_[static_cast<std::size_t>(row)].zone->mark;
    const bool stays =
        std::any_of(wanted.begin(), wanted.end(), [&](const Row& other) { return other.zone->mark == name; });
    if (stays) continue;
    beginRemoveRows({}, row, row);
    rows_.erase(rows_.begin() + row);
    endRemoveRows();
  }
}

int ZoneTable::rowOf(const QString& zone) const {
  for (std::size_t row = 0; row < rows_.size(); ++row)
    if (rows_[row].zone->mark == zone.toStdString()) return static_cast<int>(row);
  return -1;
}

QString ZoneTable::zoneAt(int row) const {
  if (row < 0 || row >= rowCount()) return {};
  return QString::fromStdString(rows_[static_cast<std::size_t>(row)].zone->mark);
}

void ZoneTable::setLaserZone(const QString& zone) {
  if (zone == laser_zone_) return;
  const std::array<QString, 2> touched = {laser_zone_, zone};
  laser_zone_ = zone;
  for (const QString& each : touched)
    if (const int row = rowOf(each); row >= 0) emit dataChanged(index(row, 0), index(row, columns - 1));
}

int ZoneTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int ZoneTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QString ZoneTable::length(double mm) const { return length_number(mm, bench_->inches()); }

QVariant ZoneTable::shown(const Row& row, int column) const {
  const Zone& zone = *row.zone;
  const bool proved = row.proof != nullptr;
  switch (column) {
    case mark:
      return QString::fromStdString(zone.mark);
    case kind:
      return kind_word(zone.kind);
    case lock:
      return zone.locked ? tr("locked") : QString();
    case from:
      return fixed(zone.from_deg, 2);
    case to:
      return fixed(zone.to_deg, 2);
    case margin:
      return is_refracting(zone.kind) ? length(zone_margin_mm(plan_->section, zone)) : QString();
    case breadth:
      return length(breadth_mm(plan_->section, zone));
    case thickness:
      return length(zone.section_thickness_mm);
    case departure:
      return proved ? fixed(row.proof->worst_departure_deg, 3) : QString();
    case reflection:
      return proved && row.proof->least_margin_deg ? fixed(*row.proof->least_margin_deg, 2) : QString();
    case share:
      return proved ? fixed(100 * row.proof->share, 2) : QString();
    case through:
      return proved ? fixed(100 * row.proof->through, 1) : QString();
    default:
      return {};
  }
}

std::optional<ZoneSize> ZoneTable::sizeBehind(const QModelIndex& index) const {
  const auto cell = cell_of(index.column());
  if (!cell || !bench_->hasBook() || bench_->book().read_only()) return std::nullopt;
  return size_behind(plan_->section, *rows_[static_cast<std::size_t>(index.row())].zone, *cell);
}

QString ZoneTable::tip(const QModelIndex& index) const {
  const Zone& zone = *rows_[static_cast<std::size_t>(index.row())].zone;
  if (zone.locked && (index.column() == lock || cell_of(index.column())))
    return tr("%1 is locked where it stands: it stays when its neighbours change. Free it to change it.")
        .arg(QString::fromStdString(zone.mark));
  if (index.column() == kind || index.column() == mark) {
    const std::string_view words = name_of(zone.kind);
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
  }
  return sizeBehind(index) ? tr("Double-click to change it; the other zones of the band keep their sizes.")
                           : QString();
}

QVariant ZoneTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case Qt::DisplayRole:
      return shown(row, index.column());
    case Qt::EditRole:
      if (const auto size = sizeBehind(index)) return edit_text(*size, bench_->inches());
      return {};
    case Qt::ToolTipRole:
      return tip(index);
    case Qt::DecorationRole:
      if (index.column() == lock && row.zone->locked) return lock_icon_;
      return {};
    case Qt::TextAlignmentRole:
      return QVariant(Qt::AlignVCenter | (index.column() <= lock ? Qt::AlignLeft : Qt::AlignRight));
    case Qt::BackgroundRole:
      if (zoneAt(index.row()) == laser_zone_)
        return QBrush(palette::between(palette::surface(), palette::brass(), 0.22));
      return {};
    case Qt::FontRole:
      if (flags(index) & Qt::ItemIsEditable) {
        QFont font;
        font.setUnderline(true);
        return font;
      }
      return {};
    default:
      return {};
  }
}

bool ZoneTable::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
  const QString typed = value.toString();
  const ZoneSize size = sizeBehind(index).value();
  if (typed.trimmed() == edit_text(size, bench_->inches()) && !bench_->sectionProblem()) return true;
  const auto held = plan_;  // the edit brings another
  const Zone& zone = *rows_[static_cast<std::size_t>(index.row())].zone;
  return bench_->edit(edit_from_text(bench_->values(), held->section, zone, size, typed, bench_->inches()))
      .ok();
}

Qt::ItemFlags ZoneTable::flags(const QModelIndex& index) const {
  if (!index.isValid() || index.row() >= rowCount()) return Qt::NoItemFlags;
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (sizeBehind(index)) flags |= Qt::ItemIsEditable;
  return flags;
}

}  // namespace prismwright
