#include "ui/views/fate_bar.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kSample = 24;  // length of the line drawn before the word
constexpr int kGap = 6;
constexpr int kRow = 20;
constexpr double kThinnest_px = 2;

QString entry_text(int fate, const Proof* proof) {
  const QString words = palette::fate_words(static_cast<Fate>(fate));
  return proof ? QStringLiteral("%1 %2").arg(words, share_text(proof->share[fate])) : words;
}

}  // namespace

QString share_text(double share) {
  const double percent = 100 * share;
  // Sums of thousands of rays leave a rest far below any light.
  if (percent < 1e-7) return QStringLiteral("0 %");
  const int decimals = percent >= 0.1 ? 2 : std::min(7, static_cast<int>(std::ceil(-std::log10(percent))) + 1);
  return QStringLiteral("%1 %").arg(percent, 0, 'f', decimals);
}

FateBar::FateBar(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FateBar::setShares(const double (&shares)[kFates]) {
  std::copy(std::begin(shares), std::end(shares), shares_.begin());
  update();
}

void FateBar::clear() {
  shares_.fill(0);
  update();
}

void FateBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::surface());
  double left = 0;
  for (int fate = 0; fate < kFates; ++fate) {
    const double share = shares_.at(static_cast<std::size_t>(fate));
    if (share < 1e-9) continue;
    const double wide = std::max(share * width(), kThinnest_px);
    const QRectF part(left, 0, wide, height());
    painter.fillRect(part, palette::fate(static_cast<Fate>(fate)));
    // Colour is never alone: all but the level light is hatched.
    if (fate != static_cast<int>(Fate::level))
      painter.fillRect(part, QBrush(palette::surface(), fate % 2 ? Qt::BDiagPattern : Qt::FDiagPattern));
    left += wide;
  }
  painter.setPen(palette::hairline());
  painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

FateKey::FateKey(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void FateKey::setProof(std::shared_ptr<const Proof> proof) {
  proof_ = std::move(proof);
  updateGeometry();
  update();
}

int FateKey::entryWidth() const {
  int widest = 0;
  for (int fate = 0; fate < kFates; ++fate)
    widest = std::max(widest, fontMetrics().horizontalAdvance(entry_text(fate, proof_.get())));
  return kSample + kGap + widest + kGap;
}

int FateKey::columnsIn(int width) const { return std::clamp(width / std::max(entryWidth(), 1), 1, kFates); }

int FateKey::heightForWidth(int width) const {
  const int columns = columnsIn(width);
  return kRow * ((kFates + columns - 1) / columns);
}

void FateKey::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const int columns = columnsIn(width());
  const int rows = (kFates + columns - 1) / columns;
  const int wide = width() / columns;
  for (int fate = 0; fate < kFates; ++fate) {
    const QRectF cell((fate / rows) * wide, (fate % rows) * kRow, wide, kRow);
    painter.setPen(palette::fate_pen(static_cast<Fate>(fate), 2));
    painter.drawLine(QPointF(cell.left(), cell.center().y()),
                     QPointF(cell.left() + kSample, cell.center().y()));
    painter.setPen(palette::ink());
    painter.drawText(cell.adjusted(kSample + kGap, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     entry_text(fate, proof_.get()));
  }
}

}  // namespace prismwright
