#include <QWheelEvent>

#include "tests/ui/lens_desk.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

class BlocksInTheView : public BlocksOnDesk {};

TEST_F(BlocksInTheView, GlassAndBrassAreSeen) {
  const QImage seen = picture();
  // The lens fills a good part of the picture: at least a tenth is glass, and the ring shows.
  EXPECT_GT(glass_pixels(seen), seen.width() * seen.height() / 10);
  EXPECT_GT(brass_pixels(seen), 200);
}

TEST_F(BlocksInTheView, ClickPicksThePrismUnderIt) {
  picture();
  QSignalSpy picked(view, &LensView::picked);
  for (const char* mark : {"P01-C", "P01-U01"}) {
    const QPoint place = view->placeOf(mark);
    ASSERT_TRUE(view->rect().contains(place)) << mark;
    clickAt(place);
    ASSERT_EQ(picked.size(), 1) << mark;
    EXPECT_EQ(picked.front().at(0).toString(), QLatin1String(mark));
    EXPECT_FALSE(picked.takeFirst().at(1).toBool());
  }
}

TEST_F(BlocksInTheView, CtrlClickAddsAndAClickOnNothingClears) {
  picture();
  QSignalSpy picked(view, &LensView::picked);
  clickAt(view->placeOf("P01-C"), Qt::ControlModifier);
  ASSERT_EQ(picked.size(), 1);
  EXPECT_TRUE(picked.takeFirst().at(1).toBool());
  clickAt({3, 3});
  ASSERT_EQ(picked.size(), 1);
  EXPECT_EQ(picked.takeFirst().at(0).toString(), QString());
}

TEST_F(BlocksInTheView, BrassHidesAPrismFromAClickButIsNoneItself) {
  picture();
  QSignalSpy picked(view, &LensView::picked);
  const QPoint ring = view->placeOf("ring-bottom");
  ASSERT_TRUE(view->rect().contains(ring));
  clickAt(ring);
  EXPECT_TRUE(picked.isEmpty());
}

TEST_F(BlocksInTheView, SelectionIsEdgedInBrassAndLeavesTheEyeWhereItIs) {
  view->setShown(SceneKind::ring, false);
  const QImage before = picture();
  EXPECT_LT(brass_pixels(before), 50);
  const double azimuth_deg = view->camera()->azimuth_deg();
  const double distance_mm = view->camera()->distance_mm();
  view->setSelection({"P01-C"});
  EXPECT_GT(brass_pixels(picture()), 300);
  EXPECT_EQ(view->camera()->azimuth_deg(), azimuth_deg);
  EXPECT_EQ(view->camera()->distance_mm(), distance_mm);
  view->setSelection({});
  EXPECT_LT(brass_pixels(picture()), 50);
}

TEST_F(BlocksInTheView, ShowSelectedFramesIt) {
  picture();
  const double before_mm = view->camera()->distance_mm();
  view->setSelection({"P02-U01"});
  view->showSelected();
  EXPECT_LT(view->camera()->distance_mm(), before_mm / 2);
  EXPECT_NEAR(view->camera()->azimuth_deg(), 90, 1e-9) << "panel 2 of four faces azimuth 90";
  picture();
  EXPECT_TRUE(view->rect().contains(view->placeOf("P02-U01")));
}

TEST_F(BlocksInTheView, ColourByStageChangesThePicture) {
  const QImage material = picture();
  LensLooks looks;
  looks.plain_glass = false;
  looks.of = [](const QString&) { return PrismLook{palette::stage(Stage::glazed), {}, {}, false}; };
  view->setLooks(looks);
  const QImage stage = picture();
  EXPECT_GT(differing_pixels(material, stage), stage.width() * stage.height() / 10);
}

TEST_F(BlocksInTheView, StaleSolidsAreGreyed) {
  LensLooks looks;
  looks.stale = true;
  const int fresh = glass_pixels(picture());
  view->setLooks(looks);
  EXPECT_LT(glass_pixels(picture()), fresh / 2);
}

TEST_F(BlocksInTheView, GlassAndRingsCanBeHidden) {
  view->setShown(SceneKind::glass, false);
  const QImage bare = picture();
  EXPECT_LT(glass_pixels(bare), 100);
  EXPECT_GT(brass_pixels(bare), 200);
  EXPECT_FALSE(view->rect().contains(view->placeOf("P01-C"))) << "what is hidden cannot be picked";
  view->setShown(SceneKind::ring, false);
  EXPECT_LT(brass_pixels(picture()), 50);
}

TEST_F(BlocksInTheView, ACutTakesAwayGlassAndItsPicking) {
  const int whole = glass_pixels(picture());
  // Everything above -200 mm, which is all glass.
  view->setCut({LensCut::Kind::level, -200, 0});
  EXPECT_LT(glass_pixels(picture()), whole / 20);
  EXPECT_FALSE(view->rect().contains(view->placeOf("P01-C")));
  view->setCut({});
  EXPECT_NEAR(glass_pixels(picture()), whole, whole / 50);
}

TEST_F(BlocksInTheView, PulledApartPanelsMoveOutAlongTheirAxes) {
  picture();
  view->setApart(1);
  view->showNamed(LensView::NamedView::plan);
  picture();
  const QPoint first = view->placeOf("P01-U01");
  const QPoint third = view->placeOf("P03-U01");
  ASSERT_TRUE(view->rect().contains(first) && view->rect().contains(third));
  const double apart_px = first.x() - third.x();
  view->setApart(0);
  picture();
  // The same eye: panels 1 and 3 face azimuth 0 and 180, right and left in the plan.
  const double together_px = view->placeOf("P01-U01").x() - view->placeOf("P03-U01").x();
  EXPECT_GT(apart_px, 1.5 * together_px);
}

