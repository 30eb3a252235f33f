#include "ui/style/palette.h"

#include <QCoreApplication>
#include <array>
#include <cmath>

namespace prismwright::palette {
namespace {

Theme theme_in_use = Theme::light;

QColor either(const char* light, const char* dark) {
  return QColor(QLatin1String(theme_in_use == Theme::light ? light : dark));
}

QString words(const char* text) { return QCoreApplication::translate("palette", text); }

double linear(double channel) {
  return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour) {
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

}  // namespace

Theme theme() { return theme_in_use; }
void use(Theme theme) { theme_in_use = theme; }
Theme theme_of(const QPalette& desktop) {
  return luminance(desktop.color(QPalette::Window)) < 0.2 ? Theme::dark : Theme::light;
}

QColor paper() { return either("#F7F5F0", "#1B2226"); }
QColor surface() { return either("#FFFFFF", "#232C31"); }
QColor ink() { return either("#1C2A33", "#E8E5DC"); }
QColor muted_ink() { return either("#5B6B75", "#A3B0B7"); }
QColor hairline() { return either("#D9D4C7", "#3C474D"); }
QColor brass() { return either("#A9812F", "#C9A14C"); }
QColor sea() { return either("#1F4E5F", "#8CC3D4"); }
QColor on_sea() { return either("#FFFFFF", "#14232A"); }
// Darker than the ink: that reads on brass at 4.1:1 only.
QColor on_brass() { return QColor("#0F171C"); }
QColor glass_edge() { return either("#2F6B62", "#8CC0AE"); }
QColor well() { return either("#2F6B62", "#8CC0AE"); }
QColor amiss() { return either("#B5392A", "#F08A78"); }

QColor glass_fill() {
  QColor fill("#8CC0AE");
  fill.setAlphaF(0.35F);
  return fill;
}

QColor fate(Fate fate) {
  switch (fate) {
    case Fate::level:
      return either("#C79A2B", "#DDB64F");
    case Fate::stray:
      return either("#6A4C93", "#B79BDD");
    case Fate::escaped:
      return either("#C8452F", "#F07A64");
    case Fate::stopped:
      return either("#7A7F85", "#9BA1A8");
    case Fate::lost_reflecting:
      return either("#2E7FA8", "#6DB9DF");
    case Fate::lost_land:
      return either("#A8588E", "#D68ABD");
  }
  return ink();
}

QPen fate_pen(Fate of, double width_px) {
  QPen pen(fate(of), width_px);
  pen.setCapStyle(Qt::FlatCap);
  switch (of) {
    case Fate::level:
      break;
    case Fate::stray:
      pen.setStyle(Qt::DashLine);
      break;
    case Fate::escaped:
      pen.setWidthF(2.5 * width_px);
      break;
    case Fate::stopped:
      pen.setStyle(Qt::DotLine);
      break;
    case Fate::lost_reflecting:
      pen.setStyle(Qt::DashDotLine);
      break;
    case Fate::lost_land:
      pen.setDashPattern({2, 2});
      break;
  }
  return pen;
}

QString fate_words(Fate fate) {
  static constexpr std::array<const char*, kFates> kWords = {
      QT_TRANSLATE_NOOP("palette", "level"),
      QT_TRANSLATE_NOOP("palette", "stray"),
      QT_TRANSLATE_NOOP("palette", "escaped between prisms"),
      QT_TRANSLATE_NOOP("palette", "stopped by metal"),
      QT_TRANSLATE_NOOP("palette", "lost at a reflecting face"),
      QT_TRANSLATE_NOOP("palette", "lost in a land"),
  };
  return words(kWords.at(static_cast<std::size_t>(fate)));
}

QColor stage(Stage stage) {
  static constexpr std::array<const char*, 9> kRamp = {"#ECE7DA", "#D9C9A3", "#C9B072", "#9CC3B5", "#6FA79A",
                                                       "#3F857F", "#22636A", "#143F4F", "#C8452F"};
  return QColor(QLatin1String(kRamp.at(static_cast<std::size_t>(stage))));
}

QString stage_sign(Stage stage) {
  static constexpr std::array<const char*, 9> kSigns = {
      QT_TRANSLATE_NOOP("palette", "Dr"), QT_TRANSLATE_NOOP("palette", "Ma"),
      QT_TRANSLATE_NOOP("palette", "Mo"), QT_TRANSLATE_NOOP("palette", "Ca"),
      QT_TRANSLATE_NOOP("palette", "An"), QT_TRANSLATE_NOOP("palette", "Po"),
      QT_TRANSLATE_NOOP("palette", "Pr"), QT_TRANSLATE_NOOP("palette", "Gl"),
      QT_TRANSLATE_NOOP("palette", "✕")};
  return words(kSigns.at(static_cast<std::size_t>(stage)));
}

QString stage_words(Stage stage) {
  static constexpr std::array<const char*, 9> kWords = {
      QT_TRANSLATE_NOOP("palette", "drawn"),    QT_TRANSLATE_NOOP("palette", "mastered"),
      QT_TRANSLATE_NOOP("palette", "moulded"),  QT_TRANSLATE_NOOP("palette", "cast"),
      QT_TRANSLATE_NOOP("palette", "annealed"), QT_TRANSLATE_NOOP("palette", "polished"),
      QT_TRANSLATE_NOOP("palette", "proved"),   QT_TRANSLATE_NOOP("palette", "glazed"),
      QT_TRANSLATE_NOOP("palette", "scrapped")};
  return words(kWords.at(static_cast<std::size_t>(stage)));
}

bool stage_hatched(Stage stage) { return stage == Stage::scrapped; }

QColor verdict(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return sea();
    case Verdict::tight:
      return brass();
    case Verdict::clash:
      return QColor("#C8452F");
  }
  return ink();
}

QString verdict_sign(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return QStringLiteral("✓");
    case Verdict::tight:
      return QStringLiteral("▬");
    case Verdict::clash:
      return QStringLiteral("✕");
  }
  return {};
}

