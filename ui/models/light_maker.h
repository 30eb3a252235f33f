#pragma once

#include <QObject>
#include <QTimer>
#include <memory>
#include <optional>

#include "core/light/light_report.h"
#include "ui/models/light_thread.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// The light of the present lens, worked out in a worker thread while somebody looks at it. A change while
/// nobody looks makes the light stale; it is worked out when it is next looked at, and a change while somebody
/// looks once the values have stood still for a moment. All signals come in the window's thread.
class LightMaker : public QObject {
  Q_OBJECT

 public:
  explicit LightMaker(Workbench* bench, QObject* parent = nullptr);
  ~LightMaker() override;

  /// The newest finished light; null until the first is ready.
  [[nodiscard]] std::shared_ptr<const LightReport> report() const { return report_; }
  /// The plan that the light belongs to; null as long as there is none.
  [[nodiscard]] std::shared_ptr<const LensPlan> plan() const { return report_plan_; }
  /// Why there is no light of the present values; blank while it is being worked out or is there.
  [[nodiscard]] const QString& reason() const { return reason_; }
  [[nodiscard]] bool isStale() const { return stale_; }
  [[nodiscard]] bool isWorking() const { return working_ || rest_.isActive(); }
  [[nodiscard]] const LightAsk& ask() const { return ask_; }

  /// Whether somebody looks.
  void setWatched(bool watched);
  /// Another panel or elevation is asked for.
  void setAsk(const LightAsk& ask);
  /// Works it out now, whatever is in hand.
  void start();
  /// Stops the work in hand; the last light stays, and is stale.
  void stop();
  /// For tests and pictures: runs the event loop until the light is there, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();  ///< report(), reason(), isStale() or isWorking() is another
  void sharpened(std::shared_ptr<const prismwright::BeamMap> beam);
  void progress(double share, const QString& what);

 private:
  LightThread::Listener listener();
  void forget();
  void followValues();
  void finish(int job, const Outcome<LightReport>& report);
  [[nodiscard]] QString reasonAgainst() const;

  Workbench* bench_;
  std::unique_ptr<LightThread> thread_;
  QTimer rest_;
  LightAsk ask_;
  bool watched_ = false;
  bool stale_ = true;
  bool working_ = false;
  bool halted_ = false;  ///< stopped by hand: waits for a new change or an order
  int job_ = 0;
  LensValues values_;  ///< that the light in hand or the last one belongs to
  std::shared_ptr<const LensPlan> working_plan_;
  std::shared_ptr<const LensPlan> report_plan_;
  std::shared_ptr<const LightReport> report_;
  QString reason_;
};

}  // namespace prismwright
