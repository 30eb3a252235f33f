#include "geometry/pictures/two_threads.h"

#include <atomic>
#include <exception>
#include <thread>

namespace prismwright {

namespace {

/// Keeps the first exception of either thread until both have ended.
class Guard {
 public:
  void run(const std::function<void()>& work, std::atomic<bool>& over) {
    try {
      work();
    } catch (...) {
      over = true;
      if (!taken_.exchange(true)) first_ = std::current_exception();
    }
  }
  void rethrow() const {
    if (first_) std::rethrow_exception(first_);
  }

 private:
  std::atomic<bool> taken_ = false;
  std::exception_ptr first_;
};

}  // namespace

bool in_two_threads(std::size_t count, const WorkShare& share, const std::function<void(std::size_t)>& piece) {
  // Asked before the first piece: the helper may well have done all when this thread comes to its turn.
  if (!goes_on(share.progress, share.from, share.what)) return false;
  std::atomic<std::size_t> next = 0;
  std::atomic<bool> over = false;
  Guard guard;
  const auto help = [&] {
    for (std::size_t i = next++; i < count && !over; i = next++) piece(i);
  };
  std::thread helper([&] { guard.run(help, over); });
  const auto lead = [&] {
    for (std::size_t i = next++; i < count && !over; i = next++) {
      const double done = static_cast<double>(i) / static_cast<double>(count);
      if (!goes_on(share.progress, share.from + done * (share.to - share.from), share.what)) over = true;
      if (!over) piece(i);
    }
  };
  guard.run(lead, over);
  helper.join();
  guard.rethrow();
  return !over;
}

}  // namespace prismwright
