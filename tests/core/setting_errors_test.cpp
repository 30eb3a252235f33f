#include "core/light/setting_errors.h"

#include <gtest/gtest.h>
#include <tbb/global_control.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

Lamp ball(double width_mm) {
  Lamp lamp;
  lamp.shape = LampShape::sphere;
  lamp.width_mm = width_mm;
  lamp.known = LampKnown::luminance;
  lamp.luminance_cd_mm2 = 1;
  return lamp;
}

/// A wedge of straight faces turned about the lens axis, 1 m from the lamp and a few millimetres thick: its
/// inner face upright, its outer face leaning by `lean_deg`, so that the outside falls back upward.
PlannedPrism wedge(double height_mm, double lean_deg) {
  const double low = height_mm - 5;
  const double high = height_mm + 5;
  const double lean = 5 * std::tan(radians(lean_deg));
  const SectionPoint a{1000, low};
  const SectionPoint b{1002 + lean, low};
  const SectionPoint c{1002 - lean, high};
  const SectionPoint d{1000, high};
  PlannedPrism prism;
  prism.mark = "P01-R1";
  prism.zone = "R1";
  prism.kind = ZoneKind::ring;
  prism.turning = TurningAxis::lens;
  prism.profile = {{straight_face(FaceRole::joint_lower, a, b), straight_face(FaceRole::outer, b, c),
                    straight_face(FaceRole::joint_upper, c, d), straight_face(FaceRole::inner, d, a)}};
  return prism;
}

/// The turns of the middle of a body's exit face at azimuth 0, with the lamp in the focus.
BeamTurns turns_in_the_middle(const LightBody& body, FaceRole role, double index, double out_deg) {
  for (const TurnedFace& face : body.faces()) {
    if (face.role() != role) continue;
    const auto place = body.place(face, 0.5, body.turning() == TurningAxis::lens ? 0 : kPi / 2);
    const ApertureSpot spot{&body, role, place->at, place->outward, 1, 0};
    const auto turns = beam_turns(spot, {0, radians(out_deg)}, {place->at, {1, 0, 0}, {0, 1, 0}}, {}, index);
    EXPECT_TRUE(turns.has_value());
    return turns.value_or(BeamTurns{});
  }
  ADD_FAILURE() << "no such face";
  return {};
}

// Closed form: a ray that meets the first face at i1 (r1 inside) and leaves the second at i2 (r2 inside) turns
// by 1 - (cos i1 cos r2)/(cos r1 cos i2) for each degree that the prism is turned with the lamp far off: none
// at least deviation, where both ratios are alike. By Snell's law differentiated, an error of the second face
// turns it by n cos r2 / cos i2 - 1 (the derivative of i2 by r2, less the face's own turn), and of the first by
// what is left of the whole.
TEST(TurnsOfAThinWedge, AreThoseOfTheLawOfRefractionDifferentiated) {
  constexpr double n = 1.5;
  for (const double lean_deg : {4.0, 12.0, 20.0}) {
    const LightBody body(wedge(120, lean_deg));
    const double rise = std::atan2(120, 1002);
    const double r1 = std::asin(std::sin(rise) / n);
    const double r2 = r1 - radians(lean_deg);
    const double i2 = std::asin(n * std::sin(r2));
    const double out_deg = degrees(i2) + lean_deg;
    const BeamTurns turns = turns_in_the_middle(body, FaceRole::outer, n, out_deg);
    const double whole = 1 - std::cos(rise) * std::cos(r2) / (std::cos(r1) * std::cos(i2));
    const double last = 1 - n * std::cos(r2) / std::cos(i2);
    SCOPED_TRACE(lean_deg);
    EXPECT_NEAR(turns[at_of(SettingMove::tilt)].upright_deg, whole, 0.004);
    EXPECT_NEAR(turns[at_of(SettingMove::last_face)].upright_deg, last, 0.004);
    EXPECT_NEAR(turns[at_of(SettingMove::first_face)].upright_deg, whole - last, 0.004);
    EXPECT_EQ(turns[at_of(SettingMove::reflecting_face)].upright_deg, 0);
    // d i2 / d n = (sin r2 + cos r2 tan r1 . (-1)) / cos i2, with r1 falling as n rises.
    const double by_index = (std::sin(r2) - std::cos(r2) * std::tan(r1)) / std::cos(i2);
    EXPECT_NEAR(turns[at_of(SettingMove::index)].upright_deg, degrees(by_index), 0.02);
  }
}

