#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/works/shrink_fit.h"
#include "core/works/student_t.h"

namespace prismwright {
namespace {

/// Readings of one lot along the length.
std::vector<ShrinkReading> readings_of(const std::vector<std::pair<double, double>>& lengths,
                                       const std::string& lot = "A") {
  std::vector<ShrinkReading> readings;
  for (const auto& [master, casting] : lengths) {
    ShrinkReading r;
    r.number = static_cast<long long>(readings.size()) + 1;
    r.master_mm = master;
    r.casting_mm = casting;
    r.resin = "syrup";
    r.resin_lot = lot;
    readings.push_back(r);
  }
  return readings;
}

const ShrinkFactor length_of(const std::vector<ShrinkReading>& readings, const std::string& lot = "A") {
  return fit_shrinkage(readings, "syrup", lot).of(ShrinkDirection::length);
}

TEST(StudentT, AgreesWithPrintedTables) {
  // Two-sided 95 %, printed to three digits after the point in tables of Student's t (published; from memory).
  EXPECT_NEAR(student_t_at(0.975, 1), 12.706, 5e-4);
  EXPECT_NEAR(student_t_at(0.975, 2), 4.303, 5e-4);
  EXPECT_NEAR(student_t_at(0.975, 5), 2.571, 5e-4);
  EXPECT_NEAR(student_t_at(0.975, 30), 2.042, 5e-4);
  EXPECT_NEAR(student_t_at(0.025, 5), -2.571, 5e-4);
}

TEST(StudentT, AgreesWithClosedFormsOfOneAndTwoDegrees) {
  for (const double t : {-3.0, -0.2, 0.0, 0.7, 25.0}) {
    EXPECT_NEAR(student_t_below(t, 1), 0.5 + std::atan(t) / std::numbers::pi, 1e-12);
    EXPECT_NEAR(student_t_below(t, 2), 0.5 + t / (2 * std::sqrt(2 + t * t)), 1e-12);
  }
}

TEST(ShrinkFit, ReadingsWithoutErrorGiveTheFactorExactly) {
  const ShrinkFactor factor = length_of(readings_of({{100, 99.4}, {50, 49.7}, {211, 209.734}}));
  EXPECT_NEAR(*factor.percent, 0.6, 1e-10);
  EXPECT_NEAR(*factor.standard_percent, 0, 1e-9);
  EXPECT_TRUE(factor.usable());
  EXPECT_TRUE(factor.note.empty());
  for (const ShrinkPoint& p : factor.points) EXPECT_FALSE(p.outlier);
}

TEST(ShrinkFit, ThreeReadingsByHand) {
  // m = 10, 20, 20; c = 9.9, 19.9, 19.8. k = (99 + 398 + 396) / 900 = 893 / 900.
  // Residuals 9.9 - 8930/900, 19.9 - 17860/900, 19.8 - 17860/900 = -0.022222, 0.055556, -0.044444.
  const ShrinkFactor factor = length_of(readings_of({{10, 9.9}, {20, 19.9}, {20, 19.8}}));
  EXPECT_NEAR(*factor.percent, 100 * 7 / 900.0, 1e-10);
  const double scatter = std::sqrt((0.0004938272 + 0.0030864198 + 0.0019753086) / 2);
  EXPECT_NEAR(*factor.scatter_mm, scatter, 1e-8);
  EXPECT_NEAR(*factor.standard_percent, 100 * scatter / 30, 1e-7);
  EXPECT_NEAR(*factor.high_percent - *factor.percent, 4.302653 * *factor.standard_percent, 1e-6);
  EXPECT_NEAR(factor.points[1].residual_mm, 0.0555556, 1e-7);
}

TEST(ShrinkFit, TheIntervalHoldsTheTruthNineteenTimesOfTwenty) {
  std::mt19937 engine(3);
  std::normal_distribution<double> calliper(0, 0.05);
  constexpr double kTrue_percent = 0.55;
  constexpr int kTrials = 4000;
  int held = 0;
  double sum = 0;
  double squares = 0;
  double uncertainty = 0;
  for (int t = 0; t < kTrials; ++t) {
    std::vector<std::pair<double, double>> lengths;
    for (const double m : {40.0, 85.0, 120.0, 230.0, 260.0})
      lengths.emplace_back(m, m * (1 - kTrue_percent / 100) + calliper(engine));
    const ShrinkFactor factor = length_of(readings_of(lengths));
    held += *factor.low_percent <= kTrue_percent && kTrue_percent <= *factor.high_percent ? 1 : 0;
    sum += *factor.percent;
    squares += std::pow(*factor.percent - kTrue_percent, 2);
    uncertainty += std::pow(*factor.standard_percent, 2);
  }
  EXPECT_NEAR(held / static_cast<double>(kTrials), 0.95, 0.014);  // four standard deviations
  EXPECT_NEAR(sum / kTrials, kTrue_percent, 4 * std::sqrt(squares) / kTrials);
  EXPECT_NEAR(std::sqrt(uncertainty / squares), 1, 0.06);
}

TEST(ShrinkFit, AnOutlierIsToldAndKept) {
  std::vector<std::pair<double, double>> lengths = {{100, 99.41},  {120, 119.27}, {90, 89.47},
                                                    {150, 149.12}, {80, 79.51},   {110, 109.35}};
  const ShrinkFactor clean = length_of(readings_of(lengths));
  for (const ShrinkPoint& p : clean.points) EXPECT_FALSE(p.outlier) << p.number;
  lengths.emplace_back(100, 98.4);
  const ShrinkFactor factor = length_of(readings_of(lengths));
  EXPECT_EQ(factor.count, 7);
  for (const ShrinkPoint& p : factor.points) EXPECT_EQ(p.outlier, p.number == 7);
}

TEST(ShrinkFit, OutliersAreRareAmongGoodReadings) {
  std::mt19937 engine(8);
  std::normal_distribution<double> calliper(0, 0.03);
  int sets = 0;
  constexpr int kTrials = 1000;
  for (int t = 0; t < kTrials; ++t) {
    std::vector<std::pair<double, double>> lengths;
    for (const double m : {60.0, 61.0, 90.0, 140.0, 200.0, 75.0})
      lengths.emplace_back(m, m * 0.995 + calliper(engine));
    const ShrinkFactor factor = length_of(readings_of(lengths));
    bool any = false;
    for (const ShrinkPoint& p : factor.points) any = any || p.outlier;
    sets += any ? 1 : 0;
  }
  EXPECT_LE(sets / static_cast<double>(kTrials), kOutlierChance + 0.02);
  EXPECT_GT(sets, 0);
}

TEST(ShrinkFit, ALotWithTooFewReadingsIsOfferedTheResins) {
  auto readings = readings_of({{100, 99.4}, {50, 49.7}, {200, 198.8}}, "A");
  for (const ShrinkReading& r : readings_of({{100, 99.2}}, "B")) readings.push_back(r);
  const ShrinkFactor b = length_of(readings, "B");
  EXPECT_FALSE(b.of_lot);
  EXPECT_EQ(b.lot_count, 1);
  EXPECT_EQ(b.count, 4);
  EXPECT_EQ(b.note, "Lot B has 1 reading along the length, 3 are needed; this is the resin's over all lots");
  const ShrinkFactor a = length_of(readings, "A");
  EXPECT_TRUE(a.of_lot);
  EXPECT_EQ(a.count, 3);
}

TEST(ShrinkFit, OneReadingHasAFactorWithoutUncertaintyAndIsNotTakenOver) {
  const ShrinkFit fit = fit_shrinkage(readings_of({{100, 99.5}}), "syrup", "A");
  const ShrinkFactor& factor = fit.of(ShrinkDirection::length);
  EXPECT_NEAR(*factor.percent, 0.5, 1e-10);
  EXPECT_FALSE(factor.standard_percent);
  EXPECT_FALSE(factor.usable());
  EXPECT_TRUE(shrink_assignments(fit).empty());
  EXPECT_FALSE(fit.of(ShrinkDirection::depth).percent);
}

TEST(ShrinkFit, WhatIsNoLengthIsLeftOutAndTold) {
  const ShrinkFit fit =
      fit_shrinkage(readings_of({{100, 99.5}, {0, 99}, {100, std::nan("")}, {-5, -5}}), "syrup", "A");
  EXPECT_EQ(fit.left_out, (std::vector<long long>{2, 3, 4}));
  EXPECT_EQ(fit.of(ShrinkDirection::length).count, 1);
}

TEST(ShrinkFit, AgreedFactorsBecomeTheSettingsOfTheNextMasters) {
  const auto readings = readings_of({{100, 99.38}, {50, 49.69}, {200, 198.77}});
  const auto edits = shrink_assignments(fit_shrinkage(readings, "syrup", "A"));
  ASSERT_EQ(edits.size(), 1U);
  const auto values = with_assignments(starting_values("6", Work::belt, 6), edits);
  ASSERT_TRUE(values.ok());
  EXPECT_NEAR(values->works.shrink_length_percent, *length_of(readings).percent, 5e-5);
  EXPECT_EQ(values->works.shrink_depth_percent, WorksSettings{}.shrink_depth_percent);
}

TEST(ShrinkFit, EveryResinAndLotHasAFitOfItsOwn) {
  auto readings = readings_of({{100, 99.4}}, "A");
  for (const ShrinkReading& r : readings_of({{100, 99.2}}, "B, second")) readings.push_back(r);
  const auto fits = fit_all_shrinkage(readings);
  ASSERT_EQ(fits.size(), 2U);
  EXPECT_EQ(fits[1].resin_lot, "B, second");
  const std::string csv = shrink_csv(fits);
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 7);
  EXPECT_NE(csv.find("syrup,\"B, second\",length,2,resin,"), std::string::npos);
}

}  // namespace
}  // namespace prismwright
