#include "ui/views/bench_file.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QStandardPaths>

#include "geometry/safe_file.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {
QString words(const char* text) { return QCoreApplication::translate("bench", text); }
}  // namespace

QString save_bench_file(const QString& csv, QWidget* parent) {
  QFileDialog dialog(parent, words(QT_TRANSLATE_NOOP("bench", "Save the table of the bench")));
  dialog.setObjectName(QStringLiteral("bench.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters({words(QT_TRANSLATE_NOOP("bench", "Numbers (*.csv)")),
                         words(QT_TRANSLATE_NOOP("bench", "All files (*)"))});
  dialog.setDefaultSuffix(QStringLiteral("csv"));
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(words(QT_TRANSLATE_NOOP("bench", "Bench")));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  const QString path = dialog.selectedFiles().constFirst();
  const QByteArray bytes = csv.toUtf8();
  const Done saved =
      write_whole(path.toStdString(), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
  return saved ? words(QT_TRANSLATE_NOOP("bench", "Saved as %1")).arg(QFileInfo(path).fileName())
               : sentence_of(saved.problem());
}

}  // namespace prismwright
