#include "ui/views/section_strips.h"

#include <QCoreApplication>
#include <QFont>
#include <algorithm>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kFinger_px = 2;  // a pointer this close to a dark strip means it

QString tr(const char* text) { return QCoreApplication::translate("SectionDrawing", text); }

QRectF bar(const LightStrip& strip, const SectionMap& map, const QRectF& view) {
  const double top = map.toView({0, strip.to_mm}).y();
  const double foot = map.toView({0, strip.from_mm}).y();
  return {view.right() - kStripWidth + 8, top, kStripWidth - 16, std::max(foot - top, 1.0)};
}

}  // namespace

void paint_strip(QPainter& painter, const std::vector<LightStrip>& beam, const SectionMap& map,
                 const QRectF& view) {
  const QRectF ground(view.right() - kStripWidth, view.top(), kStripWidth, view.height());
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.fillRect(ground, palette::paper());
  painter.setPen(QPen(palette::hairline(), 1));
  painter.drawLine(ground.topLeft(), ground.bottomLeft());
  painter.setClipRect(ground);
  // Dark strips last: none is hidden, however narrow it is.
  for (const bool dark : {false, true})
    for (const LightStrip& strip : beam)
      if (strip.dark() == dark)
        painter.fillRect(bar(strip, map, view), dark ? palette::ink() : palette::fate(Fate::level));
  painter.setClipping(false);
  painter.setRenderHint(QPainter::Antialiasing, true);
  QFont font = painter.font();
  font.setPointSizeF(7.5);
  painter.setFont(font);
  const QRectF head(ground.left() + 1, ground.top(), ground.width() - 1, 26);
  painter.fillRect(head, palette::paper());
  painter.setPen(palette::muted_ink());
  painter.drawText(head, Qt::AlignCenter, tr("level\nbeam"));
}

QString strip_words(const std::vector<LightStrip>& beam, const SectionMap& map, double y, bool inches) {
  const double high = map.toSection({0, y - kFinger_px}).z;
  const double low = map.toSection({0, y + kFinger_px}).z;
  const LightStrip* meant = nullptr;
  for (const LightStrip& strip : beam) {
    if (strip.to_mm < low || strip.from_mm > high) continue;
    if (!meant || strip.dark()) meant = &strip;
  }
  if (!meant) return tr("No level light at this height.");
  const QString from = length_number(meant->from_mm, inches), to = length_text(meant->to_mm, inches);
  if (!meant->dark())
    return tr("Level light of %1, from %2 to %3.").arg(QString::fromStdString(meant->zone), from, to);
  return tr("Dark from %1 to %2 (%3 high).").arg(from, to, length_text(meant->to_mm - meant->from_mm, inches));
}

}  // namespace prismwright