// Closed form: the lamp moved up by h at the distance D is seen lower by h cos(rise) / D, and so goes the beam,
// through faces that lie alike by cos i1 cos r2 / (cos r1 cos i2) of it.
TEST(TurnsOfAThinWedge, FollowTheLampTheOtherWay) {
  constexpr double n = 1.5;
  const LightBody body(wedge(120, 4));
  const double rise = std::atan2(120, 1002);
  const double r1 = std::asin(std::sin(rise) / n);
  const double r2 = r1 - radians(4);
  const double i2 = std::asin(n * std::sin(r2));
  const BeamTurns turns = turns_in_the_middle(body, FaceRole::outer, n, degrees(i2) + 4);
  const double through = std::cos(rise) * std::cos(r2) / (std::cos(r1) * std::cos(i2));
  const double seen_deg = degrees(std::cos(rise) / std::hypot(120, 1002));
  EXPECT_NEAR(turns[at_of(SettingMove::lamp_up)].upright_deg, -seen_deg * through, 0.01 * seen_deg);
  EXPECT_NEAR(turns[at_of(SettingMove::lamp_sideways)].level_deg, -degrees(1.0 / 1000), 0.0006);
}

// A reflecting face wrong by g turns the ray inside by 2 g; the exit face makes n cos r / cos i of it, and
// light leaves it at the angles of the plan.
TEST(TurnsOfAReflectingPrism, DoubleTheErrorOfTheReflectingFace) {
  const LensPlan plan = plan_of(starting_values("4", Work::belt, 6));
  const double n = plan.section.input.index;
  int seen = 0;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel != 1 || prism.kind != ZoneKind::upper) continue;
    const LightBody body(prism);
    for (const TurnedFace& face : body.faces()) {
      if (face.role() != FaceRole::exit) continue;
      const TurnPoint normal = face.normal(0.5);
      const double i = std::acos(std::abs(normal.off));
      const double r = std::asin(std::sin(i) / n);
      const BeamTurns turns = turns_in_the_middle(body, FaceRole::exit, n, 0);
      // The glass takes some millimetres of path from the focal distance, which the lamp's own place undoes.
      EXPECT_NEAR(std::abs(turns[at_of(SettingMove::reflecting_face)].upright_deg),
                  2 * n * std::cos(r) / std::cos(i), 0.12 * 2 * n * std::cos(r) / std::cos(i))
          << prism.mark;
      ++seen;
      break;
    }
  }
  EXPECT_GE(seen, 3);
}

const PrismSensitivity* centre_of(const SettingErrors& errors) {
  for (const PrismSensitivity& prism : errors.prisms)
    if (prism.zone.starts_with("C")) return &prism;
  return nullptr;
}

LensValues small_bullseye(int panels = 8) {
  LensValues values = starting_values("6", Work::bullseye, panels);
  values.lamp = ball(12);
  values.light.trials = 12;
  return values;
}

/// Worked out once for the tests that only look.
const SettingErrors& small_errors() {
  static const SettingErrors errors = *setting_errors(plan_of(small_bullseye()), {.spots = 600});
  return errors;
}

// A lens moved sideways by s sends its beam s / f aside; the lamp moved by h sends it h / f the other way.
TEST(SettingErrorsOfABullsEye, TurnTheCentreAsALensOfItsFocalDistance) {
  const LensPlan plan = plan_of(small_bullseye());
  const PrismSensitivity* centre = centre_of(small_errors());
  ASSERT_NE(centre, nullptr);
  const double per_mm = degrees(1 / plan.values.brief.focal_mm);
  EXPECT_NEAR(centre->mean[at_of(SettingMove::shift_up)].upright_deg / per_mm, 1, 0.05);
  EXPECT_NEAR(centre->mean[at_of(SettingMove::shift_sideways)].level_deg / per_mm, 1, 0.05);
  EXPECT_NEAR(centre->mean[at_of(SettingMove::lamp_up)].upright_deg / per_mm, -1, 0.05);
  EXPECT_NEAR(centre->mean[at_of(SettingMove::lamp_sideways)].level_deg / per_mm, -1, 0.05);
  // Seaward it opens all round and turns nothing as a whole.
  EXPECT_NEAR(centre->mean[at_of(SettingMove::shift_seaward)].upright_deg, 0, 0.02 * per_mm);
}

