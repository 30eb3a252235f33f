#include "geometry/gap_finder.h"

#include <atomic>
#include <future>
#include <mutex>
#include <new>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

namespace prismwright {
namespace {

// Jobs that two threads take from one list.
class TwoHands {
 public:
  TwoHands(std::vector<GapJob>& jobs, const Progress& progress) : jobs_(jobs), progress_(progress) {}

  std::optional<Problem> run() {
    auto helper = std::async(std::launch::async, [this] { work(); });
    work();
    helper.get();
    return trouble_;
  }

 private:
  void work() {
    for (std::size_t i = next_++; i < jobs_.size() && !over_; i = next_++) {
      if (!report(jobs_[i])) return;
      try {
        jobs_[i].found = jobs_[i].measure();
        jobs_[i].done = true;
      } catch (const Standard_Failure& failure) {
        give_up(jobs_[i], failure.GetMessageString());
      } catch (const std::bad_alloc&) {
        give_up(jobs_[i], "memory ran out");
      }
    }
  }

  bool report(const GapJob& job) {
    const std::lock_guard<std::mutex> lock(guard_);
    if (!over_ &&
        !goes_on(progress_, static_cast<double>(begun_) / static_cast<double>(jobs_.size()), job.mark)) {
      over_ = true;
      trouble_ = Problem{Trouble::stopped, "stopped", job.mark,
                         "The clearances were stopped before all were measured. Start them again to go on."};
    }
    ++begun_;
    return !over_;
  }

  void give_up(const GapJob& job, const char* why) {
    const std::lock_guard<std::mutex> lock(guard_);
    over_ = true;
    trouble_ =
        request_problem("clearance", job.mark,
                        fmt::format("The room round {} could not be measured ({}). Change the setting gap "
                                    "or the division of the zones a little.",
                                    job.mark, why));
  }

  std::vector<GapJob>& jobs_;
  const Progress& progress_;
  std::atomic<std::size_t> next_{0};
  std::atomic<bool> over_{false};
  std::mutex guard_;
  std::size_t begun_ = 0;
  std::optional<Problem> trouble_;
};

}  // namespace

std::optional<Problem> do_all(std::vector<GapJob>& jobs, const Progress& progress) {
  return TwoHands(jobs, progress).run();
}

}  // namespace prismwright
