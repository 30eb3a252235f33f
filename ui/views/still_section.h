#pragma once

#include <QPixmap>
#include <QSet>
#include <memory>

#include "core/optics/laser_bench.h"
#include "ui/models/section_comparer.h"
#include "ui/models/workbench.h"
#include "ui/views/section_glass.h"

namespace prismwright {

/// The part of the section drawing that stands still while the laser is dragged: grid, fan of rays, glass,
/// marks, the strip of the level beam and the scales. Drawn once for each section, view and selection.
class StillSection {
 public:
  /// What the picture depends on beside the section itself.
  struct Look {
    SectionMap map;
    QSize size;
    double ratio = 1;  ///< device pixels per pixel
    QSet<QString> selected;
    bool inches = false;
    bool moving = false;  ///< being dragged: fine lines are drawn quickly
    bool faded = false;   ///< the section shown is not that of the present values

    friend bool operator==(const Look&, const Look&) = default;
  };

  /// Takes the bench's last good section; cheap when it is the one held.
  void follow(const Workbench& bench);
  /// Other sections, drawn over the glass in outline: the first in dashes, the second in dots.
  void setOverlays(const std::vector<SectionOverlay>& overlays);

  [[nodiscard]] const std::vector<DrawnPrism>& prisms() const { return prisms_; }
  /// The level beam by height, lit and dark.
  [[nodiscard]] const std::vector<LightStrip>& beam() const;
  [[nodiscard]] const std::vector<RayPath>& rays() const { return fan_.rays; }
  /// The picture for that look, drawn anew only when something differs from the last one.
  const QPixmap& pixmap(const Look& look);

 private:
  void draw(const Look& look);

  std::shared_ptr<const LensPlan> plan_;
  std::shared_ptr<const Proof> proof_;
  std::vector<DrawnPrism> prisms_;
  std::vector<std::vector<DrawnPrism>> overlays_;
  RayFan fan_;
  Look look_;
  QPixmap pixmap_;
  bool fresh_ = false;
};

}  // namespace prismwright