TEST(SettingErrorsOfABullsEye, ListEveryPrismAndGiveCongruentPanelsTheSameTurns) {
  const LensPlan plan = plan_of(small_bullseye());
  const SettingErrors* errors = &small_errors();
  ASSERT_EQ(errors->prisms.size(), plan.prisms.size());
  for (const PrismSensitivity& prism : errors->prisms) {
    EXPECT_NE(plan.find(prism.mark), nullptr);
    const auto first = std::find_if(errors->prisms.begin(), errors->prisms.end(), [&](const auto& other) {
      return other.panel == 1 && other.mark.substr(3) == prism.mark.substr(3);
    });
    ASSERT_NE(first, errors->prisms.end());
    EXPECT_EQ(first->mean[0].upright_deg, prism.mean[0].upright_deg);
  }
}

TEST(SettingErrorsOfABullsEye, AreTheSameToTheLastBitOnOneThreadAndSeveral) {
  const LensPlan plan = plan_of(small_bullseye());
  const SettingErrors* several = &small_errors();
  {
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    const auto alone = setting_errors(plan, {.spots = 600});
    ASSERT_TRUE(alone.ok());
    EXPECT_EQ(alone->peak_share.mean, several->peak_share.mean);
    EXPECT_EQ(alone->height_deg.deviation, several->height_deg.deviation);
    EXPECT_EQ(alone->tolerances[0].deviation, several->tolerances[0].deviation);
    EXPECT_EQ(alone->losses[0].loss_percent, several->losses[0].loss_percent);
  }
  LensValues other = small_bullseye();
  other.light.seed = 2;
  EXPECT_NE(setting_errors(plan_of(other), {.spots = 600})->peak_share.mean, several->peak_share.mean);
}

TEST(SettingErrorsOfABullsEye, LeaveThePeakAloneWithoutErrorsAndMoreOfItWithSmallerOnes) {
  LensValues values = small_bullseye();
  const SettingErrors* as_set = &small_errors();
  values.light.tilt_error_deg = values.light.shift_error_mm = values.light.face_error_deg = 0;
  values.light.index_error = values.light.lamp_error_mm = 0;
  const auto none = setting_errors(plan_of(values), {.spots = 600});
  ASSERT_TRUE(none.ok());
  EXPECT_DOUBLE_EQ(none->peak_share.mean, 1);
  EXPECT_NEAR(none->peak_share.deviation, 0, 1e-12);
  EXPECT_LT(as_set->peak_share.mean, 1);
  for (const LossRow& loss : none->losses) EXPECT_NEAR(loss.loss_percent, 0, 1e-9);
}

// The tolerance put back as the only error leaves 90 % of the peak.
TEST(SettingErrorsOfABullsEye, LeaveNineTenthsOfThePeakAtTheTolerance) {
  LensValues values = small_bullseye();
  const SettingErrors* found = &small_errors();
  const auto tilt = found->tolerances[0].deviation[static_cast<std::size_t>(ErrorKind::tilt)];
  ASSERT_TRUE(tilt.has_value());
  values.light.tilt_error_deg = *tilt;
  values.light.shift_error_mm = values.light.face_error_deg = 0;
  values.light.index_error = values.light.lamp_error_mm = 0;
  EXPECT_NEAR(setting_errors(plan_of(values), {.spots = 600})->peak_share.mean, 0.9, 3e-4);
}

TEST(SettingErrors, RefuseAPanelWithoutPrismsAndStopWhenToldTo) {
  const LensPlan plan = plan_of(small_bullseye());
  const auto none = setting_errors(plan, {.panel = 20});
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.problem().code, "light.panel");
  const auto stopped =
      setting_errors(plan, {.spots = 500}, [](double share, std::string_view) { return share < 0.5; });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
}

}  // namespace
}  // namespace prismwright
