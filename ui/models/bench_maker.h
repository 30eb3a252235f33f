#pragma once

#include <QFutureWatcher>
#include <QObject>
#include <QTimer>
#include <memory>
#include <vector>

#include "core/light/bench_check.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// The laser bench of the present lens: how the laser is aimed, and what the book's readings say of every
/// prism. The plan of a large lens takes more than a second, so that it is made in a worker thread, and only
/// while somebody looks. All signals come in the window's thread.
class BenchMaker : public QObject {
  Q_OBJECT

 public:
  explicit BenchMaker(Workbench* bench, QObject* parent = nullptr);

  /// The newest plan; null until the first is ready, and where there is a reason against one.
  [[nodiscard]] std::shared_ptr<const BenchPlan> plan() const { return plan_; }
  /// Why there is no plan, as a sentence; blank while it is being made or is there.
  [[nodiscard]] const QString& reason() const { return reason_; }
  [[nodiscard]] bool isWorking() const { return watcher_.isRunning() || rest_.isActive(); }
  /// The plan is of earlier values.
  [[nodiscard]] bool isStale() const { return plan_of_ != bench_->plan(); }

  /// Every prism of plan() with its first and last reading; points into plan().
  [[nodiscard]] const std::vector<BenchedPrism>& prisms() const { return prisms_; }
  [[nodiscard]] const BenchedPrism* find(const QString& mark) const;
  [[nodiscard]] const BenchSummary& summary() const { return summary_; }

  /// A beam within this of its way is left alone.
  [[nodiscard]] double within_deg() const { return within_deg_; }
  void setWithin(double within_deg);

  /// Whether somebody looks.
  void setWatched(bool watched);
  /// For tests and pictures: runs the event loop until the plan is there, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();  ///< any of the above is another

 private:
  using Planned = std::shared_ptr<const Outcome<BenchPlan>>;

  void forget();
  void followPlan();
  void start();
  void take();
  void judge();
  [[nodiscard]] QString reasonAgainst() const;

  Workbench* bench_;
  QFutureWatcher<Planned> watcher_;
  QTimer rest_;
  bool watched_ = false;
  bool again_ = false;  ///< the lens changed while its plan was in hand
  double within_deg_ = kBenchWithin_deg;
  std::shared_ptr<const LensPlan> working_on_;
  std::shared_ptr<const LensPlan> plan_of_;
  std::shared_ptr<const BenchPlan> plan_;
  std::vector<BenchedPrism> prisms_;
  BenchSummary summary_;
  QString reason_;
};

}  // namespace prismwright
