#include "ui/models/chart_outlines.h"

#include <gtest/gtest.h>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

LensPlan planned(const LensValues& values) {
  Outcome<LensPlan> plan = plan_lens(values);
  EXPECT_TRUE(plan) << (plan ? "" : plan.problem().text);
  return std::move(plan).value();
}

/// Area by counting the places of a 2 mm grid that lie inside.
int places_inside(const QPainterPath& path, const QRectF& frame) {
  int inside = 0;
  for (double x = frame.left() + 1; x < frame.right(); x += 2)
    for (double y = frame.top() + 1; y < frame.bottom(); y += 2)
      if (path.contains(QPointF(x, y))) ++inside;
  return inside;
}

class EveryLens : public testing::TestWithParam<Work> {};

TEST_P(EveryLens, PrismsOfAPanelNeverCoverEachOther) {
  const LensPlan plan = planned(starting_values("4", GetParam(), 6));
  const ChartPanel panel = chart_panels(plan).front();
  QPainterPath all;
  all.setFillRule(Qt::WindingFill);
  int sum = 0;
  for (const ChartPiece& piece : panel.pieces) {
    EXPECT_FALSE(piece.outline.isEmpty()) << qPrintable(piece.mark);
    EXPECT_TRUE(piece.outline.contains(piece.anchor)) << qPrintable(piece.mark);
    sum += places_inside(piece.outline, panel.frame);
  }
  int once = 0;
  for (double x = panel.frame.left() + 1; x < panel.frame.right(); x += 2)
    for (double y = panel.frame.top() + 1; y < panel.frame.bottom(); y += 2)
      for (const ChartPiece& piece : panel.pieces)
        if (piece.outline.contains(QPointF(x, y))) {
          ++once;
          break;
        }
  EXPECT_EQ(sum, once);
  EXPECT_GT(once, 1000);
}

TEST_P(EveryLens, EveryPrismOfThePlanIsDrawnOnceInItsPanel) {
  const LensPlan plan = planned(starting_values("6", GetParam(), 4));
  std::size_t drawn = 0;
  for (const ChartPanel& panel : chart_panels(plan)) {
    for (const ChartPiece& piece : panel.pieces) {
      const PlannedPrism* prism = plan.find(piece.mark.toStdString());
      ASSERT_TRUE(prism);
      EXPECT_EQ(prism->panel, panel.number);
    }
    drawn += panel.pieces.size();
  }
  EXPECT_EQ(drawn, plan.prisms.size());
}

INSTANTIATE_TEST_SUITE_P(Works, EveryLens, testing::Values(Work::bullseye, Work::belt),
                         [](const auto& work) { return std::string(name_of(work.param)); });

TEST(ChartOutlines, UpperPrismsStandAboveTheFocalPlaneOnTheScreen) {
  const LensPlan plan = planned(starting_values("4", Work::bullseye, 8));
  const ChartPanel panel = chart_panels(plan).front();
  for (const ChartPiece& piece : panel.pieces) {
    const ZoneKind kind = plan.find(piece.mark.toStdString())->kind;
    if (kind == ZoneKind::upper) {
      EXPECT_LT(piece.outline.boundingRect().bottom(), 0) << qPrintable(piece.mark);
    }
    if (kind == ZoneKind::lower) {
      EXPECT_GT(piece.outline.boundingRect().top(), 0) << qPrintable(piece.mark);
    }
  }
}

TEST(ChartOutlines, TwoPanelsOfHalfACircleShowWholeRings) {
  const LensPlan plan = planned(starting_values("6", Work::bullseye, 2));
  for (const ChartPanel& panel : chart_panels(plan)) {
    EXPECT_LT(panel.frame.width(), 2000);
    EXPECT_NEAR(-panel.frame.left(), panel.frame.right(), 1e-6);
  }
}

TEST(ChartOutlines, BlindPanelKeepsItsPlace) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.panels[3].blind = true;
  const auto panels = chart_panels(planned(values));
  ASSERT_EQ(panels.size(), 8u);
  EXPECT_TRUE(panels[3].blind);
  EXPECT_TRUE(panels[3].pieces.empty());
  EXPECT_GT(panels[3].frame.width(), 100);
}

}  // namespace
}  // namespace prismwright
