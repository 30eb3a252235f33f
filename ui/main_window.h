#pragma once

#include <QMainWindow>
#include <array>

#include "ui/models/tell_tale.h"
#include "ui/models/workbench.h"

class QAction;
class QButtonGroup;
class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;

namespace prismwright {

class NoticeBar;
class StartPage;

/// The window: rail of pages at the left, tell-tales and notices above the page, progress at the foot.
///
/// Object names: rail.brief, rail.section, rail.lens, rail.light, rail.frame, rail.works, rail.despatch;
/// action.new, action.open, action.export, action.undo, action.redo, action.inches, action.page.N;
/// notice.refusal, notice.readOnly, notice.section, notice.book; status.path, status.progress, status.stop,
/// status.message.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(QWidget* parent = nullptr);
  ~MainWindow() override;

  [[nodiscard]] Workbench* bench() { return bench_; }
  /// Opens a book; a refusal is shown in the message bar and answered with false.
  bool openBook(const QString& path);
  void showPage(Page page);
  [[nodiscard]] Page page() const { return page_; }
  /// The page's widget, made when first asked for; null while no book is open.
  QWidget* pageWidget(Page page);

 protected:
  void closeEvent(QCloseEvent* event) override;

 private:
  void makeMenus();
  void makeEditMenu();
  void makeViewMenu();
  QWidget* makeRail();
  void makeStatusBar();
  QAction* addAction(class QMenu* menu, const char* name, const QString& text, const QKeySequence& keys);

  void newBook();
  void chooseBook();
  void exportSolids();
  QWidget* makeDespatchPage();
  void takeBook(Lensbook book);
  void refuse(const QString& sentence);

  void followBook();
  void followValues();
  void followMaking();
  void remember(const QString& path);
  void refillRecent();

  Workbench* bench_;
  Page page_ = Page::brief;
  QStackedWidget* stack_ = nullptr;
  StartPage* start_ = nullptr;
  std::array<QWidget*, kPages> pages_{};
  QButtonGroup* rail_ = nullptr;
  NoticeBar* refusals_ = nullptr;
  NoticeBar* read_only_ = nullptr;
  NoticeBar* no_section_ = nullptr;
  NoticeBar* about_book_ = nullptr;
  QMenu* recent_menu_ = nullptr;
  QAction* undo_ = nullptr;
  QAction* redo_ = nullptr;
  QAction* export_ = nullptr;
  QAction* drawing_ = nullptr;
  std::array<QAction*, kPages> page_actions_{};
  QLabel* path_ = nullptr;
  QLabel* making_words_ = nullptr;
  QProgressBar* making_bar_ = nullptr;
  QPushButton* stop_ = nullptr;
};

}  // namespace prismwright
