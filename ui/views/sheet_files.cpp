#include "ui/views/sheet_files.h"

#include <QCoreApplication>
#include <QFileInfo>

#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/safe_file.h"

namespace prismwright {

Done save_sheet(const Drawing& drawing, std::size_t sheet, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  if (ending == QLatin1String("svg"))
    return write_whole(path.toStdString(), svg_text(drawing.sheets.at(sheet), drawing.title));
  if (ending != QLatin1String("pdf"))
    return request_problem("ending", path.toStdString(),
                           QCoreApplication::translate("sheet_files",
                                                       "A sheet is saved as .pdf or .svg: \"%1\" "
                                                       "is neither.")
                               .arg(QFileInfo(path).fileName())
                               .toStdString());
  const Outcome<std::string> bytes = pdf_bytes({drawing.title, drawing.date, {drawing.sheets.at(sheet)}});
  return bytes ? write_whole(path.toStdString(), *bytes) : Done(bytes.problem());
}

}  // namespace prismwright