QString verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return words(QT_TRANSLATE_NOOP("palette", "clear"));
    case Verdict::tight:
      return words(QT_TRANSLATE_NOOP("palette", "tight"));
    case Verdict::clash:
      return words(QT_TRANSLATE_NOOP("palette", "clash"));
  }
  return {};
}

double contrast(const QColor& a, const QColor& b) {
  const double one = luminance(a) + 0.05;
  const double other = luminance(b) + 0.05;
  return one > other ? one / other : other / one;
}

QColor ink_on(const QColor& ground) {
  // Black and white: one of the two reads at 4.5:1 or better on every ground.
  const QColor dark("#000000");
  const QColor white("#FFFFFF");
  return contrast(dark, ground) >= contrast(white, ground) ? dark : white;
}

QColor between(const QColor& a, const QColor& b, double share) {
  const auto mixed = [share](float from, float to) { return from + static_cast<float>(share) * (to - from); };
  return QColor::fromRgbF(mixed(a.redF(), b.redF()), mixed(a.greenF(), b.greenF()), mixed(a.blueF(), b.blueF()),
                          mixed(a.alphaF(), b.alphaF()));
}

QPalette widget_palette() {
  QPalette roles;
  roles.setColor(QPalette::Window, paper());
  roles.setColor(QPalette::WindowText, ink());
  roles.setColor(QPalette::Base, surface());
  roles.setColor(QPalette::AlternateBase, between(surface(), paper(), 0.6));
  roles.setColor(QPalette::Text, ink());
  roles.setColor(QPalette::Button, surface());
  roles.setColor(QPalette::ButtonText, ink());
  roles.setColor(QPalette::BrightText, amiss());
  roles.setColor(QPalette::ToolTipBase, surface());
  roles.setColor(QPalette::ToolTipText, ink());
  roles.setColor(QPalette::PlaceholderText, muted_ink());
  roles.setColor(QPalette::Highlight, sea());
  roles.setColor(QPalette::HighlightedText, on_sea());
  roles.setColor(QPalette::Link, sea());
  roles.setColor(QPalette::LinkVisited, sea());
  roles.setColor(QPalette::Light, surface());
  roles.setColor(QPalette::Midlight, between(paper(), hairline(), 0.5));
  roles.setColor(QPalette::Mid, hairline());
  roles.setColor(QPalette::Dark, muted_ink());
  roles.setColor(QPalette::Shadow, ink());
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    roles.setColor(QPalette::Disabled, role, muted_ink());
  return roles;
}

}  // namespace prismwright::palette
