#pragma once

#include <utility>
#include <vector>

#include "core/light/beam_grid.h"
#include "core/light/beam_patch.h"
#include "core/light/turned_mean.h"

namespace prismwright {

/// A grid's sum with the bound's and the glass path's.
struct BeamSum {
  std::vector<double> cd;
  std::vector<double> bound;
  std::vector<double> glass;
  long spots = 0;
  long exact = 0;

  explicit BeamSum(std::size_t size) : cd(size), bound(size), glass(size) {}
  void add(const BeamSum& other) {
    for (std::size_t i = 0; i < cd.size(); ++i) {
      cd[i] += other.cd[i];
      bound[i] += other.bound[i];
      glass[i] += other.glass[i];
    }
    spots += other.spots;
    exact += other.exact;
  }
};

/// A panel that takes the light of a patch: its turn from the patch's own panel, radians, and its screen's
/// share.
struct PaintPlace {
  double turn = 0;
  double factor = 1;
};

/// Adds patches to a grid's sum.
class BeamPainter {
 public:
  explicit BeamPainter(const BeamGrid& grid) : grid_(grid) {}

  /// `luminance`: of the lamp, cd/mm2, for the bound.
  void paint(const BeamPatch& patch, const PaintPlace& place, double luminance, BeamSum& sum) const;
  /// Paints a spot that may stand elsewhere as the mean over the whole range in which it may.
  void paint_turned(const BeamPatch& patch, const std::vector<PaintPlace>& places, double luminance,
                    BeamSum& sum) const;

 private:
  /// Steps of the grid, whole ones inside it.
  struct Steps {
    int from, to;
  };
  [[nodiscard]] double width_deg() const { return (grid_.azimuths - 1) * grid_.azimuth_step_deg; }
  [[nodiscard]] Steps columns(double start, double end) const;
  [[nodiscard]] Steps rows(const BeamPatch& patch) const;
  void column(const BeamPatch& patch, const PaintPlace& place, int i, double luminance, BeamSum& sum) const;
  void row(const BeamPatch& patch, const TurnedMean& mean, const PaintPlace& place, int k, double turn_deg,
           double luminance, BeamSum& sum) const;

  BeamGrid grid_;
};

}  // namespace prismwright
