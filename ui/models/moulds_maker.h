#pragma once

#include <QObject>
#include <QTimer>
#include <memory>
#include <vector>

#include "geometry/works_moulds.h"
#include "ui/models/work_thread.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// The moulds of the present lens, worked out in a worker thread: first while somebody looks, and after that
/// whenever the lens has changed and stood still for a moment, for loads and costs reckon with them. Moulds
/// that an edit leaves alone are kept. All signals come in the window's thread.
class MouldsMaker : public QObject {
  Q_OBJECT

 public:
  explicit MouldsMaker(Workbench* bench, QObject* parent = nullptr);
  ~MouldsMaker() override;

  using Moulds = std::vector<WorkedMould>;
  /// The newest finished moulds, one for each master; null until the first are ready.
  [[nodiscard]] std::shared_ptr<const Moulds> moulds() const { return moulds_; }
  /// moulds() are of earlier values, or there are none yet.
  [[nodiscard]] bool isStale() const { return !moulds_ || plan_of_ != bench_->plan(); }
  [[nodiscard]] bool isWorking() const { return job_ != 0 || rest_.isActive(); }
  /// Why there are none for the present values; blank while they are being worked out or are there.
  [[nodiscard]] const QString& reason() const { return reason_; }

  /// Whether somebody looks.
  void setWatched(bool watched);
  void start();
  /// Stops the work in hand; the last moulds stay, and are stale.
  void stop();
  /// For tests and pictures: runs the event loop until the moulds are there, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();                                    ///< any of the above is another
  void progress(double share, const QString& what);  ///< blank: none of the masters is in hand

 private:
  void work(int job, const LensPlan& plan, const WorkThread::Wanted& wanted);
  void finish(int job, const Outcome<std::vector<WorkedMould>>& moulds);
  void forget();
  void followPlan();
  void drop();

  Workbench* bench_;
  MouldDesk desk_;  ///< of the worker thread
  std::unique_ptr<WorkThread> thread_;
  QTimer rest_;
  bool watched_ = false;
  bool halted_ = false;  ///< stopped by hand: waits for a new change or an order
  int job_ = 0;          ///< in hand; 0: none
  std::shared_ptr<const LensPlan> working_on_;
  std::shared_ptr<const LensPlan> plan_of_;
  std::shared_ptr<const Moulds> moulds_;
  QString reason_;
};

}  // namespace prismwright
