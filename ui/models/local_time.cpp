#include "ui/models/local_time.h"

#include <QDateTime>

namespace prismwright {

QString local_time(const std::string& when_utc) {
  QDateTime when = QDateTime::fromString(QString::fromStdString(when_utc), Qt::ISODate);
  if (!when.isValid()) return QString::fromStdString(when_utc);
  when.setTimeSpec(Qt::UTC);
  return when.toLocalTime().toString(QStringLiteral("yyyy-MM-dd HH:mm"));
}

}  // namespace prismwright
