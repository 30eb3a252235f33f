#pragma once

#include <atomic>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string_view>
#include <thread>

#include "core/light/light_report.h"

namespace prismwright {

/// One worker thread that works out the light of plans. It holds one piece of work at a time: newer work stops
/// the older. The listener's functions are called in the worker thread.
class LightThread {
 public:
  struct Listener {
    std::function<void(int job, double share, std::string_view what)> progress;
    std::function<void(int job, const BeamMap& beam)> sharpened;
    std::function<void(int job, Outcome<LightReport> report)> finished;
  };

  explicit LightThread(Listener listener);
  /// Stops the work in hand and waits for it.
  ~LightThread();
  LightThread(const LightThread&) = delete;
  LightThread& operator=(const LightThread&) = delete;

  /// Stops what is in hand and takes this plan up; answers the number of the new job.
  int start(std::shared_ptr<const LensPlan> plan, const LightAsk& ask);
  /// Asks the work in hand to stop; finished() follows with Trouble::stopped unless it had just ended.
  void stop();

 private:
  struct Job {
    int number = 0;
    std::shared_ptr<const LensPlan> plan;
    LightAsk ask;
  };
  void run();
  Outcome<LightReport> work(const Job& job);
  [[nodiscard]] bool wanted(int job) const { return job == wanted_job_.load(); }

  Listener listener_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::optional<Job> next_;
  int last_number_ = 0;
  std::atomic<int> wanted_job_ = 0;
  bool closing_ = false;
  std::thread thread_;
};

}  // namespace prismwright
