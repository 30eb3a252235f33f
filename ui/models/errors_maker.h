#pragma once

#include <QObject>
#include <QTimer>
#include <memory>

#include "core/light/setting_errors.h"
#include "ui/models/work_thread.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// What errors in setting do to the present lens, worked out in a worker thread while somebody looks at it. A
/// change while nobody looks makes it stale; it is worked out when it is next looked at, and a change while
/// somebody looks once the values have stood still for a moment. All signals come in the window's thread.
class ErrorsMaker : public QObject {
  Q_OBJECT

 public:
  explicit ErrorsMaker(Workbench* bench, QObject* parent = nullptr);
  ~ErrorsMaker() override;

  /// The newest finished answer; null until the first is ready.
  [[nodiscard]] std::shared_ptr<const SettingErrors> errors() const { return errors_; }
  /// Why there is no answer for the present values; blank while it is being worked out or is there.
  [[nodiscard]] const QString& reason() const { return reason_; }
  [[nodiscard]] bool isStale() const { return stale_; }
  [[nodiscard]] bool isWorking() const { return working_ || rest_.isActive(); }
  [[nodiscard]] const ErrorsAsk& ask() const { return ask_; }

  /// Whether somebody looks.
  void setWatched(bool watched);
  /// Another panel is asked for, or so many spots.
  void setAsk(const ErrorsAsk& ask);
  /// Works it out now, whatever is in hand.
  void start();
  /// Stops the work in hand; the last answer stays, and is stale.
  void stop();
  /// For tests and pictures: runs the event loop until the answer is there, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();  ///< errors(), reason(), isStale() or isWorking() is another
  void progress(double share, const QString& what);

 private:
  void work(int job, const LensPlan& plan, const ErrorsAsk& ask, const WorkThread::Wanted& wanted);
  void drop();
  void forget();
  void followValues();
  void finish(int job, const Outcome<SettingErrors>& errors);
  [[nodiscard]] QString reasonAgainst() const;

  Workbench* bench_;
  std::unique_ptr<WorkThread> thread_;
  QTimer rest_;
  ErrorsAsk ask_;
  bool watched_ = false;
  bool stale_ = true;
  bool working_ = false;
  bool halted_ = false;  ///< stopped by hand: waits for a new change or an order
  int job_ = 0;
  bool values_known_ = false;
  LensValues values_;  ///< that the answer in hand or the last one belongs to
  std::shared_ptr<const SettingErrors> errors_;
  QString reason_;
};

}  // namespace prismwright
