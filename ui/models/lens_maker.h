#pragma once

#include <atomic>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string_view>
#include <thread>

#include "core/base/outcome.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// One worker thread that turns plans into solids, frame and clearances. It holds one piece of work at a time:
/// newer work stops the older. The listener's functions are called in the worker thread.
class LensMaker {
 public:
  struct Listener {
    std::function<void(int job, double share, std::string_view what)> progress;
    /// Called twice for one job: with the solids, then with the clearances known too.
    std::function<void(int job, std::shared_ptr<const MadeLens> made)> made;
    std::function<void(int job, Done outcome)> finished;
  };

  explicit LensMaker(Listener listener);
  /// Stops the work in hand and waits for it.
  ~LensMaker();
  LensMaker(const LensMaker&) = delete;
  LensMaker& operator=(const LensMaker&) = delete;

  /// Stops what is in hand and takes this plan up; answers the number of the new job.
  int start(std::shared_ptr<const LensPlan> plan);
  /// Asks the work in hand to stop; finished() follows with Trouble::stopped unless it had just ended.
  void stop();

 private:
  struct Job {
    int number = 0;
    std::shared_ptr<const LensPlan> plan;
  };
  void run();
  Done make(const Job& job);
  [[nodiscard]] bool wanted(int job) const { return job == wanted_job_.load(); }

  Listener listener_;
  BodyShop shop_;
  ClearanceShop clearance_shop_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::optional<Job> next_;
  int last_number_ = 0;
  std::atomic<int> wanted_job_ = 0;
  bool closing_ = false;
  std::thread thread_;
};

}  // namespace prismwright
