#include "ui/models/light_numbers.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

namespace prismwright {
namespace {

constexpr QChar kThinGap(0x202F);
constexpr QChar kMinus(0x2212);

QString words(const char* text) { return QCoreApplication::translate("light", text); }

/// Whole numbers in groups of three from five digits on.
QString grouped(double whole) {
  QString digits = QString::number(std::abs(whole), 'f', 0);
  if (digits.size() > 4)
    for (auto place = digits.size() - 3; place > 0; place -= 3) digits.insert(place, kThinGap);
  return whole < 0 ? kMinus + digits : digits;
}

QString signed_fixed(double value, int decimals) {
  QString text = QString::number(value, 'f', decimals);
  if (text.toDouble() == 0 && text.startsWith('-')) text.remove(0, 1);
  return text.replace('-', kMinus);
}

}  // namespace

QString light_number(double value) {
  const double size = std::abs(value);
  if (size >= 1e4) {
    const double unit = std::pow(10, std::floor(std::log10(size)) - 3);
    return grouped(std::round(value / unit) * unit);
  }
  if (size >= 100) return grouped(value);
  if (size >= 10 || size == 0) return signed_fixed(value, size == 0 ? 0 : 1);
  return size >= 1 ? signed_fixed(value, 2) : QString::number(value, 'g', 3).replace('-', kMinus);
}

QString candela_text(double cd) { return words("%1 cd").arg(light_number(cd)); }
QString miles_text(double nmi) { return words("%1 nmi").arg(QString::number(nmi, 'f', 1)); }
QString seconds_text(double s) {
  return words("%1 s").arg(signed_fixed(s, std::abs(s) < 1 ? 3 : std::abs(s) < 10 ? 2 : 1));
}
QString degrees_text(double deg) { return words("%1 deg").arg(signed_fixed(deg, 2)); }
QString percent_text(double share) {
  const double percent = 100 * share;
  const int decimals = percent == 0 ? 0 : std::abs(percent) < 0.1 ? 3 : std::abs(percent) < 10 ? 2 : 1;
  return words("%1 %").arg(signed_fixed(percent, decimals));
}

}  // namespace prismwright
