#pragma once

#include <QObject>
#include <memory>

#include "core/frame/nest.h"
#include "core/frame/setting_check.h"
#include "geometry/door_sweep.h"
#include "geometry/fit_up.h"
#include "ui/models/work_thread.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// What is worked out of one made frame beside its solids and clearances. A result is null while it is not
/// known; its reason says why where it cannot be.
struct FrameResults {
  std::shared_ptr<const MadeLens> made;
  std::shared_ptr<const std::vector<SettingCheck>> setting;
  QString no_setting;
  std::shared_ptr<const DoorSweep> door;  ///< null too where no panel is a door
  QString no_door;
  std::shared_ptr<const std::vector<PanelFit>> fit;
  QString no_fit;
  std::shared_ptr<const Nest> nest;
  QString no_nest;
};

/// Door sweep, fit-up and nest of the newest solids, worked out in a worker thread while somebody looks. They
/// come one by one, the quick ones first. New solids while nobody looks make them stale; they are worked out
/// anew when somebody looks next. All signals come in the window's thread.
class FrameMaker : public QObject {
  Q_OBJECT

 public:
  explicit FrameMaker(Workbench* bench, QObject* parent = nullptr);
  ~FrameMaker() override;

  /// The newest results; of earlier solids as long as isStale().
  [[nodiscard]] const FrameResults& results() const { return results_; }
  [[nodiscard]] bool isStale() const;
  [[nodiscard]] bool isWorking() const { return job_ != 0; }
  /// The last work was stopped by hand.
  [[nodiscard]] bool isHalted() const { return halted_; }

  /// Whether somebody looks.
  void setWatched(bool watched);
  /// Works it out now, of the newest solids.
  void start();
  /// Stops the work in hand; what is known stays.
  void stop();
  /// For tests and pictures: runs the event loop until solids and results are there, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();  ///< any of the above is another
  void progress(double share, const QString& what);

 private:
  void follow();
  void work(int job, const std::shared_ptr<const MadeLens>& made, const WorkThread::Wanted& wanted);
  void take(int job, const FrameResults& results, bool last);

  Workbench* bench_;
  FrameResults results_;
  bool watched_ = false;
  bool halted_ = false;
  bool complete_ = false;  ///< of results_
  int job_ = 0;
  std::unique_ptr<WorkThread> thread_;
};

}  // namespace prismwright
