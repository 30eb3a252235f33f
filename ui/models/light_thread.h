#pragma once

#include <functional>
#include <memory>
#include <string_view>

#include "core/light/light_report.h"
#include "ui/models/work_thread.h"

namespace prismwright {

/// Works out the light of plans in a worker thread: newer work stops the older. The listener's functions are
/// called in that thread.
class LightThread {
 public:
  struct Listener {
    std::function<void(int job, double share, std::string_view what)> progress;
    std::function<void(int job, const BeamMap& beam)> sharpened;
    std::function<void(int job, Outcome<LightReport> report)> finished;
  };

  /// Destroying it stops the work in hand and waits for it.
  explicit LightThread(Listener listener) : listener_(std::move(listener)) {}

  /// Stops what is in hand and takes this plan up; answers the number of the new job.
  int start(std::shared_ptr<const LensPlan> plan, const LightAsk& ask);
  /// Asks the work in hand to stop; finished() follows with Trouble::stopped unless it had just ended.
  void stop() { thread_.stop(); }

 private:
  Outcome<LightReport> work(int job, const LensPlan& plan, const LightAsk& ask,
                            const WorkThread::Wanted& wanted);

  Listener listener_;
  WorkThread thread_;  ///< last: it must end before the listener goes
};

}  // namespace prismwright
