#include "ui/pages/despatch_page.h"

#include <QDate>
#include <QDir>
#include <QTabWidget>
#include <QTextBrowser>
#include <QTreeWidget>

#include "tests/ui/window_desk.h"
#include "ui/pages/frame_page.h"
#include "ui/views/despatch_preview.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

/// A lens this small is made, listed and packed well within this.
constexpr int kWait_ms = 120000;

/// The window on the page Despatch with a small belt lens. Its solids take the longest, so that the window is
/// kept from test to test; a test that edits the lens or writes packs says so, and the next one begins anew.
class DespatchOnScreen : public WindowDesk {
 protected:
  static LensValues small_lens(std::initializer_list<Assignment> more = {}) {
    std::vector<Assignment> small = {{"section.refracting_to_deg", "12"},
                                     {"section.upper_to_deg", "20"},
                                     {"section.lower_to_deg", "20"},
                                     {"brief.title", "Harbour light"}};
    small.insert(small.end(), more);
    const auto changed = with_assignments(starting_values("6", Work::belt, 4), small);
    EXPECT_TRUE(changed) << (changed ? "" : changed.problem().text);
    return changed ? *changed : LensValues{};
  }

  static void TearDownTestSuite() {
    kept_window.reset();
    kept_home.reset();
  }

  void SetUp() override {
    window = std::move(kept_window);
    if (!window) {
      kept_home = std::make_unique<QTemporaryDir>();
      makeWindow(small_lens());
    }
    ASSERT_TRUE(window);
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    find<QLineEdit>("despatch.filter")->clear();
    find<QComboBox>("despatch.choice")->setCurrentIndex(0);
    chooseFirst("General arrangement");
  }

  void TearDown() override {
    if (spoilt) window.reset();
    kept_window = std::move(window);
  }

  void makeWindow(const LensValues& values) {
    const QString book = kept_home->filePath("light.lensbook");
    QFile::remove(book);
    ASSERT_TRUE(Lensbook::create(book.toStdString(), values));
    window = std::make_unique<MainWindow>();
    window->resize(1280, 800);
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    ASSERT_TRUE(window->openBook(book));
    click("rail.despatch");
    ASSERT_TRUE(waitForAll());
  }

  static inline std::unique_ptr<QTemporaryDir> kept_home;
  static inline std::unique_ptr<MainWindow> kept_window;
  bool spoilt = false;

  [[nodiscard]] DespatchPage& page() const { return *window->findChild<DespatchPage*>(); }
  [[nodiscard]] DespatchMaker& maker() const { return *page().maker(); }
  [[nodiscard]] bool waitForAll() const { return maker().waitUntilDone(kWait_ms); }
  [[nodiscard]] QTreeWidget* tree() const { return find<QTreeWidget>("despatch.list"); }
  [[nodiscard]] QTreeWidgetItem* group(const QString& words) const {
    const auto found = tree()->findItems(words, Qt::MatchExactly, 0);
    EXPECT_EQ(found.size(), 1) << qPrintable(words);
    return found.value(0);
  }
  /// The first row of the tree, at any depth, whose words hold these.
  [[nodiscard]] QTreeWidgetItem* row(const QString& words) const {
    const auto found = tree()->findItems(words, Qt::MatchContains | Qt::MatchRecursive, 0);
    EXPECT_FALSE(found.isEmpty()) << qPrintable(words);
    return found.value(0);
  }
  void clickRow(QTreeWidgetItem* item) {
    if (item->parent()) item->parent()->setExpanded(true);
    tree()->scrollToItem(item);
    QTest::mouseClick(tree()->viewport(), Qt::LeftButton, {}, tree()->visualItemRect(item).center());
  }
  void chooseFirst(const QString& words) {
    clickRow(row(words));
    ASSERT_TRUE(waitForAll());
  }
  /// By the keys alone: the group's row, then the space bar.
  void untick(const QString& words) {
    tree()->setFocus();
    tree()->setCurrentItem(group(words));
    QTest::keyClick(tree(), Qt::Key_Space);
    EXPECT_EQ(group(words)->checkState(0), Qt::Unchecked) << qPrintable(words);
  }
  /// Only these groups are left ticked: what is judged here is the page, not every file.
  void leaveTicked(const QStringList& words) {
    for (int i = 0; i < tree()->topLevelItemCount(); ++i)
      if (const QString name = tree()->topLevelItem(i)->text(0); !words.contains(name)) untick(name);
  }
  [[nodiscard]] const std::optional<Sheet>& sheet() const {
    return find<SheetPicture>("despatch.preview")->sheet();
  }
  [[nodiscard]] QString packsFolder() const { return kept_home->filePath("light-packs"); }
  [[nodiscard]] QStringList packs() const {
    return QDir(packsFolder()).entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot);
  }
  void writePack() {
    click("despatch.write");
    ASSERT_EQ(maker().task(), DespatchMaker::Task::packing);
    ASSERT_TRUE(waitForAll());
  }
};

