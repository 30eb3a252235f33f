#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/light/beam_map.h"
#include "core/light/trial_beams.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

/// A lens whose panel 1 is traced anew with every prism moved, against the same errors told by turned maps.
class Retraced {
 public:
  explicit Retraced(const LensValues& values, int trials = 12)
      : values_(values),
        plan_(plan_of(values)),
        lens_(plan_, FramePlan{}),
        lamp_(*LampBody::make(values.lamp)),
        glass_{plan_.section.input.index, 0},
        spots_({&lens_, &lamp_, glass_, 3000}, lens_.panels()[0]),
        beam_(spots_, lamp_),
        draws_(trials, spots_.prisms().size(), 5),
        model_(beam_, draws_) {}

  const PanelSpots& spots() const { return spots_; }
  const BeamPieces& beam() const { return beam_; }
  const SettingDraws& draws() const { return draws_; }
  const TrialBeams& model() const { return model_; }

  /// The beam with prism `p` moved by `move(p, m)` for each rigid move, the lamp moved alike.
  template <class Size>
  BeamMap trace(const Size& size, double wanted) const {
    LightLens lens = lens_;
    PanelInLight& panel = lens.panels()[0];
    int p = 0;
    for (LightBody& body : panel.bodies) {
      if (body.metal()) continue;
      for (std::size_t m = 0; m < kSettingMoves; ++m) {
        const auto move = static_cast<SettingMove>(m);
        const auto seat = spots_.prisms()[static_cast<std::size_t>(p)].seat;
        if (const auto rigid = rigid_move_of(move, size(p, move), seat)) body.move(*rigid);
      }
      panel.box.take_in(body.box());
      ++p;
    }
    Lamp lamp = values_.lamp;
    lamp.aside_x_mm += size(0, SettingMove::lamp_seaward);
    lamp.aside_y_mm += size(0, SettingMove::lamp_sideways);
    lamp.above_mm += size(0, SettingMove::lamp_up);
    return *beam_map(lens, *LampBody::make(lamp), request(wanted));
  }

  /// Greatest of the model's map at the directions of that request.
  double model_peak_cd(int trial, const KindSizes& deviations) const {
    const std::vector<double> map = model_.map(trial, deviations);
    const StepGrid& grid = beam_.grid();
    const bool belt = grid.columns < 10;
    double most = 0;
    for (int k = 0; k < grid.rows; k += kCoarser)
      for (int i = belt ? -grid.first_column : 0; i < (belt ? 1 - grid.first_column : grid.columns);
           i += kCoarser)
        most = std::max(most, map[grid.at(i, k)]);
    return most;
  }

  BeamRequest request(double wanted) const {
    const StepGrid& grid = beam_.grid();
    const double step = degrees(grid.step);
    BeamRequest request;
    request.panel = 1;
    request.colours = {{glass_, 1}};
    const bool belt = grid.columns < 10;
    const int rows = (grid.rows + kCoarser - 1) / kCoarser;
    const int columns = belt ? 1 : (grid.columns + kCoarser - 1) / kCoarser;
    request.grid = {belt ? 0 : grid.first_column * step,
                    kCoarser * step,
                    columns,
                    grid.first_row * step,
                    kCoarser * step,
                    rows};
    request.first_spots = 200;
    request.wanted_error = request.wanted_peak_error = wanted;
    return request;
  }

 private:
  static constexpr int kCoarser = 5;  ///< directions of the traced map, in steps of the model's

  LensValues values_;
  LensPlan plan_;
  LightLens lens_;
  LampBody lamp_;
  GlassRules glass_;
  PanelSpots spots_;
  BeamPieces beam_;
  SettingDraws draws_;
  TrialBeams model_;
};

LensValues small_lens(Work work, int panels) {
  LensValues values = starting_values("6", work, panels);
  values.lamp.shape = LampShape::sphere;
  values.lamp.width_mm = 10;
  values.lamp.known = LampKnown::luminance;
  values.lamp.luminance_cd_mm2 = 1;
  return values;
}

/// Standard deviations that take a good part of the peak away.
constexpr KindSizes kRough{0.45, 0.35, 0, 0, 0.5};

/// Mean shares of the peak without errors: by turned maps, and traced anew.
void compare(const Retraced& lens, double most_apart) {
  const double planned = lens.trace([](int, SettingMove) { return 0.0; }, 0.004).peak_cd;
  const double planned_model = lens.model_peak_cd(0, {});
  EXPECT_NEAR(planned_model / planned, 1, 0.02);
  double traced = 0;
  double told = 0;
  for (int t = 0; t < lens.draws().trials(); ++t) {
    const double share =
        lens.trace(
                [&](int prism, SettingMove move) {
                  return kRough[static_cast<std::size_t>(kind_of(move))] * lens.draws().at(t, prism, move);
                },
                0.015)
            .peak_cd /
        planned;
    const double by_maps = lens.model_peak_cd(t, kRough) / planned_model;
    traced += share / lens.draws().trials();
    told += by_maps / lens.draws().trials();
  }
  EXPECT_LT(traced, 0.95);
  EXPECT_NEAR(told, traced, most_apart);
}

TEST(ErrorsToldByTurnedMaps, AgreeWithABullsEyeTracedAnew) {
  compare(Retraced(small_lens(Work::bullseye, 4)), 0.01);
}

TEST(ErrorsToldByTurnedMaps, AgreeWithABeltTracedAnew) { compare(Retraced(small_lens(Work::belt, 6)), 0.015); }

}  // namespace
}  // namespace prismwright
