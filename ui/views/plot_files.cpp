#include "ui/views/plot_files.h"

#include <qcustomplot.h>

#include <QBuffer>
#include <QFileInfo>
#include <QSvgGenerator>

#include "core/lens/quantities.h"
#include "geometry/safe_file.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kSharpness = 2;

/// A title over the plot for as long as it is being written: in the window its tab says what it is.
class PassingTitle {
 public:
  PassingTitle(QCustomPlot& plot, const QString& title) : plot_(plot) {
    if (title.isEmpty()) return;
    QFont font = plot.font();
    font.setBold(true);
    plot.plotLayout()->insertRow(0);
    auto* element = new QCPTextElement(&plot, title, font);
    element->setTextColor(palette::ink());
    plot.plotLayout()->addElement(0, 0, element);
    shown_ = true;
  }
  ~PassingTitle() {
    if (!shown_) return;
    plot_.plotLayout()->remove(plot_.plotLayout()->element(0, 0));
    plot_.plotLayout()->simplify();
    plot_.replot();
  }
  PassingTitle(const PassingTitle&) = delete;
  PassingTitle& operator=(const PassingTitle&) = delete;

 private:
  QCustomPlot& plot_;
  bool shown_ = false;
};

QByteArray png_of(QCustomPlot& plot) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  plot.toPixmap(plot.width(), plot.height(), kSharpness).save(&buffer, "PNG");
  return bytes;
}

QByteArray svg_of(QCustomPlot& plot, const QString& title) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setSize(plot.size());
  generator.setViewBox(QRect({0, 0}, plot.size()));
  generator.setTitle(title);
  QCPPainter painter;
  painter.begin(&generator);
  painter.setMode(QCPPainter::pmVectorized);
  painter.setMode(QCPPainter::pmNoCaching);
  painter.fillRect(QRect({0, 0}, plot.size()), palette::surface());
  plot.toPainter(&painter, plot.width(), plot.height());
  painter.end();
  return bytes;
}

QByteArray csv_of(const PlotNumbers& numbers) {
  QString text = numbers.heads.join(',') + '\n';
  for (const QStringList& row : numbers.rows) text += row.join(',') + '\n';
  return text.toUtf8();
}

}  // namespace

QString plot_number(double value) { return QString::fromStdString(number_text(value)); }

QString quoted_for_csv(const QString& words) {
  if (!words.contains(',') && !words.contains('"') && !words.contains('\n')) return words;
  return '"' + QString(words).replace('"', QStringLiteral("\"\"")) + '"';
}

Done save_plot(QCustomPlot& plot, const QString& title, const PlotNumbers& numbers, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  const std::string file = path.toStdString();
  if (ending != "png" && ending != "svg" && ending != "csv")
    return file_problem("ending", file,
                        "\"" + file + "\" does not end in .png, .svg or .csv: give it one of these endings.");
  QByteArray bytes;
  if (ending == "csv") {
    bytes = csv_of(numbers);
  } else {
    const PassingTitle over(plot, title);
    bytes = ending == "png" ? png_of(plot) : svg_of(plot, title);
  }
  return write_whole(file, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

Done save_numbers(const PlotNumbers& numbers, const QString& path) {
  const std::string file = path.toStdString();
  if (QFileInfo(path).suffix().toLower() != "csv")
    return file_problem("ending", file, "\"" + file + "\" does not end in .csv: give it this ending.");
  const QByteArray bytes = csv_of(numbers);
  return write_whole(file, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

}  // namespace prismwright
