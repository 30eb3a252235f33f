#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/light/beam_map.h"
#include "core/optics/proof.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

LampBody lamp_of(LampShape shape, double width_mm, double height_mm) {
  Lamp lamp;
  lamp.shape = shape;
  lamp.width_mm = width_mm;
  lamp.height_mm = height_mm;
  lamp.known = LampKnown::luminance;
  lamp.luminance_cd_mm2 = 2.5;
  return *LampBody::make(lamp);
}

BeamRequest one_way(const LensPlan& plan, double azimuth_deg, double elevation_deg) {
  BeamRequest request;
  request.grid = {azimuth_deg, 1, 1, elevation_deg, 1, 1};
  request.colours = {{{plan.section.input.index, 0}, 1}};
  request.first_spots = 1500;
  request.wanted_error = request.wanted_peak_error = 0.001;
  return request;
}

/// Sum over focal rays of a section, traced in the plane by other code than the beam's: `of` is given the
/// height at which the ray leaves the glass, and what comes through; its value is summed over the rise of that
/// height.
template <class Of>
double sum_over_aperture(const LensPlan& plan, const Of& of) {
  const SectionTracer tracer(plan.section);
  constexpr double kStep_deg = 0.002;
  double sum = 0;
  RayPath before;
  for (double t = plan.section.lowest_deg; t < plan.section.highest_deg; t += kStep_deg) {
    RayPath path = tracer.trace(t);
    const bool joined = before.regular && path.regular && before.zone == path.zone;
    if (joined) {
      const SectionPoint a = before.meetings.back().place;
      const SectionPoint b = path.meetings.back().place;
      sum += of(path, t) * std::abs(b.z - a.z);
    }
    before = std::move(path);
  }
  return sum;
}

// Closed form for a belt and a thin upright cylinder (own derivation in the project's optics notes):
// I = L d (integral of T cos t dz).
TEST(BeamOfABelt, HasThePeakOfTheClosedForm) {
  LensValues values = starting_values("4", Work::belt, 6);
  const LensPlan plan = plan_of(values);
  const double d = 8;
  const LampBody lamp = lamp_of(LampShape::cylinder, d, 40);
  const double closed = 2.5 * d * sum_over_aperture(plan, [](const RayPath& path, double t) {
                          return path.through * std::cos(radians(t));
                        });
  const LightLens lens(plan, FramePlan{});
  BeamRequest request = one_way(plan, 0, 0);
  request.panel = 1;
  request.first_spots = 6000;
  const BeamMap map = *beam_map(lens, lamp, request);
  EXPECT_NEAR(map.peak_cd / closed, 1, 0.002);
  EXPECT_LT(map.peak_error, 0.002);
}

// The peak is the greatest of many directions: it must not be owed to noise, and the error stated must hold.
TEST(BeamOfABelt, HasThePeakOfTheClosedFormOverAWholeMapToo) {
  const LensPlan plan = plan_of(starting_values("6", Work::belt, 6));
  const double d = 8;
  const LampBody lamp = lamp_of(LampShape::cylinder, d, 40);
  const double closed = 2.5 * d * sum_over_aperture(plan, [](const RayPath& path, double t) {
                          return path.through * std::cos(radians(t));
                        });
  const LightLens lens(plan, FramePlan{});
  BeamRequest request = one_way(plan, 0, 0);
  request.panel = 1;
  request.grid = {-12, 0.5, 49, -2, 0.5, 9};
  request.first_spots = 300;
  request.wanted_peak_error = 0.0015;
  const BeamMap map = *beam_map(lens, lamp, request);
  EXPECT_TRUE(map.reached);
  EXPECT_NEAR(map.at_deg(0, 0) / closed, 1, 0.002);
  EXPECT_NEAR(map.peak_cd / closed, 1, 0.003);
  request.most_rounds = 1;
  const BeamMap rough = *beam_map(lens, lamp, request);
  EXPECT_FALSE(rough.reached);
  EXPECT_LT(std::abs(rough.peak_cd / closed - 1), 3 * rough.peak_error);
}

// A lamp a hair off the lens axis keeps every spot of the belt where it is; on the axis they are turned about
// it. Ribs and the ends of the panels are in the map.
TEST(BeamOfABelt, IsTheSameWhetherItsSpotsAreTurnedOrNot) {
  const LensPlan plan = plan_of(starting_values("6", Work::belt, 6));
  const LightLens lens(plan);
  BeamRequest request = one_way(plan, 0, 0);
  request.panel = 1;
  request.grid = {-36, 2, 37, -1, 1, 3};
  request.first_spots = 1500;
  request.most_rounds = 4;
  request.wanted_error = request.wanted_peak_error = 1e-9;
  Lamp lamp;
  lamp.width_mm = 12;
  lamp.height_mm = 16;
  lamp.known = LampKnown::luminance;
  const BeamMap turned = *beam_map(lens, *LampBody::make(lamp), request);
  lamp.aside_x_mm = 1e-6;
  const BeamMap placed = *beam_map(lens, *LampBody::make(lamp), request);
  for (std::size_t i = 0; i < turned.cd.size(); ++i)
    EXPECT_NEAR(turned.cd[i] / turned.peak_cd, placed.cd[i] / turned.peak_cd, 0.03) << i;
  double sum = 0;
  double sum_placed = 0;
  for (const double cd : turned.cd) sum += cd;
  for (const double cd : placed.cd) sum_placed += cd;
  EXPECT_NEAR(sum / sum_placed, 1, 0.003);
}

