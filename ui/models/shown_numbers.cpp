#include "ui/models/shown_numbers.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>
#include <optional>

#include "core/base/inches.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("numbers", text); }

bool is_length(const Quantity& quantity) { return quantity.unit == "mm"; }

/// A bound or value in the shown unit: inches to four decimals without trailing noughts.
QString in_shown_unit(const Quantity& quantity, double value, bool inches) {
  if (!inches || !is_length(quantity)) return QString::fromStdString(number_text(value));
  const double rounded = std::round(value / kInch_mm * 1e4) / 1e4;
  return QString::fromStdString(number_text(rounded));
}

QString shown_member(const Quantity& quantity, const QString& member, bool inches) {
  const std::optional<double> value = read_number(member.toStdString(), quantity.unit);
  return value ? in_shown_unit(quantity, *value, inches) : member;
}

bool has_unit(const QString& typed) {
  for (const QChar letter : typed)
    if (letter.isLetter() || letter == QLatin1Char('"') || letter == QLatin1Char('\'')) return true;
  return false;
}

QString lower_first(QString text) {
  const bool one_capital = text.size() > 1 && !text.at(1).isUpper();
  if (one_capital) text[0] = text.at(0).toLower();
  return text;
}

QString blank_or(const std::string& text) {
  return text.empty() ? words(QT_TRANSLATE_NOOP("numbers", "blank")) : QString::fromStdString(text);
}

}  // namespace

QString length_unit(bool inches) { return inches ? QStringLiteral("in") : QStringLiteral("mm"); }

QString length_number(double mm, bool inches, int decimals) {
  return inches ? QString::number(mm / kInch_mm, 'f', decimals + 2) : QString::number(mm, 'f', decimals);
}

QString length_text(double mm, bool inches, int decimals) {
  return length_number(mm, inches, decimals) + QLatin1Char(' ') + length_unit(inches);
}

QString mass_text(double g) {
  return g < 1000 ? QStringLiteral("%1 g").arg(g, 0, 'f', 0) : QStringLiteral("%1 kg").arg(g / 1000, 0, 'f', 1);
}

QString sentence_of(const Problem& problem) {
  QString sentence = QString::fromStdString(problem.text).trimmed();
  if (problem.trouble != Trouble::file)
    for (const Quantity& quantity : quantities())
      sentence.replace(QString::fromStdString(quantity.key), QString::fromStdString(quantity.label));
  if (sentence.isEmpty()) return sentence;
  // A sentence on a file may begin with the file's name, which keeps its letters.
  if (problem.trouble != Trouble::file) sentence[0] = sentence.at(0).toUpper();
  return sentence.endsWith(QLatin1Char('.')) ? sentence : sentence + QLatin1Char('.');
}

QString shown_unit(const Quantity& quantity, bool inches) {
  if (is_length(quantity)) return length_unit(inches);
  if (quantity.unit == "g/cm3") return QStringLiteral("g/cm³");
  if (quantity.unit == "deg") return QStringLiteral("deg");
  return QString::fromStdString(quantity.unit);
}

QString shown_value(const Quantity& quantity, const std::string& text, bool inches) {
  const QString value = QString::fromStdString(text);
  if (!inches || !is_length(quantity) || value.isEmpty()) return value;
  if (quantity.form == QuantityForm::number) return shown_member(quantity, value, inches);
  if (quantity.form != QuantityForm::number_list) return value;
  QStringList members;
  for (const QString& member : value.split(QLatin1Char(','), Qt::SkipEmptyParts))
    members << shown_member(quantity, member.trimmed(), inches);
  return members.join(QStringLiteral(", "));
}

std::string typed_value(const Quantity& quantity, const QString& typed, bool inches) {
  const QString text = typed.trimmed();
  if (!inches || !is_length(quantity) || text.isEmpty()) return text.toStdString();
  if (quantity.form == QuantityForm::number)
    return (has_unit(text) ? text : text + QStringLiteral(" in")).toStdString();
  QStringList members;
  for (const QString& member : text.split(QLatin1Char(','), Qt::SkipEmptyParts))
    members << (has_unit(member) ? member.trimmed() : member.trimmed() + QStringLiteral(" in"));
  return members.join(QLatin1Char(',')).toStdString();
}

QString range_words(const Quantity& quantity, bool inches) {
  const bool counted = quantity.form == QuantityForm::number || quantity.form == QuantityForm::count ||
                       quantity.form == QuantityForm::number_list;
  if (!counted || !(quantity.max > quantity.min)) return {};
  return words(QT_TRANSLATE_NOOP("numbers", "%1 to %2"))
      .arg(in_shown_unit(quantity, quantity.min, inches), in_shown_unit(quantity, quantity.max, inches));
}

QString change_words(const Quantity& quantity, const std::string& before, const std::string& after) {
  const QString label = lower_first(QString::fromStdString(quantity.label));
  const bool long_text = before.size() > 24 || after.size() > 24;
  if (long_text) return words(QT_TRANSLATE_NOOP("numbers", "change of %1")).arg(label);
  const QString unit = quantity.unit.empty() ? QString() : QLatin1Char(' ') + shown_unit(quantity, false);
  return QStringLiteral("%1 %2 -> %3%4").arg(label, blank_or(before), blank_or(after), unit);
}

QString change_words(const LensValues& before, const LensValues& after) {
  const std::vector<std::string> keys = changed_keys(before, after);
  if (keys.empty()) return {};
  if (keys.size() > 2)
    return words(QT_TRANSLATE_NOOP("numbers", "change of %1 values")).arg(static_cast<int>(keys.size()));
  QStringList parts;
  for (const std::string& key : keys)
    if (const Quantity* quantity = find_quantity(key))
      parts << change_words(*quantity, value_text(before, key), value_text(after, key));
  return parts.join(QStringLiteral(", "));
}

}  // namespace prismwright
