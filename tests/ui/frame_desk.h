#pragma once

#include <QHeaderView>
#include <QTabWidget>

#include "tests/ui/window_desk.h"
#include "ui/pages/frame_page.h"
#include "ui/pages/frame_scene.h"

namespace prismwright {

/// Solids and clearances of a lens this small are made well within this.
constexpr int kFrameWait_ms = 180000;

/// The window on the page Frame with a small belt lens of four panels, the third of them a door. Its solids and
/// clearances take the longest, so that the window is kept from test to test; a test that edits the lens says
/// so, and the next one begins anew.
class FrameWindowDesk : public WindowDesk {
 protected:
  static LensValues small_lens() {
    LensValues values = starting_values("6", Work::belt, 4);
    const Assignment small[] = {{"section.refracting_to_deg", "20"},
                                {"section.upper_to_deg", "20"},
                                {"section.lower_to_deg", "20"},
                                {"frame.door_panel", "3"}};
    const auto changed = with_assignments(values, small);
    EXPECT_TRUE(changed) << (changed ? "" : changed.problem().text);
    return changed ? *changed : values;
  }

  static void TearDownTestSuite() {
    kept_window.reset();
    kept_home.reset();
  }

  void SetUp() override {
    window = std::move(kept_window);
    if (!window) makeWindow();
    ASSERT_TRUE(window);
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->showPage(Page::frame);
    find<QTabWidget>("frame.tabs")->setCurrentIndex(0);
    bench().setInches(false);
    bench().select({});
    for (const char* name : {"frame.parts", "frame.clearances", "frame.setting", "frame.fit"}) {
      find<QLineEdit>(QLatin1String(name) + ".filter")->clear();
      table(QLatin1String(name))->horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    }
    QCoreApplication::processEvents();
  }

  void TearDown() override {
    if (spoilt) window.reset();
    kept_window = std::move(window);
  }

  void makeWindow() {
    kept_home = std::make_unique<QTemporaryDir>();
    const std::string book = kept_home->filePath("frame.lensbook").toStdString();
    ASSERT_TRUE(Lensbook::create(book, small_lens()));
    window = std::make_unique<MainWindow>();
    window->resize(1280, 800);
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    ASSERT_TRUE(window->openBook(QString::fromStdString(book)));
    click("rail.frame");
    ASSERT_TRUE(bench().waitUntilMade(kFrameWait_ms));
  }

  static inline std::unique_ptr<QTemporaryDir> kept_home;
  static inline std::unique_ptr<MainWindow> kept_window;
  bool spoilt = false;  ///< the lens was edited: the window is not kept

  [[nodiscard]] const MadeLens& made() const { return *bench().made(); }

  void showTab(const QString& title) {
    auto* tabs = find<QTabWidget>("frame.tabs");
    int place = 0;
    while (place < tabs->count() && tabs->tabText(place) != title) ++place;
    ASSERT_LT(place, tabs->count()) << qPrintable(title);
    QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(place).center());
    QCoreApplication::processEvents();
    ASSERT_EQ(tabs->currentIndex(), place);
  }

  [[nodiscard]] QTableView* table(const QString& name) const { return find<QTableView>(name); }
  [[nodiscard]] static QString cell(const QTableView* table, int row, int column) {
    return table->model()->index(row, column).data().toString();
  }
  /// A click on a row, at its first column.
  static void clickRow(QTableView* table, int row) {
    const QModelIndex index = table->model()->index(row, 0);
    table->scrollTo(index);
    QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, table->visualRect(index).center());
  }
  static void clickHead(QTableView* table, int column) {
    QHeaderView* head = table->horizontalHeader();
    QTest::mouseClick(
        head->viewport(), Qt::LeftButton, {},
        QPoint(head->sectionViewportPosition(column) + head->sectionSize(column) / 2, head->height() / 2));
  }
  /// A row whose first column begins so, or -1.
  [[nodiscard]] static int rowOf(const QTableView* table, const QString& begins) {
    for (int row = 0; row < table->model()->rowCount(); ++row)
      if (cell(table, row, 0).startsWith(begins)) return row;
    return -1;
  }
};

}  // namespace prismwright