bool has_words(const Sheet& sheet, const std::string& words) {
  return std::any_of(sheet.texts.begin(), sheet.texts.end(),
                     [&](const DrawnText& text) { return text.words.find(words) != std::string::npos; });
}

TEST_F(DespatchOnScreen, OpensOnTheGeneralArrangementWithEveryGroupAndItsState) {
  ASSERT_TRUE(find<SheetPicture>("despatch.preview")->isVisible());
  ASSERT_TRUE(sheet());
  EXPECT_TRUE(has_words(*sheet(), "Harbour light")) << "the title block says whose it is";
  EXPECT_TRUE(text("despatch.sheet").startsWith("Sheet 1 of "));
  EXPECT_EQ(text("despatch.title"), "General arrangement");
  EXPECT_LE(window->minimumSizeHint().width(), 1280) << "nothing is cut on a small screen";
  EXPECT_LE(window->minimumSizeHint().height(), 800);
  const int prisms = static_cast<int>(bench().plan()->prisms.size());
  EXPECT_EQ(group("Prism solids")->text(1), QString("○ %1 not packed yet").arg(prisms));
  EXPECT_EQ(group("Prism solids")->childCount(), prisms);
  EXPECT_TRUE(find<QAbstractButton>("despatch.write")->isEnabled());
  EXPECT_FALSE(find<QAbstractButton>("despatch.open")->isEnabled()) << "there is no pack yet";
  EXPECT_EQ(find<QLineEdit>("despatch.folder")->text(), packsFolder());
  EXPECT_EQ(find<QLineEdit>("despatch.revision")->placeholderText(), "A");
  EXPECT_TRUE(find<QTextBrowser>("despatch.report")->toPlainText().contains("no pack of this book"));
}

TEST_F(DespatchOnScreen, LeafsThroughSheetsByButtonsAndKeys) {
  chooseFirst("Section");
  const auto* preview = window->findChild<DespatchPreview*>();
  ASSERT_GT(maker().sight().drawing->sheets.size(), 1u) << "the section has its tables on sheets of their own";
  EXPECT_EQ(preview->sheet(), 0u);
  EXPECT_FALSE(find<QAbstractButton>("despatch.previous")->isEnabled());
  click("despatch.next");
  EXPECT_EQ(preview->sheet(), 1u);
  EXPECT_TRUE(text("despatch.sheet").startsWith("Sheet 2 of "));
  auto* picture = find<SheetPicture>("despatch.preview");
  QTest::keyClick(picture, Qt::Key_PageUp);
  EXPECT_EQ(preview->sheet(), 0u);
  const double whole = picture->pixelsPerMm();
  click("despatch.larger");
  EXPECT_GT(picture->pixelsPerMm(), 1.2 * whole);
  click("despatch.whole");
  EXPECT_DOUBLE_EQ(picture->pixelsPerMm(), whole);
}

TEST_F(DespatchOnScreen, SavesTheSheetInSightAsPdfAndSvg) {
  const QString pdf = saveAs("despatch.sheet", "sheet.pdf");
  QFile file(pdf);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << qPrintable(text("despatch.message"));
  EXPECT_TRUE(file.readAll().startsWith("%PDF-"));
  const QString svg = saveAs("despatch.sheet", "sheet.svg");
  QFile drawing(svg);
  ASSERT_TRUE(drawing.open(QIODevice::ReadOnly));
  EXPECT_TRUE(drawing.readAll().contains("Harbour light"));
  EXPECT_TRUE(text("despatch.message").contains("sheet.svg"));
}

