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

QRectF bar(BeamStrip strip, const SectionMap& map, const QRectF& view) {
  const double top = map.toView({0, strip.to_mm}).y();
  const double foot = map.toView({0, strip.from_mm}).y();
  return {view.right() - kStripWidth + 8, top, kStripWidth - 16, std::max(foot - top, 1.0)};
}

}  // namespace

void paint_strip(QPainter& painter, const std::optional<BeamStrip>& beam, const std::vector<BeamStrip>& dark,
                 const SectionMap& map, const QRectF& view) {
  const QRectF ground(view.right() - kStripWidth, view.top(), kStripWidth, view.height());
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.fillRect(ground, palette::paper());
  painter.setPen(QPen(palette::hairline(), 1));
  painter.drawLine(ground.topLeft(), ground.bottomLeft());
  if (beam) {
    painter.setClipRect(ground);
    painter.fillRect(bar(*beam, map, view), palette::fate(Fate::level));
    for (const BeamStrip& strip : dark) painter.fillRect(bar(strip, map, view), palette::ink());
    painter.setClipping(false);
  }
  painter.setRenderHint(QPainter::Antialiasing, true);
  QFont font = painter.font();
  font.setPointSizeF(7.5);
  painter.setFont(font);
  const QRectF head(ground.left() + 1, ground.top(), ground.width() - 1, 26);
  painter.fillRect(head, palette::paper());
  painter.setPen(palette::muted_ink());
  painter.drawText(head, Qt::AlignCenter, tr("level\nbeam"));
}

QString strip_words(const std::optional<BeamStrip>& beam, const std::vector<BeamStrip>& dark,
                    const SectionMap& map, double y, bool inches) {
  const double high = map.toSection({0, y - kFinger_px}).z;
  const double low = map.toSection({0, y + kFinger_px}).z;
  if (!beam || high < beam->from_mm || low > beam->to_mm) return tr("No level light at this height.");
  for (const BeamStrip& strip : dark) {
    if (strip.to_mm < low || strip.from_mm > high) continue;
    return tr("Dark from %1 to %2 (%3 high).")
        .arg(length_number(strip.from_mm, inches), length_text(strip.to_mm, inches),
             length_text(strip.to_mm - strip.from_mm, inches));
  }
  return tr("Level light at this height; the beam runs from %1 to %2.")
      .arg(length_number(beam->from_mm, inches), length_text(beam->to_mm, inches));
}

}  // namespace prismwright
