#pragma once

#include <QWidget>
#include <optional>

#include "geometry/door_sweep.h"
#include "ui/models/workbench.h"
#include "ui/views/lens_scene.h"

class QCheckBox;
class QLabel;
class QSlider;

namespace prismwright {

class LensControls;
class LensView;

/// The frame in three dimensions: brass solid, prisms ghosted where asked for, the part or clearance chosen on
/// the page standing out, and the door turned about its hinge by a slider.
///
/// The 3D view is made when it is first seen. Object names: frame.scene (itself), frame.scene.NAME of its
/// controls (LensControls), frame.ghosted, frame.chosen, frame.door, frame.door.reading.
class FrameScene : public QWidget {
  Q_OBJECT

 public:
  explicit FrameScene(Workbench* bench, QWidget* parent);

  void showParts(const QStringList& marks);
  void showGap(const std::optional<Clearance>& gap);
  /// What is known of the door on its way; null while that is not known, for the reason given.
  void setSweep(std::shared_ptr<const DoorSweep> sweep, const QString& reason);
  [[nodiscard]] double doorAngle_deg() const;
  [[nodiscard]] LensView* view() const { return view_; }
  /// Frames what is chosen.
  void look();

 signals:
  void partPicked(const QString& mark);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeDoorRow();
  void makeView();
  void takeMade();
  void takeLooks();
  void takeDoor();
  void turnDoor();
  void pick(const QString& mark, bool add);
  void followChosen();
  void followGap();

  Workbench* bench_;
  LensView* view_ = nullptr;
  LensControls* controls_ = nullptr;
  QCheckBox* ghosted_ = nullptr;
  QLabel* chosen_ = nullptr;
  QSlider* slider_ = nullptr;
  QLabel* reading_ = nullptr;
  std::shared_ptr<const MadeLens> door_of_;
  std::optional<DoorTurn> door_;  ///< shut
  std::shared_ptr<const DoorSweep> sweep_;
  QString no_sweep_;
  QStringList parts_;
  std::optional<Clearance> gap_;
  bool look_when_shown_ = false;
};

}  // namespace prismwright