TEST_F(DespatchOnScreen, SaysWhatTheFilesAreThatCannotBeDrawn) {
  chooseFirst("Prism P01-C");
  EXPECT_FALSE(find<SheetPicture>("despatch.preview")->isVisible());
  EXPECT_TRUE(text("despatch.words").contains("STEP"));
  EXPECT_FALSE(find<QAbstractButton>("despatch.sheet.save")->isVisible());
}

TEST_F(DespatchOnScreen, FilterKeepsWhatHoldsTheWordsAndTheState) {
  const QString last = QString::fromStdString(bench().plan()->prisms.back().mark);
  ASSERT_NE(last, "P01-C");
  QTest::keyClicks(find<QLineEdit>("despatch.filter"), last.toLower() + " solid");
  EXPECT_FALSE(group("Prism solids")->isHidden());
  EXPECT_TRUE(group("Prism solids")->isExpanded());
  EXPECT_TRUE(row("Prism P01-C")->isHidden());
  EXPECT_FALSE(row("Prism " + last)->isHidden());
  EXPECT_TRUE(text("despatch.count").contains(" of "));
  find<QLineEdit>("despatch.filter")->clear();
  auto* choice = find<QComboBox>("despatch.choice");
  choice->setCurrentIndex(choice->findText("fresh"));
  EXPECT_TRUE(group("Prism solids")->isHidden()) << "nothing was packed yet";
}

TEST_F(DespatchOnScreen, RefusesADateThatIsNoneAndTakesPaperAndInches) {
  typeInto("despatch.date", "2026-02-30");
  EXPECT_TRUE(text("despatch.refusal").contains("2026-02-30"));
  typeInto("despatch.date", "2026-03-05");
  EXPECT_FALSE(find<QLabel>("despatch.refusal")->isVisible());
  auto* paper = find<QComboBox>("despatch.paper");
  paper->setFocus();
  QTest::keyClick(paper, Qt::Key_End);
  QTest::keyClick(paper, Qt::Key_Up);
  ASSERT_TRUE(waitForAll());
  ASSERT_TRUE(sheet());
  EXPECT_EQ(sheet()->size.paper, Paper::a3);
  EXPECT_TRUE(has_words(*sheet(), "2026-03-05"));
  bench().setInches(true);
  ASSERT_TRUE(waitForAll());
  EXPECT_TRUE(maker().sight().drawing && has_words(*sheet(), "in"))
      << "the window's unit is that of the papers";
  bench().setInches(false);
  QTest::keyClick(paper, Qt::Key_Home);
  find<QLineEdit>("despatch.date")->clear();
  QTest::keyClick(find<QLineEdit>("despatch.date"), Qt::Key_Return);
  EXPECT_EQ(maker().wish().choice.date, "");
  ASSERT_TRUE(waitForAll());
}

TEST_F(DespatchOnScreen, StopLeavesNothingOfThePack) {
  typeInto("despatch.folder", kept_home->filePath("other"));
  ASSERT_TRUE(waitForAll());
  click("despatch.write");
  ASSERT_TRUE(find<QAbstractButton>("despatch.stop")->isVisible());
  QTest::qWait(50);
  ASSERT_EQ(maker().task(), DespatchMaker::Task::packing);
  click("despatch.stop");
  ASSERT_TRUE(waitForAll());
  EXPECT_FALSE(maker().packEnd().report);
  EXPECT_FALSE(text("despatch.message").isEmpty());
  const QDir other(kept_home->filePath("other"));
  EXPECT_TRUE(other.entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot).isEmpty());
  EXPECT_TRUE(find<QAbstractButton>("despatch.write")->isEnabled()) << "it can be begun anew";
  find<QLineEdit>("despatch.folder")->clear();
  QTest::keyClick(find<QLineEdit>("despatch.folder"), Qt::Key_Return);
  EXPECT_EQ(maker().wish().folder, packsFolder()) << "the offered one";
}

