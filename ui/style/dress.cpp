#include "ui/style/dress.h"

#include <QApplication>
#include <QFile>
#include <QFont>
#include <QPainter>
#include <QPixmap>
#include <QStyleFactory>
#include <QSvgRenderer>
#include <utility>

#include "ui/style/palette.h"

/// A static library's resources are not found until they are asked for by name, outside any namespace.
static void load_resources() { Q_INIT_RESOURCE(prismwright); }

namespace prismwright {
namespace {

constexpr int kMarkSize = 18;
constexpr double kSharpness = 3;  // pixels kept per drawn pixel, for screens of any density

QByteArray read_resource(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString sheet() {
  QString text = QString::fromUtf8(read_resource(QStringLiteral(":/style.qss")));
  // Longer names first: @on_sea must not be taken for @on.
  const std::pair<const char*, QColor> roles[] = {
      {"@notice_quiet", palette::between(palette::surface(), palette::sea(), 0.10)},
      {"@notice_amiss", palette::between(palette::surface(), palette::amiss(), 0.12)},
      {"@progress", palette::between(palette::surface(), palette::glass_edge(), 0.45)},
      {"@alternate", palette::between(palette::surface(), palette::paper(), 0.6)},
      {"@muted_ink", palette::muted_ink()},
      {"@hairline", palette::hairline()},
      {"@on_brass", palette::on_brass()},
      {"@surface", palette::surface()},
      {"@on_sea", palette::on_sea()},
      {"@amiss", palette::amiss()},
      {"@paper", palette::paper()},
      {"@brass", palette::brass()},
      {"@ink", palette::ink()},
      {"@sea", palette::sea()},
  };
  for (const auto& [role, colour] : roles) text.replace(QLatin1String(role), colour.name());
  // A style sheet draws pictures as they are: there is one of each arrow for each set of colours.
  const QString tone = palette::theme() == palette::Theme::dark ? QStringLiteral("-pale") : QString();
  for (const QString& arrow : {QStringLiteral("up"), QStringLiteral("down")})
    text.replace(QStringLiteral("@arrow_") + arrow, QStringLiteral(":/icons/%1%2.svg").arg(arrow, tone));
  return text;
}

QPixmap clear_pixmap(int size) {
  QPixmap pixmap(static_cast<int>(size * kSharpness), static_cast<int>(size * kSharpness));
  pixmap.setDevicePixelRatio(kSharpness);
  pixmap.fill(Qt::transparent);
  return pixmap;
}

void draw_sign(QPainter& painter, MarkKind kind) {
  if (kind == MarkKind::well) {
    const QPointF tick[] = {{5, 9.3}, {8, 12.3}, {13.2, 6}};
    painter.drawPolyline(tick, 3);
  } else {
    painter.drawLine(QPointF(6, 6), QPointF(12, 12));
    painter.drawLine(QPointF(6, 12), QPointF(12, 6));
  }
}

}  // namespace

void dress(QApplication& application) {
  load_resources();
  application.setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QFont font = application.font();
  font.setPointSizeF(10);
  application.setFont(font);
  application.setPalette(palette::widget_palette());
  application.setStyleSheet(sheet());
  application.setWindowIcon(QIcon(QStringLiteral(":/icons/prismwright.svg")));
}

QIcon drawn_icon(const QString& name) {
  QByteArray drawing = read_resource(QStringLiteral(":/icons/%1.svg").arg(name));
  if (drawing.isEmpty()) return {};
  drawing.replace("#1C2A33", palette::ink().name().toLatin1());
  QSvgRenderer renderer(drawing);
  QPixmap pixmap = clear_pixmap(24);
  QPainter painter(&pixmap);
  renderer.render(&painter, QRectF(0, 0, 24, 24));
  painter.end();
  return QIcon(pixmap);
}

QIcon state_mark(MarkKind kind) {
  QPixmap pixmap = clear_pixmap(kMarkSize);
  QPainter painter(&pixmap);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF ring(1, 1, kMarkSize - 2, kMarkSize - 2);
  if (kind == MarkKind::unknown) {
    painter.setPen(QPen(palette::muted_ink(), 1.5, Qt::DotLine));
    painter.drawEllipse(ring);
  } else {
    painter.setPen(Qt::NoPen);
    painter.setBrush(kind == MarkKind::well ? palette::well() : palette::amiss());
    if (kind == MarkKind::well)
      painter.drawEllipse(ring);
    else
      painter.drawRoundedRect(ring, 3, 3);
    painter.setPen(QPen(palette::surface(), 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    draw_sign(painter, kind);
  }
  painter.end();
  return QIcon(pixmap);
}

}  // namespace prismwright
