#include "ui/views/panel_chart.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <limits>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kMargin = 12;
constexpr double kBetween = 14;  ///< pixels between panels and between rows
constexpr double kHead = 20;     ///< pixels over a row, for the panels' numbers
constexpr int kMostRows = 4;
constexpr double kLeastDrag = 5;
constexpr double kReadable = 4.5;    ///< contrast of words on their ground (WCAG 2.1)
constexpr double kSmallSign = 0.75;  ///< of the window's letters
/// Another row of panels must show them this much larger to be worth leaving one line.
constexpr double kWorthARow = 1.15;

struct Rows {
  int count = 1;
  std::size_t per_row = 1;
  double scale = 0;
};

double width_of_row(const std::vector<ChartPanel>& panels, std::size_t from, std::size_t to) {
  double width = 0;
  for (std::size_t i = from; i < to; ++i) width += panels[i].frame.width();
  return width;
}

Rows rows_of(const std::vector<ChartPanel>& panels, int count, const QSizeF& room) {
  Rows rows;
  rows.count = count;
  rows.per_row = (panels.size() + static_cast<std::size_t>(count) - 1) / static_cast<std::size_t>(count);
  double widest = 0;
  for (std::size_t from = 0; from < panels.size(); from += rows.per_row)
    widest = std::max(widest, width_of_row(panels, from, std::min(from + rows.per_row, panels.size())));
  const double height = std::max(1.0, panels.front().frame.height());
  const double across = room.width() - 2 * kMargin - kBetween * static_cast<double>(rows.per_row - 1);
  const double down = room.height() - 2 * kMargin - count * kHead - (count - 1) * kBetween;
  rows.scale = std::max(1e-3, std::min(across / std::max(1.0, widest), down / (count * height)));
  return rows;
}

Rows best_rows(const std::vector<ChartPanel>& panels, const QSizeF& room) {
  Rows best = rows_of(panels, 1, room);
  for (int count = 2; count <= std::min<int>(kMostRows, static_cast<int>(panels.size())); ++count) {
    const Rows rows = rows_of(panels, count, room);
    if (rows.scale > kWorthARow * best.scale) best = rows;
  }
  return best;
}

}  // namespace

PanelChart::PanelChart(Workbench* bench, QWidget* parent) : QWidget(parent), bench_(bench) {
  setObjectName(QStringLiteral("panelChart"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setMinimumSize(320, 160);
  setAccessibleName(tr("Panel chart: the lens unrolled, seen from outside"));
  const auto redraw = [this] { update(); };
  connect(bench_, &Workbench::bookChanged, this, &PanelChart::readPlan);
  connect(bench_, &Workbench::valuesChanged, this, &PanelChart::readPlan);
  connect(bench_, &Workbench::madeChanged, this, redraw);
  connect(bench_, &Workbench::ledgerChanged, this, redraw);
  connect(bench_, &Workbench::selectionChanged, this, redraw);
  connect(bench_, &Workbench::unitsChanged, this, redraw);
  readPlan();
}

QSize PanelChart::sizeHint() const { return {900, 360}; }

void PanelChart::setColouring(Colouring colouring) {
  colouring_ = colouring;
  update();
}

QPointF PanelChart::placeOf(const QString& mark) const { return anchors_.value(mark); }

QString PanelChart::markAt(const QPointF& place) const {
  for (auto piece = outlines_.cbegin(); piece != outlines_.cend(); ++piece)
    if (piece->contains(place)) return piece.key();
  return {};
}

void PanelChart::readPlan() {
  panels_ = bench_->plan() ? chart_panels(*bench_->plan()) : std::vector<ChartPanel>();
  rebuild();
}

void PanelChart::rebuild() {
  outlines_.clear();
  anchors_.clear();
  slots_.clear();
  update();
  if (panels_.empty()) return;
  const Rows rows = best_rows(panels_, size());
  scale_ = rows.scale;
  const double height = scale_ * panels_.front().frame.height();
  const double all_rows = rows.count * (height + kHead) + (rows.count - 1) * kBetween;
  double top = (this->height() - all_rows) / 2 + kHead;
  for (std::size_t from = 0; from < panels_.size(); from += rows.per_row) {
    const std::size_t to = std::min(from + rows.per_row, panels_.size());
    const double used =
        scale_ * width_of_row(panels_, from, to) + kBetween * static_cast<double>(to - from - 1);
    double left = (width() - used) / 2;
    for (std::size_t i = from; i < to; ++i) {
      const QRectF& frame = panels_[i].frame;
      slots_.push_back({QPointF(left - scale_ * frame.left(), top - scale_ * frame.top()),
                        QRectF(left, top, scale_ * frame.width(), height)});
      QTransform to_screen = QTransform::fromTranslate(slots_.back().axis.x(), slots_.back().axis.y());
      to_screen.scale(scale_, scale_);
      for (const ChartPiece& piece : panels_[i].pieces) {
        outlines_.insert(piece.mark, to_screen.map(piece.outline));
        anchors_.insert(piece.mark, to_screen.map(piece.anchor));
      }
      left += scale_ * frame.width() + kBetween;
    }
    top += height + kHead + kBetween;
  }
}

void PanelChart::resizeEvent(QResizeEvent*) { rebuild(); }

void PanelChart::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), palette::surface());
  if (panels_.empty()) {
    painter.setPen(palette::muted_ink());
    painter.drawText(rect(), Qt::AlignCenter, tr("No section can be made of the present values."));
    return;
  }
  for (std::size_t i = 0; i < panels_.size(); ++i) paintPanel(painter, i);
  paintSelected(painter);
  if (!box_.isNull()) {
    QColor wash = palette::sea();
    wash.setAlphaF(0.12F);
    painter.setBrush(wash);
    painter.setPen(QPen(palette::sea(), 1, Qt::DashLine));
    painter.drawRect(box_);
  }
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(palette::sea());
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  }
}

