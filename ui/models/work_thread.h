#pragma once

#include <atomic>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

namespace prismwright {

/// One worker thread that holds one piece of work at a time: newer work stops the older. The work is called in
/// the worker thread and must not throw.
class WorkThread {
 public:
  /// Whether the work is still wanted; to be asked often.
  using Wanted = std::function<bool()>;
  using Work = std::function<void(int job, const Wanted& wanted)>;

  WorkThread();
  /// Stops the work in hand and waits for it.
  ~WorkThread();
  WorkThread(const WorkThread&) = delete;
  WorkThread& operator=(const WorkThread&) = delete;

  /// Stops what is in hand and takes this up; answers the number of the new job, over 0.
  int start(Work work);
  /// Says to the work in hand that it is wanted no longer.
  void stop();

 private:
  struct Job {
    int number = 0;
    Work work;
  };
  void run();

  std::mutex mutex_;
  std::condition_variable wake_;
  std::optional<Job> next_;
  int last_number_ = 0;
  std::atomic<int> wanted_job_ = 0;
  bool closing_ = false;
  std::thread thread_;
};

}  // namespace prismwright
