#include "tests/ui/frame_desk.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/lens_view.h"

namespace prismwright {
namespace {

class FrameOnScreen : public FrameWindowDesk {};

TEST_F(FrameOnScreen, PartsListHoldsEveryPieceOnceAndItsMassIsThatOfTheSolids) {
  auto* parts = table("frame.parts");
  ASSERT_TRUE(parts->isVisible()) << "the page opens on the parts";
  int pieces = 0;
  for (int row = 0; row < parts->model()->rowCount(); ++row) pieces += cell(parts, row, 1).toInt();
  EXPECT_EQ(pieces, static_cast<int>(made().metal->size()));
  double mass_g = 0;
  for (const FrameBody& body : *made().metal) mass_g += body.mass_g;
  EXPECT_TRUE(text("frame.parts.total").startsWith(mass_text(mass_g)));
  EXPECT_EQ(text("figure.frame.mass"), mass_text(mass_g));
  EXPECT_TRUE(text("figure.frame.pieces").startsWith(QString::number(pieces)));
}

TEST_F(FrameOnScreen, FilterFindsAPartByTheMarkOfAnyOfItsPieces) {
  auto* parts = table("frame.parts");
  const int all = parts->model()->rowCount();
  auto* filter = find<QLineEdit>("frame.parts.filter");
  QTest::keyClicks(filter, "P03-rib");
  EXPECT_LT(parts->model()->rowCount(), all);
  EXPECT_GE(parts->model()->rowCount(), 1);
  EXPECT_TRUE(text("frame.parts.count").endsWith(QString("of %1").arg(all)));
  QTest::keyClicks(filter, " no such part");
  EXPECT_EQ(parts->model()->rowCount(), 0);
  EXPECT_FALSE(find<QAbstractButton>("frame.parts.save")->isEnabled()) << "there is nothing to save";
}

TEST_F(FrameOnScreen, HeadsSortByTheNumbersNotByTheirWords) {
  auto* parts = table("frame.parts");
  clickHead(parts, 2);
  double before = -1;
  for (int row = 0; row < parts->model()->rowCount(); ++row) {
    const double mass_g = cell(parts, row, 2).toDouble();
    EXPECT_GE(mass_g, before);
    before = mass_g;
  }
}

TEST_F(FrameOnScreen, EditIsInTheBookAtOnceAndUndoTakesItBack) {
  spoilt = true;
  const double before = made().metal->front().mass_g;
  typeInto("field.frame.rib_mm", "7");
  EXPECT_EQ(bench().values().frame.rib_mm, 7);
  EXPECT_FALSE(table("frame.parts")->isEnabled()) << "what is shown is of earlier values";
  ASSERT_TRUE(bench().waitUntilMade(kFrameWait_ms));
  EXPECT_TRUE(table("frame.parts")->isEnabled());
  EXPECT_GT(made().metal->front().mass_g, 1.2 * before);
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(bench().values().frame.rib_mm, 5);
  EXPECT_EQ(find<QLineEdit>("field.frame.rib_mm")->text(), "5");
}

TEST_F(FrameOnScreen, ValuesOfADoorRestWhileThereIsNone) {
  spoilt = true;
  EXPECT_TRUE(find<QLineEdit>("field.frame.door_gap_mm")->isEnabled());
  typeInto("field.frame.door_panel", "0");
  bench().stopMaking();
  EXPECT_FALSE(find<QLineEdit>("field.frame.door_gap_mm")->isEnabled());
  EXPECT_EQ(text("range.frame.door_gap_mm"), "There is no door");
}

TEST_F(FrameOnScreen, ClearancesStandTightestFirstAndAreAllSavedWithTheirPoints) {
  showTab("Clearances");
  auto* gaps = table("frame.clearances");
  ASSERT_EQ(gaps->model()->rowCount(), static_cast<int>(made().clearances->size()));
  const Clearance* tightest = made().tightest_of({});
  EXPECT_TRUE(cell(gaps, 0, 0).contains(QString::fromStdString(tightest->second)) ||
              tightest->gap_mm == made().clearances->front().gap_mm);
  const auto lines = linesOf(saveAs("frame.clearances", "gaps.csv"));
  ASSERT_EQ(lines.size(), made().clearances->size() + 1);
  const int x = static_cast<int>(lines[0].indexOf("first_x_mm"));
  ASSERT_GT(x, 0);
  const auto found =
      std::find_if(made().clearances->begin(), made().clearances->end(), [&](const Clearance& c) {
        return lines[1].contains(QString::fromStdString(c.first)) &&
               lines[1].contains(QString::fromStdString(c.second));
      });
  ASSERT_NE(found, made().clearances->end());
  EXPECT_DOUBLE_EQ(lines[1].at(x).toDouble(), found->first_point.X());
}

TEST_F(FrameOnScreen, ChosenClearanceSelectsItsPrismsAndReturnShowsItInThreeDimensions) {
  showTab("Clearances");
  auto* gaps = table("frame.clearances");
  const QString filter = "P02-C";
  QTest::keyClicks(find<QLineEdit>("frame.clearances.filter"), filter);
  ASSERT_GT(gaps->model()->rowCount(), 0);
  clickRow(gaps, 0);
  EXPECT_TRUE(bench().selection().contains("P02-C"));
  EXPECT_TRUE(text("frame.chosen").contains("P02-C"));
  QTest::keyClick(gaps, Qt::Key_Return);
  EXPECT_TRUE(find<QWidget>("frame.scene")->isVisible());
  auto* view = find<FramePage>("page.frame")->scene()->view();
  ASSERT_TRUE(view);
  if (!view->trouble().isEmpty()) FAIL() << qPrintable(view->trouble());
  ASSERT_TRUE(QTest::qWaitFor([&] { return view->isCurrent(); }, kFrameWait_ms));
}

TEST_F(FrameOnScreen, LengthsInInchesAreShownEverywhereAndSavedInMillimetres) {
  showTab("Clearances");
  auto* gaps = table("frame.clearances");
  const double first_mm = cell(gaps, 0, 1).toDouble();
  bench().setInches(true);
  EXPECT_NEAR(cell(gaps, 0, 1).toDouble() * 25.4, first_mm, 0.01);
  EXPECT_TRUE(gaps->model()->headerData(1, Qt::Horizontal).toString().endsWith("in"));
}

TEST_F(FrameOnScreen, EveryTabFitsASmallScreen) {
  auto* tabs = find<QTabWidget>("frame.tabs");
  for (int place = 0; place < tabs->count(); ++place) {
    tabs->setCurrentIndex(place);
    QCoreApplication::processEvents();
    EXPECT_LE(window->minimumSizeHint().width(), 1280) << qPrintable(tabs->tabText(place));
    EXPECT_LE(window->minimumSizeHint().height(), 800) << qPrintable(tabs->tabText(place));
  }
}

}  // namespace
}  // namespace prismwright
