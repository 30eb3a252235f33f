#include "ui/models/despatch_wish.h"

#include <QCryptographicHash>
#include <QDate>
#include <QDir>
#include <QFileInfo>
#include <QSettings>

#include "geometry/despatch/pack.h"

namespace prismwright {
namespace {

/// A place of its own for each book, whatever stands in its path.
QString place_of(const QString& book_path, const char* what) {
  const QByteArray path = QFileInfo(book_path).absoluteFilePath().toUtf8();
  const QByteArray sum = QCryptographicHash::hash(path, QCryptographicHash::Sha1).toHex();
  return QStringLiteral("despatch/%1/%2").arg(QString::fromLatin1(sum), QLatin1String(what));
}

template <class Number>
Number within(const QVariant& kept, Number least, Number most, Number offered) {
  bool is_number = false;
  const double value = kept.toDouble(&is_number);
  return is_number && value >= least && value <= most ? static_cast<Number>(value) : offered;
}

/// As the last pack was asked for, perhaps by another program.
EstimateChoice packed_estimate(const QString& folder, const QString& book_path) {
  const std::string book = QFileInfo(book_path).completeBaseName().toStdString();
  const std::optional<LastPack> last = last_pack(folder.toStdString(), book);
  return last ? last->manifest.estimate.value_or(EstimateChoice()) : EstimateChoice();
}

}  // namespace

QString offered_packs_folder(const QString& book_path) {
  const QFileInfo book(book_path);
  return book.absoluteDir().filePath(book.completeBaseName() + QStringLiteral("-packs"));
}

DespatchWish kept_despatch_wish(const QString& book_path) {
  const QSettings settings;
  const auto kept = [&](const char* what) { return settings.value(place_of(book_path, what)); };
  DespatchWish wish;
  wish.folder = kept("folder").toString();
  if (wish.folder.isEmpty()) wish.folder = offered_packs_folder(book_path);
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter})
    if (kept("paper").toString() == QLatin1String(name_of(paper))) wish.choice.paper = paper;
  EstimateChoice& estimate = wish.choice.estimate;
  if (!kept("margin").isValid()) estimate = packed_estimate(wish.folder, book_path);
  estimate.margin_percent =
      within(kept("margin"), 0.0, EstimateChoice::kMostMargin_percent, estimate.margin_percent);
  estimate.valid_days = within(kept("days"), 1, EstimateChoice::kMostDays, estimate.valid_days);
  estimate.spare_sets = within(kept("spares"), 0, EstimateChoice::kMostSets, estimate.spare_sets);
  if (kept("note").isValid()) estimate.note = kept("note").toString().toStdString();
  return wish;
}

void keep_despatch_wish(const QString& book_path, const DespatchWish& wish) {
  QSettings settings;
  const auto keep = [&](const char* what, const QVariant& value) {
    settings.setValue(place_of(book_path, what), value);
  };
  keep("folder", wish.folder == offered_packs_folder(book_path) ? QString() : wish.folder);
  keep("paper", wish.choice.paper ? QString::fromLatin1(name_of(*wish.choice.paper)) : QString());
  keep("margin", wish.choice.estimate.margin_percent);
  keep("days", wish.choice.estimate.valid_days);
  keep("spares", wish.choice.estimate.spare_sets);
  keep("note", QString::fromStdString(wish.choice.estimate.note));
}

std::string despatch_date(const DespatchWish& wish) {
  return wish.choice.date.empty() ? QDate::currentDate().toString(Qt::ISODate).toStdString() : wish.choice.date;
}

}  // namespace prismwright
