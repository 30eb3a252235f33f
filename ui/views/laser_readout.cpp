#include "ui/views/laser_readout.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <cmath>

#include "ui/models/shown_numbers.h"
#include "ui/models/slow_pace.h"
#include "ui/style/palette.h"
#include "ui/views/number_field.h"

namespace prismwright {
namespace {

constexpr int kRows = 4;  // room for a reflecting prism's three faces and one more without scrolling
constexpr int kRowHeight = 24;
constexpr int kColumns = 9;
constexpr int kTextColumns = 3;  // number, zone, face

QString face_words(FaceRole role) {
  switch (role) {
    case FaceRole::inner:
      return LaserReadout::tr("inner");
    case FaceRole::outer:
      return LaserReadout::tr("outer");
    case FaceRole::entry:
      return LaserReadout::tr("entry");
    case FaceRole::exit:
      return LaserReadout::tr("exit");
    case FaceRole::reflecting:
      return LaserReadout::tr("reflecting");
    case FaceRole::joint_upper:
      return LaserReadout::tr("upper joint");
    case FaceRole::joint_lower:
      return LaserReadout::tr("lower joint");
    case FaceRole::land:
      return LaserReadout::tr("land");
    case FaceRole::axis:
      return LaserReadout::tr("axis");
  }
  return {};
}

/// A true minus, and none before nought.
QString signed_text(QString number) {
  if (number.startsWith('-') && number.toDouble() == 0) number.remove(0, 1);
  return number.replace('-', QChar(0x2212));
}

QString degrees_text(double deg, int decimals = 3) { return signed_text(QString::number(deg, 'f', decimals)); }

QString signed_length(double mm, bool inches, int decimals = 2) {
  return signed_text(length_number(mm, inches, decimals));
}

/// Which band's focal point the laser stands in, and where that is.
QString focus_words(Band band, double z_mm, bool inches) {
  const QString place = LaserReadout::tr("%1 %2 %3")
                            .arg(length_number(std::abs(z_mm), inches), length_unit(inches),
                                 z_mm < 0 ? LaserReadout::tr("below") : LaserReadout::tr("above"));
  switch (band) {
    case Band::refracting:
      return LaserReadout::tr("From the refracting band's focal point, %1 the principal one").arg(place);
    case Band::upper:
      return LaserReadout::tr("From the upper prisms' focal point, %1 the principal one").arg(place);
    case Band::lower:
      return LaserReadout::tr("From the lower prisms' focal point, %1 the principal one").arg(place);
  }
  return {};
}

Quantity own_quantity(const char* unit, double min, double max, const QString& label, const QString& meaning) {
  Quantity quantity;
  quantity.unit = unit;
  quantity.min = min;
  quantity.max = max;
  quantity.label = label.toStdString();
  quantity.meaning = meaning.toStdString();
  return quantity;
}

}  // namespace

LaserReadout::LaserReadout(Workbench* bench, Laser* laser, QWidget* parent)
    : QWidget(parent), bench_(bench), laser_(laser) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  makeTop();
  makeTable();
  makeBoard();
  SlowPace::of(bench_)->add(this, [this] { follow(); });
  connect(laser_, &Laser::moved, this, [this] {
    // While a limit is dragged the ray is new for every move, like the section itself.
    bench_->isPreviewing() ? SlowPace::of(bench_)->want(this) : follow();
  });
  connect(bench_, &Workbench::unitsChanged, this, &LaserReadout::followUnits);
  followUnits();
}

