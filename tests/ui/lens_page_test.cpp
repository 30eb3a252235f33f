#include <QAbstractButton>
#include <QComboBox>
#include <QLineEdit>
#include <QSlider>
#include <QTabWidget>
#include <QTableView>
#include <QTemporaryDir>

#include "tests/ui/lens_desk.h"
#include "ui/models/prism_table.h"
#include "ui/pages/lens_page.h"

namespace prismwright {
namespace {

/// The Lens page on a small belt lens with its real solids, frame and clearances. Made once for all tests of
/// the suite: the solids take a second or two.
class LensOnThePage : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder = std::make_unique<QTemporaryDir>();
    Outcome<Lensbook> book =
        Lensbook::create(folder->filePath("belt.lensbook").toStdString(), starting_values("6", Work::belt, 4));
    ASSERT_TRUE(book) << book.problem().text;
    bench = std::make_unique<Workbench>();
    bench->setBook(std::move(book).value());
    ASSERT_TRUE(bench->waitUntilMade(120000));
    page = std::make_unique<LensPage>(bench.get());
    page->resize(1180, 700);
    page->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(page.get()));
  }
  static void TearDownTestSuite() {
    page.reset();
    bench.reset();
    folder.reset();
  }
  void SetUp() override {
    bench->select({});
    find<QComboBox>("lens.colouring")->setCurrentIndex(0);
    view().showNamed(LensView::NamedView::seaward);
    settled_picture(view());
  }

  template <class Widget>
  static Widget* find(const char* name) {
    auto* widget = page->findChild<Widget*>(QLatin1String(name));
    EXPECT_TRUE(widget) << name;
    return widget;
  }
  static LensView& view() { return *page->view(); }
  static QTableView* prisms() { return find<QTableView>("lens.prisms"); }
  static QString firstMark() { return QString::fromStdString(bench->plan()->prisms.front().mark); }

  static inline std::unique_ptr<QTemporaryDir> folder;
  static inline std::unique_ptr<Workbench> bench;
  static inline std::unique_ptr<LensPage> page;
};

TEST_F(LensOnThePage, ClickInTheViewSelectsEverywhere) {
  const QPoint place = view().placeOf(firstMark());
  ASSERT_TRUE(view().rect().contains(place));
  QTest::mouseClick(view().picture(), Qt::LeftButton, {}, place);
  ASSERT_EQ(bench->selection(), QStringList{firstMark()});
  const QModelIndexList rows = prisms()->selectionModel()->selectedRows();
  ASSERT_EQ(rows.size(), 1);
  EXPECT_EQ(rows.front().data().toString(), firstMark());
}

TEST_F(LensOnThePage, CtrlClickAddsAndTakesAway) {
  const QString second = QString::fromStdString(bench->plan()->prisms[1].mark);
  bench->select({second});
  const QPoint place = view().placeOf(firstMark());
  QTest::mouseClick(view().picture(), Qt::LeftButton, Qt::ControlModifier, place);
  EXPECT_EQ(bench->selection(), (QStringList{firstMark(), second})) << "the last picked leads";
  QTest::mouseClick(view().picture(), Qt::LeftButton, Qt::ControlModifier, place);
  EXPECT_EQ(bench->selection(), QStringList{second});
  QTest::mouseClick(view().picture(), Qt::LeftButton, {}, {4, view().height() / 2});
  EXPECT_TRUE(bench->selection().isEmpty()) << "a click on nothing clears";
}

TEST_F(LensOnThePage, ARowOfTheTableLightsUpItsPrismWithoutMovingTheEye) {
  const QImage before = settled_picture(view());
  const double distance_mm = view().camera()->distance_mm();
  prisms()->scrollToTop();
  const QModelIndex row = prisms()->model()->index(0, 0);
  QTest::mouseClick(prisms()->viewport(), Qt::LeftButton, {}, prisms()->visualRect(row).center());
  ASSERT_EQ(bench->selection(), QStringList{row.data().toString()});
  EXPECT_GT(differing_pixels(before, settled_picture(view())), 200);
  EXPECT_EQ(view().camera()->distance_mm(), distance_mm);
}

TEST_F(LensOnThePage, ColourByStageChangesThePicture) {
  const QImage material = settled_picture(view());
  find<QComboBox>("lens.colouring")->setCurrentIndex(3);
  EXPECT_GT(differing_pixels(material, settled_picture(view())), 5000);
}