void PanelChart::paintPanel(QPainter& painter, std::size_t which) const {
  const ChartPanel& panel = panels_[which];
  const QRectF& frame = slots_[which].frame;
  painter.setPen(palette::muted_ink());
  const QRectF head(frame.left() - kBetween / 2, frame.top() - kHead, frame.width() + kBetween, kHead - 2);
  const QString number = QStringLiteral("P%1").arg(panel.number, 2, 10, QLatin1Char('0'));
  const double width_deg = bench_->plan()->values.panels[which].width_deg;
  const QString full = tr("%1, %2 deg").arg(number).arg(width_deg);
  const bool fits = painter.fontMetrics().horizontalAdvance(full) < head.width();
  painter.drawText(head, Qt::AlignHCenter | Qt::AlignBottom, fits ? full : number);
  if (panel.blind) {
    painter.setBrush(QBrush(palette::hairline(), Qt::BDiagPattern));
    painter.setPen(palette::hairline());
    painter.drawRect(frame);
    painter.setPen(palette::muted_ink());
    painter.drawText(frame, Qt::AlignCenter, tr("blind"));
    return;
  }
  for (const ChartPiece& piece : panel.pieces) paintPiece(painter, piece);
}

void PanelChart::paintPiece(QPainter& painter, const ChartPiece& piece) const {
  const PrismLook look = look_of(*bench_, piece.mark.toStdString(), colouring_);
  const QPainterPath outline = outlines_.value(piece.mark);
  painter.setPen(QPen(palette::glass_edge(), 0.8));
  painter.setBrush(look.hatched ? palette::surface() : look.fill);
  painter.drawPath(outline);
  if (look.hatched) {
    painter.setBrush(QBrush(look.fill, Qt::BDiagPattern));
    painter.drawPath(outline);
  }
  if (!look.sign.isEmpty()) paintSign(painter, piece.mark, look);
}

/// In the window's letters or, where these are too large for the piece, in smaller ones; then the short sign;
/// else nothing.
void PanelChart::paintSign(QPainter& painter, const QString& mark, const PrismLook& look) const {
  const QFont usual = painter.font();
  for (const QString& words : {look.sign, look.short_sign}) {
    for (const double share : {1.0, kSmallSign}) {
      QFont font = usual;
      font.setPointSizeF(share * usual.pointSizeF());
      painter.setFont(font);
      const bool painted = !words.isEmpty() && paintWords(painter, mark, look, words);
      painter.setFont(usual);
      if (painted) return;
    }
  }
}

