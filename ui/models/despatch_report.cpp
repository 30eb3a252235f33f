#include "ui/models/despatch_report.h"

#include <QCoreApplication>
#include <QDir>

#include "ui/models/despatch_table.h"

namespace prismwright {
namespace {

QString words(const char* text, int number = -1) {
  return QCoreApplication::translate("despatch", text, nullptr, number);
}
QString safe(const std::string& text) { return QString::fromStdString(text).toHtmlEscaped(); }

QString list_of(const QString& head, const std::vector<std::string>& sentences, const QString& none = {}) {
  if (sentences.empty() && none.isEmpty()) return {};
  QString text = QStringLiteral("<p><b>%1</b></p>").arg(head);
  if (sentences.empty()) return text + QStringLiteral("<p>%1</p>").arg(none);
  text += QStringLiteral("<ul>");
  for (const std::string& sentence : sentences)
    text += QStringLiteral("<li>%1</li>").arg(change_text(sentence).toHtmlEscaped());
  return text + QStringLiteral("</ul>");
}

QString head_of(const PackManifest& manifest, const std::string& folder) {
  std::size_t files = 0;
  std::uint64_t bytes = 0;
  for (const PackedPiece& piece : manifest.pieces)
    for (const PackedFile& file : piece.files) {
      ++files;
      bytes += file.bytes;
    }
  return QStringLiteral("<p><b>%1</b></p><p>%2<br>%3</p>")
      .arg(words(QT_TRANSLATE_NOOP("despatch", "Pack of %1, revision %2"))
               .arg(safe(manifest.date), safe(manifest.revision)),
           QDir::toNativeSeparators(QString::fromStdString(folder)).toHtmlEscaped(),
           words(QT_TRANSLATE_NOOP("despatch", "%1 pieces in %2 files, %3"))
               .arg(manifest.pieces.size())
               .arg(files)
               .arg(bytes_text(bytes)));
}

QString written_text(const PackReport& report) {
  return head_of(report.manifest, report.folder) +
         QStringLiteral("<p>%1</p>").arg(pack_words(report).toHtmlEscaped()) +
         list_of(words(QT_TRANSLATE_NOOP("despatch", "Changed since the pack before")), report.changes,
                 report.manifest.number > 1
                     ? words(QT_TRANSLATE_NOOP("despatch", "Nothing."))
                     : words(QT_TRANSLATE_NOOP("despatch", "It is the first of this book here."))) +
         list_of(words(QT_TRANSLATE_NOOP("despatch", "Withheld")), report.withheld) +
         list_of(words(QT_TRANSLATE_NOOP("despatch", "To note")), report.notes);
}

}  // namespace

QString pack_words(const PackReport& report) {
  QString text = words(QT_TRANSLATE_NOOP("despatch", "%1 made anew, %2 kept from the last pack"))
                     .arg(report.made_anew)
                     .arg(report.kept);
  if (!report.withheld.empty())
    text += words(QT_TRANSLATE_NOOP("despatch", "; %1 withheld")).arg(report.withheld.size());
  return text + QLatin1Char('.');
}

QString last_pack_text(const DespatchListing* listing, const PackEnd& end) {
  if (end.report) {
    const bool changed = listing != nullptr && listing->last && !listing->values_changed.empty();
    return written_text(*end.report) +
           (changed ? list_of(words(QT_TRANSLATE_NOOP("despatch", "Values changed since this pack")),
                              listing->values_changed)
                    : QString());
  }
  if (listing == nullptr) return {};
  if (!listing->last)
    return QStringLiteral("<p>%1</p>")
        .arg(words(QT_TRANSLATE_NOOP("despatch", "There is no pack of this book in the folder yet.")));
  return head_of(listing->last->manifest, listing->last->folder) +
         list_of(words(QT_TRANSLATE_NOOP("despatch", "Values changed since")), listing->values_changed,
                 words(QT_TRANSLATE_NOOP("despatch", "None."))) +
         QStringLiteral("<p><b>%1</b></p><p>%2</p>")
             .arg(words(QT_TRANSLATE_NOOP("despatch", "What goes out now")),
                  counts_words(count_states(*listing)));
}

}  // namespace prismwright
