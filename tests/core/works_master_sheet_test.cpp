#include "core/works/master_sheet.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "core/drawing/text_box.h"
#include "core/works/inspection.h"
#include "core/works/section_corners.h"
#include "core/works/stock_profile.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

WorksSettings uneven() {
  WorksSettings settings;
  settings.stock_mm = 0.4;
  settings.shrink_length_percent = 0.5;
  settings.shrink_depth_percent = 1;
  settings.shrink_height_percent = 2;
  return settings;
}

const MasterMeasure* named(const std::vector<MasterMeasure>& all, MasterMeasure::Kind kind,
                           const std::string& name) {
  for (const MasterMeasure& m : all) {
    if (m.kind == kind && m.name == name) return &m;
  }
  return nullptr;
}

std::vector<MasterMeasure> measures_of(const PlannedPrism& prism, const WorksSettings& settings) {
  const auto stocked = with_stock(prism, settings);
  EXPECT_TRUE(stocked.ok());
  return master_measures(prism, *stocked, settings);
}

TEST(MeasuresOfAMaster, StretchUprightFacesByHeightAndLengthsByLength) {
  // A ring about the panel's axis: its inner face stands upright, and grows by nothing but what the joints
  // give.
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const PlannedPrism& ring = *plan.find("P01-R2");
  const auto all = measures_of(ring, uneven());
  const MasterMeasure* inner = named(all, MasterMeasure::Kind::width, "A to B, inner");
  ASSERT_NE(inner, nullptr);
  const Face& face = *ring.profile.find(FaceRole::inner);
  EXPECT_NEAR(inner->prism, distance(face.start(), face.end()), 1e-9);
  EXPECT_NEAR(inner->master, inner->casting / 0.98, 1e-9);
  const MasterMeasure* across = named(all, MasterMeasure::Kind::length, "across at B");
  ASSERT_NE(across, nullptr);
  EXPECT_NEAR(across->prism, 2 * face.end().z, 1e-9);
  EXPECT_NEAR(across->master, across->casting / 0.995, 1e-9);
}

TEST(MeasuresOfACentre, TellItsThicknessOnTheAxisWithStockOnBothSides) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  const auto all = measures_of(*plan.find("P01-C"), uneven());
  const MasterMeasure* middle = named(all, MasterMeasure::Kind::width, "M to V, thickness on the axis");
  ASSERT_NE(middle, nullptr);
  EXPECT_NEAR(middle->casting, middle->prism + 2 * 0.4, 1e-9);
  EXPECT_NEAR(middle->master, middle->casting / 0.99, 1e-9);
}

TEST(MeasuresOfABeltPrism, AreItsChordsBetweenTheEndsThatItsSetBackLeaves) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  const PlannedPrism& prism = *plan.find("P01-U02");
  const auto all = measures_of(prism, uneven());
  const SectionCorner corner = lettered_corners(prism.profile).front();
  const SectionPoint a = corner.place;
  // Derived: the end planes pass the lens axis at the set-back, so a circle of radius r keeps the angle w - 2
  // asin(s / r) and the straight length 2 r sin of its half.
  const double half = radians(prism.trim.anticlockwise_side_deg - prism.trim.clockwise_side_deg) / 2;
  const double chord = 2 * a.r * std::sin(half - std::asin(prism.trim.set_back_mm / a.r));
  const MasterMeasure* length = named(all, MasterMeasure::Kind::length, "from end to end at " + corner.letter);
  ASSERT_NE(length, nullptr);
  EXPECT_NEAR(length->prism, chord, 1e-9);
  EXPECT_NEAR(length->master, length->casting / 0.995, 1e-9);
}

TEST(AnglesOfAMaster, AreThePrismsOwnUnderEvenShrinkageAndAddUpInATriangle) {
  LensValues values = sixth_order_belt(Faces::arc);
  values.section.land_mm = 0;
  const LensPlan plan = plan_of(values);
  WorksSettings even;
  const auto all = measures_of(*plan.find("P01-U03"), even);
  int angles = 0;
  for (const MasterMeasure& m : all) {
    if (m.kind != MasterMeasure::Kind::angle) continue;
    ++angles;
    EXPECT_NEAR(m.master, m.casting, 1e-9) << m.name;
    EXPECT_NEAR(m.casting, m.prism, 0.2) << m.name;
    EXPECT_GT(m.prism, 5);
    EXPECT_LT(m.prism, 175);
  }
  EXPECT_EQ(angles, 3);
  const MasterMeasure* radius = named(all, MasterMeasure::Kind::radius, "reflecting");
  ASSERT_NE(radius, nullptr);
  EXPECT_NEAR(radius->prism, plan.find("P01-U03")->profile.find(FaceRole::reflecting)->radius_mm, 1e-6);
  EXPECT_NEAR(radius->casting, radius->prism + even.stock_mm, 1e-6);
  EXPECT_NEAR(radius->master, radius->casting / 0.996, 1e-6);
}

TEST(MasterCsv, HasALineForEveryMeasureUnderItsHeads) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  const auto all = measures_of(*plan.find("P01-U03"), uneven());
  const std::string csv = master_csv(all);
  EXPECT_EQ(csv.rfind("kind,measure,unit,as_printed,as_cast,as_finished\n", 0), 0u);
  EXPECT_EQ(static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n')), all.size() + 1);
  EXPECT_NE(csv.find("width,\"A2 to C1, exit\",mm,"), std::string::npos);
}

TEST(MeasuresOfAMaster, CallTheFacesOfGlassBetweenTheSameCornersAsInspectionDoes) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  for (const char* mark : {"P01-R2", "P01-R8b", "P01-U05", "P01-L02"}) {
    const PlannedPrism& prism = *plan.find(mark);
    const auto all = measures_of(prism, uneven());
    for (const Feature& feature : features_of(prism, uneven())) {
      if (feature.kind != FeatureKind::width) continue;
      // "width.A1-B2" is "A1 to B2, entry" here.
      std::string corners = feature.key.substr(feature.key.find('.') + 1);
      corners.replace(corners.find('-'), 1, " to ");
      const auto found = std::find_if(all.begin(), all.end(), [&](const MasterMeasure& m) {
        return m.kind == MasterMeasure::Kind::width && m.name.rfind(corners + ", ", 0) == 0;
      });
      ASSERT_NE(found, all.end()) << mark << " " << corners;
      EXPECT_NEAR(found->prism, feature.drawn, 1e-9) << mark << " " << corners;
    }
  }
}

TEST(MasterSheet, NamesEveryCornerAndKeepsItsTextsOffEachOther) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  for (const char* mark : {"P01-C", "P01-R2", "P01-R8b", "P01-U05", "P01-L02"}) {
    const PlannedPrism& prism = *plan.find(mark);
    const auto stocked = with_stock(prism, uneven());
    const Sheet sheet =
        master_sheet(prism, *stocked, uneven(), {"Lens", mark, "2024-05-01", {mark}, {}, Paper::a4, false});
    for (const SectionCorner& corner : lettered_corners(prism.profile)) {
      const auto written = std::count_if(sheet.texts.begin(), sheet.texts.end(), [&](const DrawnText& text) {
        return text.words == corner.letter && text.bold;
      });
      EXPECT_EQ(written, 1) << mark << " " << corner.letter;
    }
    for (std::size_t i = 0; i < sheet.texts.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        EXPECT_FALSE(overlap(box_of(sheet.texts[i]), box_of(sheet.texts[k])))
            << mark << ": " << sheet.texts[i].words << " on " << sheet.texts[k].words;
      }
    }
  }
}

}  // namespace
}  // namespace prismwright