bool PanelChart::paintWords(QPainter& painter, const QString& mark, const PrismLook& look,
                            const QString& words) const {
  const QPointF place = anchors_.value(mark);
  const QFontMetricsF metrics(painter.font());
  const double half_height = 0.38 * metrics.height();
  const double half_width = metrics.horizontalAdvance(words) / 2 + 1;
  const QRectF ground(place.x() - half_width, place.y() - half_height, 2 * half_width, 2 * half_height);
  if (!outlines_.value(mark).contains(ground)) return false;
  if (look.hatched) painter.fillRect(ground, palette::surface());
  const bool read_in_fill = palette::contrast(look.fill, palette::surface()) >= kReadable;
  painter.setPen(!look.hatched ? palette::ink_on(look.fill) : read_in_fill ? look.fill : palette::ink());
  painter.drawText(ground.adjusted(-4, -6, 4, 6), Qt::AlignCenter, words);
  return true;
}

/// A light line round a dark one is seen on every fill.
void PanelChart::paintSelected(QPainter& painter) const {
  painter.setBrush(Qt::NoBrush);
  for (const QString& mark : bench_->selection()) {
    const QPainterPath outline = outlines_.value(mark);
    painter.setPen(QPen(palette::surface(), 5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPath(outline);
    painter.setPen(QPen(palette::brass(), 2.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPath(outline);
  }
}

void PanelChart::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  press_ = event->position();
  box_ = QRectF();
}

void PanelChart::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & Qt::LeftButton)) {
    setCursor(markAt(event->position()).isEmpty() ? Qt::ArrowCursor : Qt::PointingHandCursor);
    return;
  }
  if ((event->position() - press_).manhattanLength() < kLeastDrag) return;
  box_ = QRectF(press_, event->position()).normalized();
  update();
}

void PanelChart::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  const bool adds = event->modifiers() & Qt::ControlModifier;
  QStringList marks = adds ? bench_->selection() : QStringList();
  if (!box_.isNull()) {
    for (const QString& mark : marksIn(box_))
      if (!marks.contains(mark)) marks << mark;
  } else if (const QString mark = markAt(event->position()); !mark.isEmpty()) {
    if (marks.removeAll(mark) == 0) marks.prepend(mark);
  }
  box_ = QRectF();
  bench_->select(marks);
  update();
}

/// In the order of the plan, so that a tray reads from the top down.
QStringList PanelChart::marksIn(const QRectF& box) const {
  QStringList marks;
  for (const ChartPanel& panel : panels_)
    for (const ChartPiece& piece : panel.pieces)
      if (box.contains(anchors_.value(piece.mark))) marks << piece.mark;
  return marks;
}

QString PanelChart::neighbour(const QString& mark, int key) const {
  const QPointF from = anchors_.value(mark);
  const QPointF along = key == Qt::Key_Left    ? QPointF(-1, 0)
                        : key == Qt::Key_Right ? QPointF(1, 0)
                        : key == Qt::Key_Up    ? QPointF(0, -1)
                                               : QPointF(0, 1);
  QString nearest;
  double least = std::numeric_limits<double>::max();
  for (auto place = anchors_.cbegin(); place != anchors_.cend(); ++place) {
    const QPointF way = *place - from;
    const double ahead = QPointF::dotProduct(way, along);
    const double aside = std::abs(way.x() * along.y() - way.y() * along.x());
    if (ahead < 1) continue;
    const double cost = ahead + 3 * aside;
    if (cost >= least) continue;
    least = cost;
    nearest = place.key();
  }
  return nearest;
}

void PanelChart::keyPressEvent(QKeyEvent* event) {
  const QStringList& selected = bench_->selection();
  if (event->matches(QKeySequence::SelectAll)) return bench_->select(marksIn(rect()));
  if (event->key() == Qt::Key_Escape) return bench_->select({});
  const bool arrow = event->key() >= Qt::Key_Left && event->key() <= Qt::Key_Down;
  if (!arrow || anchors_.isEmpty()) return QWidget::keyPressEvent(event);
  const QString leading = selected.isEmpty() ? marksIn(rect()).value(0) : selected.first();
  const QString next = selected.isEmpty() ? leading : neighbour(leading, event->key());
  if (next.isEmpty()) return;
  QStringList marks = event->modifiers() & Qt::ShiftModifier ? selected : QStringList();
  marks.removeAll(next);
  marks.prepend(next);
  bench_->select(marks);
}

bool PanelChart::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    auto* help = static_cast<QHelpEvent*>(event);
    const QString mark = markAt(help->pos());
    if (mark.isEmpty())
      QToolTip::hideText();
    else
      QToolTip::showText(help->globalPos(),
                         tr("%1: %2").arg(mark, look_of(*bench_, mark.toStdString(), colouring_).meaning),
                         this);
    return true;
  }
  return QWidget::event(event);
}

}  // namespace prismwright
