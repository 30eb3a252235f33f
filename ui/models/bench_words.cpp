#include "ui/models/bench_words.h"

#include <QCoreApplication>
#include <cmath>

#include "core/light/bench_plan.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("bench", text); }
QString thousandths(double deg) { return QString::number(deg, 'f', 3); }

}  // namespace

QString error_words(const BenchMend& mend) {
  const QString up = mend.error_deg >= 0 ? words(QT_TRANSLATE_NOOP("bench", "%1 deg too high"))
                                         : words(QT_TRANSLATE_NOOP("bench", "%1 deg too low"));
  const QString text = up.arg(thousandths(std::abs(mend.error_deg)));
  if (mend.aside_deg == 0) return text;
  const QString aside = mend.aside_deg > 0 ? words(QT_TRANSLATE_NOOP("bench", "%1, %2 deg to the left"))
                                           : words(QT_TRANSLATE_NOOP("bench", "%1, %2 deg to the right"));
  return aside.arg(text, thousandths(std::abs(mend.aside_deg)));
}

QString mend_sentence(const BenchMend& mend) {
  return words(QT_TRANSLATE_NOOP("bench", "The beam goes %1: %2."))
      .arg(error_words(mend), QString::fromStdString(mend.words));
}

QString summary_words(const BenchSummary& summary, double within_deg) {
  const QString read =
      words(QT_TRANSLATE_NOOP("bench", "%1 of %2 prisms read")).arg(summary.read).arg(summary.prisms);
  if (summary.read == 0) return read + QLatin1Char('.');
  return words(QT_TRANSLATE_NOOP("bench",
                                 "%1, %2 within %3 deg; worst %4 at %5 deg; rms %6 deg before, %7 deg now."))
      .arg(read)
      .arg(summary.within)
      .arg(within_deg)
      .arg(QString::fromStdString(summary.worst), thousandths(summary.worst_deg),
           thousandths(summary.rms_before_deg), thousandths(summary.rms_now_deg));
}

QString place_words(const BoardPlace& place, bool inches) {
  const QString up = place.height_mm >= 0 ? words(QT_TRANSLATE_NOOP("bench", "%1 up, %2"))
                                          : words(QT_TRANSLATE_NOOP("bench", "%1 down, %2"));
  const QString aside = place.aside_mm >= 0 ? words(QT_TRANSLATE_NOOP("bench", "%1 to the left"))
                                            : words(QT_TRANSLATE_NOOP("bench", "%1 to the right"));
  return up.arg(length_text(std::abs(place.height_mm), inches, 1),
                aside.arg(length_text(std::abs(place.aside_mm), inches, 1)));
}

QString laser_caution() {
  return QString::fromUtf8(kLaserCaution.data(), static_cast<qsizetype>(kLaserCaution.size()));
}

}  // namespace prismwright
