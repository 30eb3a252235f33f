#include <QApplication>
#include <QCommandLineParser>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QPixmap>
#include <QTimer>
#include <cstdio>

#include "ui/main_window.h"
#include "ui/pages/despatch_page.h"
#include "ui/pages/light_page.h"
#include "ui/style/before_window.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"

using namespace prismwright;

namespace {

/// Solids and clearances of the largest lens are made well within this.
constexpr int kPictureWait_ms = 300000;

struct Request {
  QString book;
  QString picture;
  Page page = Page::brief;
  QSize size{1280, 800};
};

int say_wrong(const QString& sentence) {
  std::fprintf(stderr, "prismwright: %s\n", qPrintable(sentence));
  return 2;
}

bool read_page(const QString& word, Page& page) {
  const QStringList words = {"brief", "section", "lens", "light", "frame", "works", "despatch"};
  const auto place = words.indexOf(word);
  if (place < 0) return false;
  page = static_cast<Page>(place);
  return true;
}

bool read_size(const QString& text, QSize& size) {
  const QStringList sides = text.split(QLatin1Char('x'));
  if (sides.size() != 2) return false;
  size = {sides.at(0).toInt(), sides.at(1).toInt()};
  return size.width() >= 640 && size.height() >= 480 && size.width() <= 7680 && size.height() <= 4320;
}

void let_run(int time_ms) {
  QEventLoop loop;
  QTimer::singleShot(time_ms, &loop, &QEventLoop::quit);
  loop.exec();
}

/// Draws the finished window into a file: for documents, and to look at it without sitting before it.
int take_picture(MainWindow& window, const Request& request) {
  if (window.bench()->hasBook() && !window.bench()->waitUntilMade(kPictureWait_ms))
    std::fprintf(stderr, "prismwright: the picture shows the window before its solids were made.\n");
  const auto* light = window.findChild<LightPage*>();
  if (request.page == Page::light && light && !light->maker()->waitUntilDone(kPictureWait_ms))
    std::fprintf(stderr, "prismwright: the picture shows the window before its light was worked out.\n");
  const auto* despatch = window.findChild<DespatchPage*>();
  if (request.page == Page::despatch && despatch && !despatch->maker()->waitUntilDone(kPictureWait_ms))
    std::fprintf(stderr, "prismwright: the picture shows the window before it was known what goes out.\n");
  let_run(800);
  if (window.grab().save(request.picture)) return 0;
  std::fprintf(stderr,
               "prismwright: the picture could not be written to %s: choose a folder that can be written.\n",
               qPrintable(request.picture));
  return 3;
}

}  // namespace

int main(int argc, char** argv) {
  prepare_for_drawing();
  QApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("prismwright"));
  QCoreApplication::setOrganizationName(QStringLiteral("prismwright"));
  QCoreApplication::setApplicationVersion(QStringLiteral(PRISMWRIGHT_VERSION));
  QGuiApplication::setDesktopFileName(QStringLiteral("prismwright"));

  QCommandLineParser parser;
  parser.setApplicationDescription(QStringLiteral("A workbench for makers of replica lighthouse lenses."));
  parser.addHelpOption();
  parser.addVersionOption();
  parser.addPositionalArgument("FILE.lensbook", "The lensbook to open.", "[FILE.lensbook]");
  parser.addOption(
      {"picture", "Write a picture of the window to FILE once everything is made, and end.", "FILE"});
  parser.addOption(
      {"page", "Open at this page: brief, section, lens, light, frame, works, despatch.", "PAGE", "brief"});
  parser.addOption({"size", "Size of the window in pixels.", "WIDTHxHEIGHT", "1280x800"});
  parser.process(application);

  Request request;
  request.book = parser.positionalArguments().value(0);
  request.picture = parser.value("picture");
  if (!read_page(parser.value("page"), request.page))
    return say_wrong(
        QStringLiteral("\"%1\" is not a page: choose brief, section, lens, light, frame, works or despatch.")
            .arg(parser.value("page")));
  if (!read_size(parser.value("size"), request.size))
    return say_wrong(
        QStringLiteral("\"%1\" is not a size from 640x480 to 7680x4320.").arg(parser.value("size")));

  palette::use(palette::theme_of(application.palette()));
  dress(application);
  MainWindow window;
  window.resize(request.size);
  window.show();
  const bool opened = request.book.isEmpty() || window.openBook(request.book);
  window.showPage(request.page);
  if (!request.picture.isEmpty()) return opened ? take_picture(window, request) : 3;
  return QApplication::exec();
}