TEST_F(BlocksInTheView, FromTheLampTheEyeStandsInTheFocusAndLooksRound) {
  picture();
  view->showNamed(LensView::NamedView::lamp);
  EXPECT_GT(glass_pixels(picture()), 640 * 480 / 4) << "glass all round";
  const double opening_deg = view->camera()->opening_deg();
  QTest::mousePress(view->picture(), Qt::LeftButton, {}, {100, 200});
  for (int x = 120; x <= 320; x += 20) QTest::mouseMove(view->picture(), {x, 200});
  QTest::mouseRelease(view->picture(), Qt::LeftButton, {}, {320, 200});
  // A drag by w pixels turns the head by w of the picture's height of the opening.
  EXPECT_NEAR(view->camera()->azimuth_deg(), opening_deg * 220 / 480, opening_deg * 30 / 480);
  QWheelEvent wheel(QPointF(320, 240), view->picture()->mapToGlobal(QPointF(320, 240)), {}, {0, 240},
                    Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(view->picture(), &wheel);
  EXPECT_LT(view->camera()->opening_deg(), opening_deg);
}

TEST_F(BlocksInTheView, EveryNamedViewHoldsTheWholeOfWhatItShows) {
  for (const auto named :
       {LensView::NamedView::seaward, LensView::NamedView::plan, LensView::NamedView::face}) {
    picture();
    view->showNamed(named);
    const QImage seen = picture();
    EXPECT_GT(glass_pixels(seen), seen.width() * seen.height() / 20);
    const QRect edge_free = seen.rect().adjusted(2, 2, -2, -2);
    const int on_edge = glass_pixels(seen) - glass_pixels(seen.copy(edge_free));
    const bool whole_lens = named != LensView::NamedView::face;
    EXPECT_TRUE(!whole_lens || on_edge == 0) << static_cast<int>(named);
  }
}

TEST_F(BlocksInTheView, ResizedViewDrawsItsNewSize) {
  picture();
  view->setGeometry(0, 0, 300, 500);
  QTest::qWait(50);
  const QImage narrow = picture();
  EXPECT_EQ(narrow.size(), QSize(300, 500) * view->devicePixelRatioF());
  EXPECT_GT(glass_pixels(narrow), 300 * 500 / 30);
}

TEST_F(BlocksInTheView, AStillPictureIsNotDrawnAgainAndAgain) {
  picture();
  QTest::qWait(500);
  auto* gl = qobject_cast<LensGl*>(view->picture());
  const int before = gl->pictures();
  QTest::qWait(600);
  EXPECT_LE(gl->pictures(), before + 1);
}

TEST_F(BlocksInTheView, ChosenGapIsDrawn) {
  view->setShown(SceneKind::ring, false);
  const QImage before = picture();
  Clearance gap;
  gap.first = "P01-C";
  gap.second = "P01-U01";
  gap.first_point = gp_Pnt(265, 0, 50);
  gap.second_point = gp_Pnt(255, 0, 60);
  gap.verdict = Verdict::clear;
  view->setGap(gap, "14 mm, clear");
  const int changed = differing_pixels(before, picture());
  EXPECT_GT(changed, 10);
  EXPECT_LT(changed, 3000) << "a short line, nothing else";
}

TEST_F(BlocksInTheView, NewSolidsTakeThePlaceOfTheOld) {
  picture();
  auto next = std::make_shared<MadeLens>(*made);
  auto fewer = std::make_shared<LensBodies>(*made->bodies);
  fewer->prisms.erase(fewer->prisms.begin());
  next->bodies = fewer;
  view->setSelection({"P01-U01"});
  view->showLens(next);
  picture();
  EXPECT_FALSE(view->rect().contains(view->placeOf("P01-U01"))) << "it is gone";
  EXPECT_TRUE(view->rect().contains(view->placeOf("P01-C")));
  view->showLens(nullptr);
  QTest::qWait(50);
  EXPECT_EQ(view->placeOf("P01-C"), QPoint(-1, -1));
}

TEST(LensViewLife, OpenedAndClosedOverAndOver) {
  const auto made = block_lens();
  for (int time = 0; time < 6; ++time) {
    QWidget desk;
    LensView view(&desk);
    view.setGeometry(0, 0, 320, 240);
    desk.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&desk));
    view.showLens(made);
    if (time % 2 == 1) continue;  // closed while the worker is still at it
    EXPECT_GT(glass_pixels(settled_picture(view)), 500) << "time " << time;
  }
}

TEST(LensViewLife, ASentenceStandsInPlaceOfAPictureThatCannotBe) {
  LensView view(QStringLiteral("This screen has no OpenGL."), nullptr);
  view.resize(320, 240);
  view.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&view));
  view.showLens(block_lens());
  view.setSelection({"P01-C"});
  view.showNamed(LensView::NamedView::lamp);
  view.showSelected();
  view.setCut({LensCut::Kind::level, 0, 0});
  view.setApart(0.5);
  view.setProgress(0.5, "half");
  view.setLooks({});
  EXPECT_EQ(view.trouble().toStdString(), "This screen has no OpenGL.");
  EXPECT_EQ(view.placeOf("P01-C"), QPoint(-1, -1));
  EXPECT_EQ(view.markAt({10, 10}), QString());
}

}  // namespace
}  // namespace prismwright
