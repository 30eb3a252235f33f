#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QSettings>

#include "ui/main_window.h"
#include "ui/pages/start_page.h"
#include "ui/style/dress.h"
#include "ui/views/drawing_dialog.h"
#include "ui/views/help_texts.h"

namespace prismwright {

QAction* MainWindow::addAction(QMenu* menu, const char* name, const QString& text, const QKeySequence& keys) {
  auto* action = menu->addAction(text);
  action->setObjectName(QLatin1String(name));
  action->setShortcut(keys);
  return action;
}

void MainWindow::makeMenus() {
  QMenu* file = menuBar()->addMenu(tr("&File"));
  QAction* begin = addAction(file, "action.new", tr("&New lensbook…"), QKeySequence::New);
  begin->setIcon(drawn_icon(QStringLiteral("new")));
  connect(begin, &QAction::triggered, this, &MainWindow::newBook);
  QAction* open = addAction(file, "action.open", tr("&Open…"), QKeySequence::Open);
  open->setIcon(drawn_icon(QStringLiteral("open")));
  connect(open, &QAction::triggered, this, &MainWindow::chooseBook);
  recent_menu_ = file->addMenu(tr("Opened &lately"));
  file->addSeparator();
  export_ = addAction(file, "action.export", tr("&Export STEP and STL…"), QKeySequence(Qt::CTRL | Qt::Key_E));
  export_->setIcon(drawn_icon(QStringLiteral("export")));
  connect(export_, &QAction::triggered, this, &MainWindow::exportSolids);
  drawing_ =
      addAction(file, "action.drawing", tr("Save section &drawing…"), QKeySequence(Qt::CTRL | Qt::Key_D));
  drawing_->setIcon(drawn_icon(QStringLiteral("sheet")));
  connect(drawing_, &QAction::triggered, this, [this] { save_section_drawing(bench_, this); });
  file->addSeparator();
  QAction* quit = addAction(file, "action.quit", tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q));
  connect(quit, &QAction::triggered, this, &QWidget::close);
  makeEditMenu();
  makeViewMenu();
  QMenu* help = menuBar()->addMenu(tr("&Help"));
  QAction* cautions = addAction(help, "action.cautions", tr("&Cautions"), QKeySequence::HelpContents);
  cautions->setIcon(drawn_icon(QStringLiteral("caution")));
  connect(cautions, &QAction::triggered, this, [this] { show_cautions(this); });
  QAction* about = addAction(help, "action.about", tr("&About Prismwright"), {});
  connect(about, &QAction::triggered, this, [this] { show_about(this); });
}

void MainWindow::makeEditMenu() {
  QMenu* edit = menuBar()->addMenu(tr("&Edit"));
  undo_ = addAction(edit, "action.undo", tr("Undo"), QKeySequence(Qt::CTRL | Qt::Key_Z));
  undo_->setIcon(drawn_icon(QStringLiteral("undo")));
  connect(undo_, &QAction::triggered, this, [this] { (void)bench_->undo(); });
  redo_ = addAction(edit, "action.redo", tr("Redo"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z));
  redo_->setIcon(drawn_icon(QStringLiteral("redo")));
  connect(redo_, &QAction::triggered, this, [this] { (void)bench_->redo(); });
}

void MainWindow::makeViewMenu() {
  QMenu* view = menuBar()->addMenu(tr("&View"));
  const std::array<QString, kPages> words = {tr("Brief"), tr("Section"), tr("Lens"),    tr("Light"),
                                             tr("Frame"), tr("Works"),   tr("Despatch")};
  const std::array<const char*, kPages> names = {"action.page.1", "action.page.2", "action.page.3",
                                                 "action.page.4", "action.page.5", "action.page.6",
                                                 "action.page.7"};
  for (std::size_t i = 0; i < words.size(); ++i) {
    const int key = Qt::Key_1 + static_cast<int>(i);
    page_actions_.at(i) =
        addAction(view, names.at(i), words.at(i), QKeySequence(Qt::CTRL | static_cast<Qt::Key>(key)));
    connect(page_actions_.at(i), &QAction::triggered, this, [this, i] { showPage(static_cast<Page>(i)); });
  }
  view->addSeparator();
  QAction* inches =
      addAction(view, "action.inches", tr("Lengths in &inches"), QKeySequence(Qt::CTRL | Qt::Key_I));
  inches->setCheckable(true);
  inches->setChecked(bench_->inches());
  connect(inches, &QAction::toggled, bench_, &Workbench::setInches);
}

void MainWindow::refillRecent() {
  const QStringList paths = QSettings().value(QStringLiteral("recent")).toStringList();
  recent_menu_->clear();
  for (const QString& path : paths) {
    QAction* action = recent_menu_->addAction(QString(path).replace("&", "&&"));
    connect(action, &QAction::triggered, this, [this, path] { openBook(path); });
  }
  recent_menu_->setEnabled(!paths.isEmpty());
  start_->setRecent(paths);
}

}  // namespace prismwright