void LaserReadout::makeTop() {
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  auto* title = new QLabel(tr("Laser at"), this);
  elevation_ = new NumberField(
      own_quantity("deg", -90, 90, tr("Elevation of the laser"),
                   tr("Elevation of the laser above level, seen from the focal point it stands in")),
      QStringLiteral("laser.elevation"), this);
  elevation_->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
  title->setBuddy(elevation_);
  fate_ = new QLabel(this);
  fate_->setObjectName(QStringLiteral("laser.fate"));
  fate_->setTextFormat(Qt::RichText);
  row->addWidget(title);
  row->addWidget(elevation_);
  row->addWidget(fate_, 1);
  const auto step = [&](const QString& name, Qt::ArrowType arrow, int up, const QString& tip) {
    auto* button = new QToolButton(this);
    button->setObjectName(name);
    button->setArrowType(arrow);
    button->setToolTip(tip);
    button->setAccessibleName(tip);
    button->setFixedSize(28, 28);
    connect(button, &QToolButton::clicked, this, [this, up] { laser_->stepZone(up); });
    row->addWidget(button);
  };
  step(QStringLiteral("laser.up"), Qt::UpArrow, 1,
       tr("To the middle of the next zone up, from its band's focal point (Page Up)"));
  step(QStringLiteral("laser.down"), Qt::DownArrow, -1,
       tr("To the middle of the next zone down, from its band's focal point (Page Down)"));
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
  connect(elevation_, &NumberField::entered, laser_, &Laser::point);
}

void LaserReadout::makeTable() {
  meetings_ = new QTableWidget(kRows, kColumns, this);
  meetings_->setObjectName(QStringLiteral("laser.meetings"));
  meetings_->setAccessibleName(tr("Faces that the laser meets"));
  meetings_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  meetings_->setSelectionMode(QAbstractItemView::NoSelection);
  meetings_->setFocusPolicy(Qt::NoFocus);
  meetings_->setProperty("dense", true);
  meetings_->setShowGrid(false);
  meetings_->setAlternatingRowColors(true);
  meetings_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  meetings_->verticalHeader()->hide();
  meetings_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  meetings_->horizontalHeader()->setMinimumSectionSize(24);
  meetings_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Fixed);
  meetings_->setColumnWidth(0, 28);
  meetings_->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
  meetings_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  layout()->addWidget(meetings_);
  sums_ = new QLabel(this);
  sums_->setObjectName(QStringLiteral("laser.sums"));
  sums_->setWordWrap(true);
  layout()->addWidget(sums_);
}

void LaserReadout::makeBoard() {
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  auto* title = new QLabel(tr("Board at"), this);
  board_ = new NumberField(own_quantity("mm", 1, 100000, tr("Distance of the board"),
                                        tr("Distance of an upright board from the focus, seaward")),
                           QStringLiteral("laser.board"), this);
  board_->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
  title->setBuddy(board_);
  spot_ = new QLabel(this);
  spot_->setObjectName(QStringLiteral("laser.spot"));
  spot_->setWordWrap(true);
  row->addWidget(title);
  row->addWidget(board_);
  row->addWidget(spot_, 1);
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
  connect(board_, &NumberField::entered, laser_, &Laser::setBoard);
}

void LaserReadout::followUnits() {
  board_->setInches(bench_->inches());
  const QString unit = length_unit(bench_->inches());
  meetings_->setHorizontalHeaderLabels({QString(), tr("Zone"), tr("Face"), tr("r\n%1").arg(unit),
                                        tr("z\n%1").arg(unit), tr("Meets at\ndeg"), tr("Refracts\ndeg"),
                                        tr("Loss\n%"), tr("Goes on\ndeg")});
  const QStringList tips = {
      tr("Number of the face on the drawing"),
      tr("Zone of the section"),
      tr("Face of the prism"),
      tr("Place, seaward from the focus"),
      tr("Place, above the focal plane"),
      tr("Incidence: between the ray and the face's normal"),
      tr("Refraction: between the ray and the normal after the face; a dash where it is reflected"),
      tr("Power lost at the face by reflection, or by passing where it should reflect"),
      tr("Elevation of the ray after the face")};
  for (int column = 0; column < tips.size(); ++column) {
    meetings_->horizontalHeaderItem(column)->setToolTip(tips.at(column));
    meetings_->horizontalHeaderItem(column)->setTextAlignment(
        Qt::AlignVCenter | (column < kTextColumns ? Qt::AlignLeft : Qt::AlignRight));
  }
  follow();
}

