#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/light/beam_map.h"
#include "core/light/prism_spots.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

/// Panel 1 of a small bull's-eye with one prism alone, so that its beam can be seen by itself.
class OnePrism {
 public:
  explicit OnePrism(const std::string& mark)
      : plan_(plan_of(values())), lens_(plan_, FramePlan{}), lamp_(*LampBody::make(values().lamp)) {
    for (PanelInLight& panel : lens_.panels()) {
      std::erase_if(panel.bodies, [&](const LightBody& body) { return body.mark() != mark; });
      if (panel.number == 1)
        panel.box.take_in(SpacePoint{-1000, -1000, -1000}), panel.box.take_in(SpacePoint{1000, 1000, 1000});
    }
  }

  static LensValues values() {
    LensValues values = starting_values("4", Work::bullseye, 8);
    values.lamp.shape = LampShape::sphere;
    values.lamp.width_mm = 6;
    values.lamp.known = LampKnown::luminance;
    values.lamp.luminance_cd_mm2 = 1;
    return values;
  }

  TurningPrism told() const {
    const PanelSpots spots({&lens_, &lamp_, {index(), 0}, 400}, lens_.panels()[0]);
    return spots.prisms().at(0);
  }
  double index() const { return plan_.section.input.index; }
  LightLens lens() const { return lens_; }

  /// The middle of the beam by its intensity, degrees.
  BeamTurn middle(const LightLens& lens, double glass_index) const {
    BeamRequest request;
    request.panel = 1;
    request.grid = {-1.6, 0.08, 41, -1.6, 0.08, 41};
    request.colours = {{{glass_index, 0}, 1}};
    request.first_spots = 24;
    request.most_rounds = 1;
    const BeamMap map = *beam_map(lens, lamp_, request);
    BeamTurn middle;
    double sum = 0;
    for (int i = 0; i < map.grid.azimuths; ++i) {
      for (int k = 0; k < map.grid.elevations; ++k) {
        sum += map.at(i, k);
        middle.level_deg += map.at(i, k) * map.grid.azimuth_deg(i);
        middle.upright_deg += map.at(i, k) * map.grid.elevation_deg(k);
      }
    }
    return {middle.level_deg / sum, middle.upright_deg / sum};
  }

 private:
  LensPlan plan_;
  LightLens lens_;
  LampBody lamp_;
};

/// The beam of each prism is traced anew with the prism moved both ways, and its middle looked for.
void expect_turns(const std::string& mark) {
  SCOPED_TRACE(mark);
  const OnePrism one(mark);
  const TurningPrism told = one.told();
  for (const SettingMove move :
       {SettingMove::tilt, SettingMove::roll, SettingMove::turn, SettingMove::shift_seaward,
        SettingMove::shift_sideways, SettingMove::shift_up}) {
    constexpr double kSize = 0.3;
    std::array<BeamTurn, 2> middles;
    for (const std::size_t way : {0u, 1u}) {
      LightLens moved = one.lens();
      moved.panels()[0].bodies[0].move(*rigid_move_of(move, way ? kSize : -kSize, told.seat));
      middles[way] = one.middle(moved, one.index());
    }
    SCOPED_TRACE(name_of(move));
    const BeamTurn turn = told.mean[at_of(move)];
    const double slack = 0.02 + 0.03 * std::hypot(turn.level_deg, turn.upright_deg);
    EXPECT_NEAR((middles[1].upright_deg - middles[0].upright_deg) / (2 * kSize), turn.upright_deg, slack);
    EXPECT_NEAR((middles[1].level_deg - middles[0].level_deg) / (2 * kSize), turn.level_deg, slack);
  }
  constexpr double kIndex = 0.004;
  const double over = one.middle(one.lens(), one.index() + kIndex).upright_deg;
  const double under = one.middle(one.lens(), one.index() - kIndex).upright_deg;
  const double turn = told.mean[at_of(SettingMove::index)].upright_deg;
  EXPECT_NEAR((over - under) / (2 * kIndex), turn, 0.5 + 0.03 * std::abs(turn)) << "index";
}

TEST(TurnsByEveryMove, AreThoseOfTheBeamTracedAnewForARefractingPrism) {
  const LensPlan plan = plan_of(OnePrism::values());
  std::string ring;
  for (const PlannedPrism& prism : plan.prisms)
    if (prism.panel == 1 && prism.kind == ZoneKind::ring && prism.trim.half == Half::upper && ring.empty())
      ring = prism.mark;
  ASSERT_FALSE(ring.empty());
  expect_turns(ring);
  for (const PlannedPrism& prism : plan.prisms)
    if (prism.panel == 1 && prism.kind == ZoneKind::centre) expect_turns(prism.mark);
}

TEST(TurnsByEveryMove, AreThoseOfTheBeamTracedAnewForAReflectingPrism) {
  const LensPlan plan = plan_of(OnePrism::values());
  std::string lowest;
  for (const PlannedPrism& prism : plan.prisms)
    if (prism.panel == 1 && prism.kind == ZoneKind::upper) lowest = prism.mark;
  ASSERT_FALSE(lowest.empty());
  expect_turns(lowest);
}

// A face ground wrongly is made here as a prism of another profile: its straight faces laid afresh.
TEST(TurnsByAFaceError, AreThoseOfAPrismMadeWithTheWrongProfile) {
  const double g = radians(0.05);
  const auto prism_with = [&](double turned) {
    const double lean = 5 * std::tan(radians(12.0) + turned);
    const SectionPoint a{300, 95};
    const SectionPoint b{306 + lean, 95};
    const SectionPoint c{306 - lean, 105};
    const SectionPoint d{300, 105};
    PlannedPrism prism;
    prism.mark = "P01-R1";
    prism.kind = ZoneKind::ring;
    prism.turning = TurningAxis::panel;
    prism.profile = {{straight_face(FaceRole::joint_lower, a, b), straight_face(FaceRole::outer, b, c),
                      straight_face(FaceRole::joint_upper, c, d), straight_face(FaceRole::inner, d, a)}};
    return prism;
  };
  const auto elevation_for = [&](double turned) {
    // The upright direction in which the middle of the outer face sends the lamp's middle.
    const LightBody body(prism_with(turned));
    for (const TurnedFace& face : body.faces()) {
      if (face.role() != FaceRole::outer) continue;
      const auto place = body.place(face, 0.5, kPi / 2);
      const PrismWay way({&body, FaceRole::outer, place->at, place->outward, 1, kPi / 2});
      double low = -0.4;
      double high = 0.4;
      for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        WrongPrism planned;
        planned.index = 1.5;
        const auto ray = way.back({0, middle}, planned);
        const double at_axis = ray ? ray->from.z - ray->from.x * ray->along.z / ray->along.x : 1;
        (at_axis > 0 ? low : high) = middle;
      }
      return low;
    }
    return 0.0;
  };
  const LightBody body(prism_with(0));
  for (const TurnedFace& face : body.faces()) {
    if (face.role() != FaceRole::outer) continue;
    const auto place = body.place(face, 0.5, kPi / 2);
    const ApertureSpot spot{&body, FaceRole::outer, place->at, place->outward, 1, kPi / 2};
    const auto turns = beam_turns(spot, {0, elevation_for(0)}, {place->at, {1, 0, 0}, {0, 1, 0}}, {}, 1.5);
    ASSERT_TRUE(turns.has_value());
    EXPECT_NEAR((*turns)[at_of(SettingMove::last_face)].upright_deg,
                (elevation_for(g) - elevation_for(-g)) / (2 * g), 2e-4);
  }
}

}  // namespace
}  // namespace prismwright
