#include "ui/models/panels_model.h"

#include <QStringList>
#include <cmath>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

/// Widths that were typed add up when they do so to this.
constexpr double kAddsUp_deg = 1e-6;

QString angle_text(double angle_deg) { return QString::number(angle_deg, 'f', 3); }

template <class Pick>
std::string list_text(const std::vector<Panel>& panels, Pick pick) {
  QStringList parts;
  for (const Panel& panel : panels) parts << QString::fromStdString(number_text(pick(panel)));
  return parts.join(QLatin1Char(',')).toStdString();
}

std::string panels_text(const LensValues& values) {
  std::string text;
  for (const char* key : {"panels.widths_deg", "panels.axis_shift_deg", "panels.blind"})
    text += value_text(values, key) + ';';
  return text;
}

std::string blind_text(const std::vector<Panel>& panels) {
  QStringList numbers;
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (panels[i].blind) numbers << QString::number(i + 1);
  return numbers.join(QLatin1Char(',')).toStdString();
}

}  // namespace

PanelsModel::PanelsModel(Workbench* bench, QObject* parent) : QAbstractTableModel(parent), bench_(bench) {
  connect(bench_, &Workbench::bookChanged, this, &PanelsModel::read);
  connect(bench_, &Workbench::valuesChanged, this, &PanelsModel::follow);
  read();
}

void PanelsModel::follow() {
  if (!held_ || panels_text(bench_->values()) != read_from_) read();
}

void PanelsModel::read() {
  beginResetModel();
  read_from_ = panels_text(bench_->values());
  panels_ = bench_->values().panels;
  places_ = place_panels(panels_);
  held_ = false;
  endResetModel();
  emit panelsChanged();
}

bool PanelsModel::mayEdit() const { return bench_->hasBook() && !bench_->book().read_only(); }

int PanelsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(panels_.size());
}

int PanelsModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant PanelsModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole)
    return QVariant(section == blind ? Qt::AlignCenter : Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::ToolTipRole && section == axis)
    return tr("Where the panel's axis stands, anticlockwise from that of panel 1, seen from above");
  if (role == Qt::ToolTipRole && section == shift)
    return tr("How far the axis stands from the middle of its panel");
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case number:
      return tr("Panel");
    case width:
      return tr("Width\ndeg");
    case shift:
      return tr("Axis shift\ndeg");
    case axis:
      return tr("Axis at\ndeg");
    case blind:
      return tr("Blind");
    default:
      return {};
  }
}

Qt::ItemFlags PanelsModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (!mayEdit()) return flags;
  if (index.column() == width || index.column() == shift) flags |= Qt::ItemIsEditable;
  if (index.column() == blind) flags |= Qt::ItemIsUserCheckable;
  return flags;
}

QVariant PanelsModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const auto row = static_cast<std::size_t>(index.row());
  const Panel& panel = panels_[row];
  if (role == Qt::TextAlignmentRole)
    return QVariant(index.column() == blind ? Qt::AlignCenter : Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::CheckStateRole && index.column() == blind) return panel.blind ? Qt::Checked : Qt::Unchecked;
  if (role == Qt::EditRole) {
    if (index.column() == width) return QString::fromStdString(number_text(panel.width_deg));
    if (index.column() == shift) return QString::fromStdString(number_text(panel.axis_shift_deg));
  }
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case number:
      return index.row() + 1;
    case width:
      return angle_text(panel.width_deg);
    case shift:
      return angle_text(panel.axis_shift_deg);
    case axis:
      return angle_text(places_[row].axis_deg);
    default:
      return {};
  }
}

bool PanelsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid() || !mayEdit()) return false;
  Panel& panel = panels_[static_cast<std::size_t>(index.row())];
  const Panel before = panel;
  if (index.column() == blind && role == Qt::CheckStateRole) {
    panel.blind = value.toInt() == Qt::Checked;
  } else if (role == Qt::EditRole) {
    const std::optional<double> angle = read_number(value.toString().toStdString(), "deg");
    if (!angle) {
      emit bench_->refused(
          tr("\"%1\" is not an angle: type degrees, for instance 31.5.").arg(value.toString()));
      return false;
    }
    (index.column() == width ? panel.width_deg : panel.axis_shift_deg) = *angle;
  } else {
    return false;
  }
  const bool changed = panel.width_deg != before.width_deg || panel.axis_shift_deg != before.axis_shift_deg ||
                       panel.blind != before.blind;
  if (changed) send();
  return changed;
}

double PanelsModel::sum_deg() const {
  double sum = 0;
  for (const Panel& panel : panels_) sum += panel.width_deg;
  return sum;
}

/// Sends what the table shows when the widths add up; else holds it.
void PanelsModel::send() {
  held_ = true;
  places_ = place_panels(panels_);
  emit dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
  emit panelsChanged();
  if (std::abs(shortfall_deg()) > kAddsUp_deg) return;
  const std::vector<Assignment> edits = {
      {"panels.widths_deg", list_text(panels_, [](const Panel& panel) { return panel.width_deg; })},
      {"panels.axis_shift_deg", list_text(panels_, [](const Panel& panel) { return panel.axis_shift_deg; })},
      {"panels.blind", blind_text(panels_)}};
  // A refused edit stays in the table, to be put right there; the window shows the reason.
  if (bench_->assign(edits, {}) && held_) read();
}

void PanelsModel::putBack() { read(); }

void PanelsModel::makeEqual(int count) {
  const std::vector<Panel> wanted = equal_panels(count);
  const std::vector<Assignment> edits = {
      {"brief.panels", std::to_string(count)},
      {"panels.widths_deg", list_text(wanted, [](const Panel& panel) { return panel.width_deg; })},
      {"panels.axis_shift_deg", list_text(wanted, [](const Panel& panel) { return panel.axis_shift_deg; })},
      {"panels.blind", ""}};
  (void)bench_->assign(edits, tr("panels to %1 equal ones").arg(count));
  read();
}

}  // namespace prismwright