void LaserReadout::follow() {
  elevation_->setValue(laser_->elevation_deg());
  board_->setValue(laser_->board_mm());
  fillTable();
  fillWords();
}

void LaserReadout::fillTable() {
  const auto meetings = laser_->path() ? laser_->path()->meetings : std::vector<RayMeeting>();
  const int rows = std::max(kRows, static_cast<int>(meetings.size()));
  meetings_->setRowCount(rows);
  meetings_->setFixedHeight(meetings_->horizontalHeader()->sizeHint().height() + kRows * kRowHeight + 4);
  const bool inches = bench_->inches();
  for (int row = 0; row < rows; ++row) {
    const bool met = row < static_cast<int>(meetings.size());
    const RayMeeting meeting = met ? meetings[static_cast<std::size_t>(row)] : RayMeeting();
    const QStringList texts =
        met ? QStringList{QString::number(row + 1),
                          QString::fromStdString(meeting.zone),
                          face_words(meeting.face),
                          signed_length(meeting.place.r, inches),
                          signed_length(meeting.place.z, inches),
                          degrees_text(meeting.incidence_deg),
                          meeting.refraction_deg ? degrees_text(*meeting.refraction_deg) : tr("–"),
                          QString::number(100 * meeting.loss, 'f', 2),
                          degrees_text(meeting.direction_deg)}
            : QStringList(kColumns, QString());
    for (int column = 0; column < texts.size(); ++column) {
      put(row, column, texts.at(column));
    }
  }
}

/// Cells are kept while the laser is dragged: only figures that differ are painted anew.
void LaserReadout::put(int row, int column, const QString& text) {
  if (QTableWidgetItem* item = meetings_->item(row, column)) {
    if (item->text() != text) item->setText(text);
    return;
  }
  auto* item = new QTableWidgetItem(text);
  item->setTextAlignment(Qt::AlignVCenter | (column < kTextColumns ? Qt::AlignLeft : Qt::AlignRight));
  meetings_->setItem(row, column, item);
}

void LaserReadout::fillWords() {
  if (!laser_->path()) {
    fate_->clear();
    sums_->clear();
    spot_->clear();
    return;
  }
  const RayPath& path = *laser_->path();
  const QString zone = laser_->zone().isEmpty() ? tr("no prism") : laser_->zone();
  fate_->setText(QStringLiteral("<b>%1</b>: <span style='color:%2'>●</span> %3")
                     .arg(zone, palette::fate(path.fate).name(), palette::fate_words(path.fate)));
  QStringList sums;
  const auto band = laser_->ownFocus();
  const QString focus =
      band ? focus_words(*band, laser_->source_z_mm(), bench_->inches()) + tr(". ") : QString();
  if (leaves_lens(path.fate) && !path.meetings.empty())
    sums << tr("Departs %1 deg from level").arg(degrees_text(path.departure_deg));
  for (const RayMeeting& meeting : path.meetings)
    if (meeting.face == FaceRole::reflecting) {
      sums << tr("least margin %1 deg over critical").arg(degrees_text(path.least_margin_deg, 2));
      break;
    }
  if (path.meetings.empty()) sums << tr("The ray meets no glass");
  if (!path.meetings.empty()) sums << tr("%1 % comes through").arg(100 * path.through, 0, 'f', 2);
  sums_->setText(focus + sums.join(tr("; ")) + tr("."));
  const auto spot = laser_->spot();
  const bool inches = bench_->inches();
  const QString unit = length_unit(inches);
  spot_->setText(spot ? tr("spot at z %1 %3, %2 %3 over level, slope %4 deg")
                            .arg(signed_length(spot->place.z, inches),
                                 signed_length(spot->over_aim_mm, inches, 3), unit,
                                 degrees_text(spot->slope_deg))
                      : tr("no spot: the ray does not reach the board"));
}

}  // namespace prismwright
