#pragma once

#include <QWidget>
#include <optional>

#include "ui/models/workbench.h"
#include "ui/views/lens_scene.h"

class QCheckBox;
class QLabel;
class QSlider;

namespace prismwright {

class LensControls;
class LensView;

/// What is known of the door at an angle, in words.
using DoorReading = std::function<QString(double angle_deg)>;

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
  /// What the door's slider reads off; empty while nothing is known.
  void setDoorReading(DoorReading reading);
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

  Workbench* bench_;
  LensView* view_ = nullptr;
  LensControls* controls_ = nullptr;
  QCheckBox* ghosted_ = nullptr;
  QLabel* chosen_ = nullptr;
  QSlider* slider_ = nullptr;
  QLabel* reading_ = nullptr;
  std::shared_ptr<const MadeLens> door_of_;
  std::optional<DoorTurn> door_;  ///< shut
  DoorReading door_reading_;
  QStringList parts_;
  std::optional<Clearance> gap_;
  bool look_when_shown_ = false;
};

}  // namespace prismwright
