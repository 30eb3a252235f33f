#pragma once

#include <QObject>
#include <optional>

#include "core/optics/laser_bench.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// The laser in a focal point: where it points, what its ray meets in the present section, and the board it
/// ends on. It stands in the focal point of the band that takes its elevation, or of the band it has been
/// stepped to. It belongs to the window, not to the lensbook.
class Laser : public QObject {
  Q_OBJECT

 public:
  explicit Laser(Workbench* bench, QObject* parent = nullptr);

  [[nodiscard]] double elevation_deg() const { return elevation_deg_; }
  /// The ray followed through the present section; blank while there is none.
  [[nodiscard]] const std::optional<RayPath>& path() const { return path_; }
  /// Mark of the zone that takes the ray; empty when none does.
  [[nodiscard]] QString zone() const;
  [[nodiscard]] double board_mm() const { return board_mm_; }
  [[nodiscard]] std::optional<BoardSpot> spot() const;

  /// Height of the focal point it stands in over the principal one, mm.
  [[nodiscard]] double source_z_mm() const;
  /// The band whose focal point it stands in, where that is not the principal one.
  [[nodiscard]] std::optional<Band> ownFocus() const;

  void point(double elevation_deg);  ///< held within -90 to 90
  void turn(double degrees) { point(elevation_deg_ + degrees); }
  /// To the middle of the next zone up (1) or down (-1), band by band, from each band's focal point.
  void stepZone(int up);
  /// To the middle of that zone.
  void pointAtZone(const QString& zone);
  void setBoard(double board_mm);

 signals:
  void moved();  ///< elevation, path or board are new

 private:
  void restart();
  void retrace();
  void stopAt(const LaserStop& stop);
  [[nodiscard]] std::optional<Band> bandOfRay() const;

  Workbench* bench_;
  double elevation_deg_ = 0;
  std::optional<Band> band_;  ///< stepped to; blank: the band that takes the elevation
  double board_mm_ = 1000;
  std::optional<RayPath> path_;
};

}  // namespace prismwright