// Closed form: with every point of the aperture lit, I = L (integral of T dA) over the aperture seen along the
// axis. What the side planes leave of each ring is worked out here by itself.
TEST(BeamOfABullsEye, HasThePeakOfTheClosedFormWhereTheWholeApertureIsLit) {
  const LensValues values = starting_values("4", Work::bullseye, 8);
  const LensPlan plan = plan_of(values);
  const LampBody lamp = lamp_of(LampShape::sphere, 30, 0);
  const double side = radians(22.5);
  const double back = values.frame.prism_set_back_mm();
  const double half_gap = values.section.gap_mm / 2;
  // A focal ray runs in a plane through the panel's axis and needs glass at every face that it meets.
  const auto width_of = [&](const RayPath& path, bool whole_ring) {
    double from = 0;
    for (const RayMeeting& meeting : path.meetings) {
      const double z = std::abs(meeting.place.z);
      const double half_width = (meeting.place.r * std::sin(side) - back) / std::cos(side);
      if (!whole_ring) from = std::max(from, std::asin(std::min(1.0, half_gap / z)));
      if (half_width < z) from = std::max(from, std::acos(std::max(0.0, half_width / z)));
    }
    return std::abs(path.meetings.back().place.z) * 2 * (kPi / 2 - from);
  };
  const auto ring_is_whole = [&](double t) {
    for (const Zone& zone : plan.section.zones) {
      const double high = std::abs(t);
      if (high < zone.from_deg || high > zone.to_deg) continue;
      if (zone.kind == ZoneKind::centre) return true;
      if (zone.kind == ZoneKind::ring) return plan.find("P01-" + zone.mark) != nullptr;
    }
    return false;
  };
  const double closed = 2.5 * sum_over_aperture(plan, [&](const RayPath& path, double t) {
                          return path.through * width_of(path, ring_is_whole(t));
                        });
  // Without the brass, whose ribs throw their shadow on the ends of the prisms.
  const LightLens lens(plan, FramePlan{});
  BeamRequest request = one_way(plan, 0, 0);
  request.panel = 1;
  const BeamMap map = *beam_map(lens, lamp, request);
  EXPECT_NEAR(map.peak_cd / closed, 1, 0.002);
  EXPECT_LE(map.peak_cd, map.bound_cd);
}

TEST(BeamMap, IsTheSameToTheLastBitEveryTime) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const LampBody lamp = lamp_of(LampShape::cylinder, 8, 12);
  BeamRequest request = one_way(plan, 0, 0);
  request.grid = {-3, 0.5, 13, -2, 0.5, 9};
  request.first_spots = 60;
  request.wanted_error = request.wanted_peak_error = 0.01;
  EXPECT_EQ(beam_map(lens, lamp, request)->cd, beam_map(lens, lamp, request)->cd);
}

// Luminance never grows: no direction is brighter than the lamp's luminance over the aperture seen from there.
TEST(BeamMap, NoDirectionExceedsTheLuminanceBound) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const LampBody lamp = lamp_of(LampShape::cylinder, 8, 12);
  double most = 0;
  for (const LightBody& body : lens.panels()[0].bodies) {
    for (const TurnedFace& face : body.faces()) {
      if (face.role() != FaceRole::outer && face.role() != FaceRole::exit) continue;
      constexpr int kSteps = 200;
      for (int i = 0; i < 20 * kSteps; ++i) {
        const double angle =
            body.angles().from + (body.angles().to - body.angles().from) * (i % kSteps + 0.5) / kSteps;
        const auto place = body.place(face, (i / kSteps + 0.5) / 20, angle);
        if (place)
          most += place->area_per_share_radian_mm2 * (body.angles().to - body.angles().from) / kSteps / 20 *
                  std::max(0.0, place->outward.x);
      }
    }
  }
  BeamRequest request = one_way(plan, 0, 0);
  request.grid = {-4, 0.5, 17, -4, 0.5, 17};
  request.first_spots = 100;
  request.wanted_error = 0.01;
  request.wanted_peak_error = 0.004;
  const BeamMap map = *beam_map(lens, lamp, request);
  EXPECT_GT(map.peak_cd, 0.7 * 2.5 * most);
  // A degree aside the aperture seen is larger by no more than a few hundredths.
  for (const double cd : map.cd) EXPECT_LT(cd, 1.02 * 2.5 * most);
}

TEST(BeamMap, PanelsAddUpRoundTheLens) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const LampBody lamp = lamp_of(LampShape::cylinder, 8, 12);
  BeamRequest request = one_way(plan, 0, 0);
  request.grid = {-180, 1, 361, 0, 1, 1};
  request.first_spots = 100;
  request.wanted_error = request.wanted_peak_error = 0.01;
  const BeamMap map = *beam_map(lens, lamp, request);
  for (int panel = 0; panel < 8; ++panel) {
    EXPECT_NEAR(map.at_deg(-180 + 45.0 * panel, 0) / map.peak_cd, 1, 1e-9) << panel;
  }
  EXPECT_EQ(map.at_deg(22, 0), 0);
}

TEST(BeamMap, ShowsEachBetterStateAndEndsWithTheLast) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  BeamRequest request = one_way(plan, 0, 0);
  request.first_spots = 60;
  std::vector<double> peaks;
  const auto map = beam_map(lens, lamp_of(LampShape::cylinder, 8, 12), request, {},
                            [&](const BeamMap& state) { peaks.push_back(state.peak_cd); });
  ASSERT_TRUE(map.ok());
  ASSERT_GT(peaks.size(), 1u);
  EXPECT_EQ(peaks.back(), map->peak_cd);
}

TEST(BeamMap, StopsWhenAsked) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const auto stopped = beam_map(lens, lamp_of(LampShape::sphere, 10, 0), one_way(plan, 0, 0),
                                [](double, std::string_view) { return false; });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
}

}  // namespace
}  // namespace prismwright