TEST_F(DespatchOnScreen, PackIsFreshAfterwardsAndStaleWithTheReasonOnceAValueChanges) {
  spoilt = true;
  leaveTicked({"Prism solids", "Drawings"});
  writePack();
  const QString today = QDate::currentDate().toString(Qt::ISODate);
  EXPECT_EQ(packs(), QStringList{"light-" + today});
  EXPECT_TRUE(QFile::exists(packsFolder() + "/light-" + today + "/index.html"));
  EXPECT_TRUE(text("despatch.message").contains("0 kept")) << qPrintable(text("despatch.message"));
  EXPECT_EQ(find<QTabWidget>("despatch.tabs")->currentIndex(), 1) << "what was packed is told";
  const int prisms = static_cast<int>(bench().plan()->prisms.size());
  EXPECT_EQ(group("Prism solids")->text(1), QString("✓ %1 fresh").arg(prisms));
  EXPECT_EQ(row("Prism P01-C")->text(2), "A, " + today);
  EXPECT_EQ(find<QLineEdit>("despatch.revision")->placeholderText(), "B");

  QUrl opened;
  page().setOpener([&](const QUrl& url) { opened = url; });
  click("despatch.start");
  EXPECT_TRUE(QFile::exists(opened.toLocalFile()) && opened.fileName() == "index.html");
  click("despatch.open");
  EXPECT_EQ(QFileInfo(opened.toLocalFile()).fileName(), "light-" + today);

  const Assignment title{"brief.title", "Outer harbour light"};
  ASSERT_TRUE(bench().assign({&title, 1}, {}));
  EXPECT_FALSE(find<QAbstractButton>("despatch.write")->isEnabled()) << "not before it is known what goes out";
  ASSERT_TRUE(waitForAll());
  EXPECT_TRUE(group("Drawings")->text(1).contains("stale")) << qPrintable(group("Drawings")->text(1));
  EXPECT_TRUE(group("Prism solids")->text(1).contains("fresh")) << "a solid has no title";
  clickRow(row("General arrangement"));
  EXPECT_TRUE(text("despatch.told").contains("Outer harbour light")) << qPrintable(text("despatch.told"));
  ASSERT_TRUE(waitForAll());
  writePack();
  EXPECT_TRUE(text("despatch.message").contains(QString("%1 kept").arg(prisms)))
      << qPrintable(text("despatch.message"));
  EXPECT_TRUE(find<QTextBrowser>("despatch.report")->toPlainText().contains("Outer harbour light"));
  EXPECT_EQ(packs().size(), 2);
}

/// The same lens over a pedestal that reaches up to the focal plane: it stands in brass and lower glass.
class DespatchOfAClash : public DespatchOnScreen {
 protected:
  void SetUp() override {
    spoilt = true;
    kept_home = std::make_unique<QTemporaryDir>();
    makeWindow(small_lens({{"frame.pedestal_radius_mm", "1000"}, {"frame.pedestal_top_mm", "-1"}}));
  }
};

TEST_F(DespatchOfAClash, IsWithheldInWordsAndLeadsToTheClearances) {
  QTreeWidgetItem* withheld = nullptr;
  for (QTreeWidgetItem* item : tree()->findItems("Prism ", Qt::MatchStartsWith | Qt::MatchRecursive, 0))
    if (item->parent() == group("Prism solids") && item->text(1) == "✕ withheld") withheld = item;
  ASSERT_TRUE(withheld);
  EXPECT_TRUE(group("Prism solids")->text(1).contains("withheld"));
  clickRow(withheld);
  const QString told = text("despatch.told");
  EXPECT_TRUE(told.contains("pedestal")) << qPrintable(told);
  ASSERT_TRUE(waitForAll());
  emit find<QLabel>("despatch.told")->linkActivated("clearances");
  EXPECT_EQ(window->page(), Page::frame);
  EXPECT_TRUE(find<QTableView>("frame.clearances")->isVisible());
  ASSERT_FALSE(bench().selection().isEmpty());
  EXPECT_TRUE(withheld->text(0).contains(bench().selection().first()));
}

}  // namespace
}  // namespace prismwright
