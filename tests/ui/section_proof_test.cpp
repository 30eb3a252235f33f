#include <QTabWidget>
#include <QTableWidget>

#include "geometry/glass_by_zone.h"
#include "tests/ui/section_desk.h"
#include "ui/views/lamp_strip.h"

namespace prismwright {
namespace {

class ProofOnPage : public SectionDesk {
 protected:
  [[nodiscard]] LampStripView* strip() const { return page->findChild<LampStripView*>("section.lampStrip"); }
  void showProof() {
    auto* tabs = page->findChild<QTabWidget*>("section.tabs");
    for (int tab = 0; tab < tabs->count(); ++tab)
      if (tabs->tabText(tab) == "Proof") tabs->setCurrentIndex(tab);
    QCoreApplication::processEvents();
  }
};

TEST_F(ProofOnPage, LossesAreListedByCauseTheGreatestFirst) {
  showProof();
  auto* losses = page->findChild<QTableWidget*>("proof.losses");
  ASSERT_TRUE(losses->isVisible());
  ASSERT_EQ(losses->rowCount(), static_cast<int>(bench.proof()->losses.size()));
  ASSERT_GT(losses->rowCount(), 0) << "lands and gaps of half a millimetre take light";
  EXPECT_EQ(losses->item(0, 1)->text().toStdString(), bench.proof()->losses.front().zone);
}

TEST_F(ProofOnPage, GlassOfEveryZoneHasItsBarAndTheTotalsAreTheirSum) {
  showProof();
  auto* glass = page->findChild<QTableWidget*>("proof.glass");
  const std::vector<ZoneGlass> zones = glass_by_zone(*bench.plan());
  ASSERT_EQ(glass->rowCount(), static_cast<int>(zones.size()));
  double sum_mm3 = 0;
  int pieces = 0;
  double longest = 0;
  for (int row = 0; row < glass->rowCount(); ++row) {
    sum_mm3 += zones[static_cast<std::size_t>(row)].volume_mm3;
    pieces += glass->item(row, 1)->text().toInt();
    longest = std::max(longest, glass->item(row, 4)->data(Qt::UserRole).toDouble());
  }
  EXPECT_DOUBLE_EQ(longest, 1);
  EXPECT_EQ(pieces, static_cast<int>(bench.plan()->prisms.size()));
  EXPECT_TRUE(label("proof.glass.sums").contains(QString::number(sum_mm3 / 1000, 'f', 0)));
}

TEST_F(ProofOnPage, StripOfTheLampsLightTellsWhoTakesIt) {
  const Zone& zone = *bench.plan()->section.find("U03");
  const QString words = strip()->wordsAt(strip()->yOf(middle_deg(zone)));
  EXPECT_TRUE(words.contains("U03")) << words.toStdString();
  EXPECT_TRUE(words.contains("level")) << words.toStdString();
  EXPECT_TRUE(strip()->wordsAt(strip()->yOf(bench.proof()->highest_deg + 1)).contains("beyond"));
}

TEST_F(ProofOnPage, ClickOnTheStripTurnsTheLaserThere) {
  const double wanted = middle_deg(*bench.plan()->section.find("L02"));
  QTest::mouseClick(strip(), Qt::LeftButton, {}, QPointF(40, strip()->yOf(wanted)).toPoint());
  EXPECT_NEAR(laser()->elevation_deg(), wanted, 0.3);
  EXPECT_EQ(laser()->zone(), "L02");
}

TEST_F(ProofOnPage, LossesFollowAPreview) {
  showProof();
  auto* losses = page->findChild<QTableWidget*>("proof.losses");
  const QString before = losses->item(0, 2)->text();
  const Assignment lands{"section.land_mm", "2"};
  ASSERT_TRUE(bench.preview({&lands, 1}));
  // Figures follow a preview at their own pace.
  EXPECT_TRUE(QTest::qWaitFor([&] { return losses->item(0, 2)->text() != before; }, 3000));
  bench.dropPreview();
  EXPECT_TRUE(QTest::qWaitFor([&] { return losses->item(0, 2)->text() == before; }, 3000));
}

}  // namespace
}  // namespace prismwright