TEST_F(LensOnThePage, EveryPrismHasItsFiguresInTheTable) {
  const QAbstractItemModel& model = *prisms()->model();
  ASSERT_EQ(model.rowCount(), static_cast<int>(bench->plan()->prisms.size()));
  for (int row = 0; row < model.rowCount(); ++row) {
    const QString mark = model.index(row, PrismTable::mark).data().toString();
    const PrismBody* body = bench->made()->bodies->find(mark.toStdString());
    ASSERT_TRUE(body) << qPrintable(mark);
    EXPECT_NEAR(model.index(row, PrismTable::volume).data().toDouble(), body->volume_mm3 / 1000, 0.05);
    EXPECT_NE(model.index(row, PrismTable::tightest).data().toString(), QString::fromUtf8("–"));
  }
}

TEST_F(LensOnThePage, FilterKeepsTheSelectionOfWhatItHides) {
  bench->select({firstMark()});
  find<QLineEdit>("lens.filter")->setText("no such prism");
  EXPECT_EQ(prisms()->model()->rowCount(), 0);
  EXPECT_EQ(bench->selection(), QStringList{firstMark()});
  find<QLineEdit>("lens.filter")->clear();
  EXPECT_EQ(prisms()->selectionModel()->selectedRows().size(), 1);
}

TEST_F(LensOnThePage, AClearanceSelectsItsPrismsAndDrawsTheGap) {
  auto* table = find<QTableView>("lens.clearances");
  ASSERT_GT(table->model()->rowCount(), 0);
  auto* tabs = find<QTabWidget>("lens.tables");
  tabs->setCurrentIndex(1);
  QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                    table->visualRect(table->model()->index(0, 0)).center());
  ASSERT_FALSE(bench->selection().isEmpty());
  const QString pair = table->model()->index(0, 0).data().toString();
  EXPECT_TRUE(pair.contains(bench->selection().front())) << qPrintable(pair);
  const QImage with_gap = settled_picture(view());
  const QStringList chosen = bench->selection();
  // The same selection from elsewhere: the gap goes, so the pictures differ by the gap alone.
  bench->select({});
  bench->select(chosen);
  const int changed = differing_pixels(with_gap, settled_picture(view()));
  EXPECT_GT(changed, 5);
  tabs->setCurrentIndex(0);
}

TEST_F(LensOnThePage, KeysShowTheNamedViews) {
  view().setFocus();
  QTest::keyClick(view().picture(), Qt::Key_3);
  EXPECT_EQ(view().namedView(), LensView::NamedView::lamp);
  QTest::keyClick(view().picture(), Qt::Key_2);
  EXPECT_EQ(view().namedView(), LensView::NamedView::plan);
  EXPECT_DOUBLE_EQ(view().camera()->elevation_deg(), 90);
  QTest::keyClick(view().picture(), Qt::Key_4);
  EXPECT_EQ(view().namedView(), LensView::NamedView::face);
  QTest::keyClick(view().picture(), Qt::Key_1);
  EXPECT_EQ(view().namedView(), LensView::NamedView::seaward);
}

TEST_F(LensOnThePage, CutSliderOpensTheLens) {
  const QImage whole = settled_picture(view());
  find<QComboBox>("lens.cut")->setCurrentIndex(1);
  auto* slider = find<QSlider>("lens.cutSlider");
  slider->setValue(slider->minimum() + 5);
  const QImage cut = settled_picture(view());
  EXPECT_LT(glass_pixels(cut), glass_pixels(whole) / 2);
  find<QComboBox>("lens.cut")->setCurrentIndex(0);
  EXPECT_NEAR(glass_pixels(settled_picture(view())), glass_pixels(whole), glass_pixels(whole) / 50);
}

TEST_F(LensOnThePage, NothingIsCutOffAtTheSmallestWindow) {
  for (const QWidget* widget : page->findChildren<QWidget*>()) {
    const QString name = widget->objectName();
    if (!name.startsWith("lens.") || !widget->isVisible()) continue;
    const QRect place(widget->mapTo(page.get(), QPoint(0, 0)), widget->size());
    EXPECT_TRUE(page->rect().contains(place)) << qPrintable(name);
    if (!qobject_cast<const QAbstractButton*>(widget)) continue;
    EXPECT_GE(widget->width(), widget->minimumSizeHint().width()) << qPrintable(name);
  }
}

TEST_F(LensOnThePage, TheVerdictOfAClearanceIsInSightInTheSmallestWindow) {
  auto* tabs = find<QTabWidget>("lens.tables");
  tabs->setCurrentIndex(1);
  auto* table = find<QTableView>("lens.clearances");
  EXPECT_TRUE(QTest::qWaitFor([&] { return table->isVisible(); }, 2000));
  const int last = table->model()->columnCount() - 1;
  EXPECT_LE(table->columnViewportPosition(last) + table->columnWidth(last), table->viewport()->width());
  tabs->setCurrentIndex(0);
}

}  // namespace
}  // namespace prismwright
