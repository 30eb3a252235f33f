#include "geometry/pictures/two_threads.h"

#include <atomic>
#include <thread>

namespace prismwright {

bool in_two_threads(std::size_t count, const WorkShare& share, const std::function<void(std::size_t)>& piece) {
  // Asked before the first piece: the helper may well have done all when this thread comes to its turn.
  if (!goes_on(share.progress, share.from, share.what)) return false;
  std::atomic<std::size_t> next = 0;
  std::atomic<bool> over = false;
  std::thread helper([&] {
    for (std::size_t i = next++; i < count && !over; i = next++) piece(i);
  });
  for (std::size_t i = next++; i < count && !over; i = next++) {
    const double done = static_cast<double>(i) / static_cast<double>(count);
    if (!goes_on(share.progress, share.from + done * (share.to - share.from), share.what)) over = true;
    if (!over) piece(i);
  }
  helper.join();
  return !over;
}

}  // namespace prismwright
