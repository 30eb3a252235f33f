#include <QCoreApplication>
#include <array>

#include "ui/style/palette.h"

namespace prismwright::palette {
namespace {

QColor either(const char* light, const char* dark) {
  return QColor(QLatin1String(theme() == Theme::light ? light : dark));
}

QString words(const char* text) { return QCoreApplication::translate("palette", text); }

}  // namespace

QColor screen(Screen screen) {
  switch (screen) {
    case Screen::none:
      return either("#FFFDF4", "#F4EFDF");
    case Screen::red:
      return QColor("#C8452F");
    case Screen::green:
      return QColor("#3E8E5A");
    case Screen::yellow:
      return QColor("#E0B63C");
  }
  return surface();
}

QBrush screen_hatching(Screen of) {
  QColor line = ink_on(screen(of));
  line.setAlphaF(0.45F);
  switch (of) {
    case Screen::none:
      break;
    case Screen::red:
      return {line, Qt::BDiagPattern};
    case Screen::green:
      return {line, Qt::FDiagPattern};
    case Screen::yellow:
      return {line, Qt::Dense7Pattern};
  }
  return Qt::NoBrush;
}

QString screen_sign(Screen screen) {
  static constexpr std::array<const char*, 4> kSigns = {"W", "R", "G", "Y"};
  return QLatin1String(kSigns.at(static_cast<std::size_t>(screen)));
}

QString screen_words(Screen screen) {
  static constexpr std::array<const char*, 4> kWords = {
      QT_TRANSLATE_NOOP("palette", "white"), QT_TRANSLATE_NOOP("palette", "red"),
      QT_TRANSLATE_NOOP("palette", "green"), QT_TRANSLATE_NOOP("palette", "yellow")};
  return words(kWords.at(static_cast<std::size_t>(screen)));
}

QPen screen_pen(Screen of, double width_px) {
  static constexpr std::array<Qt::PenStyle, 4> kStyles = {Qt::SolidLine, Qt::DashLine, Qt::DotLine,
                                                          Qt::DashDotLine};
  // White light is drawn in ink, and yellow darker than its screen: both must be seen on the surface.
  QColor colour = of == Screen::none ? ink() : screen(of);
  if (of == Screen::yellow) colour = brass();
  return {colour, width_px, kStyles.at(static_cast<std::size_t>(of)), Qt::FlatCap};
}

QColor dark_of_light() { return either("#26343C", "#11181B"); }

QColor light_fate(LightFate of) {
  switch (of) {
    case LightFate::level:
      return fate(Fate::level);
    case LightFate::stray_up:
    case LightFate::stray_down:
      return fate(Fate::stray);
    case LightFate::reflected:
      return fate(Fate::lost_reflecting);
    case LightFate::absorbed:
      return fate(Fate::lost_land);
    case LightFate::metal:
    case LightFate::lamp:
      return fate(Fate::stopped);
    case LightFate::missed_up:
    case LightFate::missed_down:
      return fate(Fate::escaped);
  }
  return ink();
}

QString light_fate_words(LightFate fate) {
  static constexpr std::array<const char*, kLightFates> kWords = {
      QT_TRANSLATE_NOOP("palette", "by a prism's own way"),
      QT_TRANSLATE_NOOP("palette", "stray, upward"),
      QT_TRANSLATE_NOOP("palette", "stray, downward"),
      QT_TRANSLATE_NOOP("palette", "reflected back"),
      QT_TRANSLATE_NOOP("palette", "absorbed in the glass"),
      QT_TRANSLATE_NOOP("palette", "stopped by metal"),
      QT_TRANSLATE_NOOP("palette", "stopped by a lamp"),
      QT_TRANSLATE_NOOP("palette", "missed, over the glass"),
      QT_TRANSLATE_NOOP("palette", "missed, under the glass")};
  return words(kWords.at(static_cast<std::size_t>(fate)));
}

}  // namespace prismwright::palette
