#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "geometry/room_field.h"

namespace prismwright {
namespace {

constexpr double kRound_mm = 200;  // from the axis to the middle of the section
constexpr double kArc_mm = 30;

// A half disc: an arc on the outer side, a line of height 2 kArc_mm on the inner one.
PlateChain half_disc() {
  const PlatePoint low{kRound_mm, -kArc_mm};
  const PlatePoint high{kRound_mm, kArc_mm};
  return {{low, high, std::numbers::pi, {kRound_mm, 0}, kArc_mm}, {high, low, 0, {}, 0}};
}

gp_Pnt at(double radius, double height, double angle) {
  return {radius * std::cos(angle), radius * std::sin(angle), height};
}

TEST(TurnedField, OutsideAnArcTheDistanceIsThatFromATorus) {
  const TurnedField field({half_disc()}, true);
  for (const double bearing : {-1.5, -0.4, 0.0, 0.7, 1.5}) {
    for (const double away : {30.5, 42.0, 300.0}) {
      const gp_Pnt p = at(kRound_mm + away * std::cos(bearing), away * std::sin(bearing), 2 * bearing);
      const RoomField::Hit hit = field.at(p);
      EXPECT_NEAR(hit.distance_mm, away - kArc_mm, 1e-10);
      EXPECT_NEAR(p.Distance(hit.foot), hit.distance_mm, 1e-10);
    }
  }
}

TEST(TurnedField, InsideTheRingTheDistanceIsThatFromATube) {
  const TurnedField field({half_disc()}, true);
  EXPECT_NEAR(field.at(at(150, 12, 1)).distance_mm, kRound_mm - 150, 1e-10);
  EXPECT_EQ(field.at(at(kRound_mm + 10, 12, 1)).distance_mm, 0);
}

TEST(TurnedField, PastTheEndsOfTheLineTheDistanceIsThatFromACircle) {
  const TurnedField field({half_disc()}, true);
  EXPECT_NEAR(field.at(at(kRound_mm - 3, kArc_mm + 4, 2)).distance_mm, 5, 1e-10);
}

TEST(TurnedField, ArcsAgreeWithADensePolygon) {
  PlateOutline polygon;
  constexpr int kCorners = 4000;
  for (int i = 0; i <= kCorners; ++i) {
    const double angle = std::numbers::pi * (static_cast<double>(i) / kCorners - 0.5);
    polygon.push_back({kRound_mm + kArc_mm * std::cos(angle), kArc_mm * std::sin(angle)});
  }
  const TurnedField arcs({half_disc()}, false);
  const TurnedField chords({straight_chain(polygon)}, false);
  std::mt19937 random(3);
  std::uniform_real_distribution<double> place(-260, 260);
  for (int i = 0; i < 300; ++i) {
    const gp_Pnt p(place(random), place(random), place(random));
    EXPECT_NEAR(arcs.at(p).distance_mm, chords.at(p).distance_mm, 1e-5) << i;
  }
}

// What the pieces promise after a move is never more than the distance then found.
template <class Field>
void expect_promises_kept(const Field& field, double size) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(-size, size);
  std::uniform_real_distribution<double> one(-1, 1);
  for (int i = 0; i < 400; ++i) {
    const gp_Pnt p(place(random), place(random), place(random) / 4);
    const double here = field.at(p).distance_mm;
    if (here == 0) continue;
    const double reach = std::min(0.2 * here, 2.0);
    const gp_Vec move = reach * gp_Vec(one(random), one(random), one(random)) / std::sqrt(3.0);
    double promised = here + 2 * reach;
    field.each_near(p, here + 2 * reach, reach, [&](const RoomPiece& piece) {
      double value = piece.distance_mm + piece.away.Dot(move) - piece.sag_per_mm * move.SquareMagnitude() / 2;
      for (const RoomPiece::Turn& turn : piece.turns) {
        const double along = turn.along.Dot(move);
        value += turn.per_mm * along * along / 2;
      }
      promised = std::min(promised, value);
    });
    // Third order aside: a tenth of the bend.
    const double loose = 0.1 * move.SquareMagnitude() / here;
    EXPECT_LE(promised, field.at(p.Translated(move)).distance_mm + loose) << i;
  }
}

TEST(LayerField, PiecesPromiseNoMoreThanIsFoundOverAndBesideItsRims) {
  const PlateChain outline = straight_chain(plate_rectangle({-40, -25}, {40, 25}));
  const LayerField plate({outline, circle_chain({5, 5}, 8)}, -2, 3);
  expect_promises_kept(plate, 50);
  const LayerField sheet({outline}, 0, 0);
  expect_promises_kept(sheet, 50);
}

}  // namespace
}  // namespace prismwright
