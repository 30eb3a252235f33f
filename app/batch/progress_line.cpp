#include "app/batch/progress_line.h"

#include <fmt/format.h>

#include <utility>

namespace prismwright {

namespace {
constexpr const char* kWipeLine = "\r\033[K";
}

ProgressLine::ProgressLine(Voice& voice) : voice_(voice) {}

ProgressLine::~ProgressLine() {
  if (shown_percent_ >= 0) voice_.err << kWipeLine << std::flush;
}

Progress ProgressLine::of(std::string what) {
  if (!voice_.watched) return {};
  return [this, what = std::move(what)](double share, std::string_view piece) {
    const int percent = static_cast<int>(100 * share);
    if (percent != shown_percent_) {
      shown_percent_ = percent;
      voice_.err << kWipeLine << fmt::format("{} {} % {}", what, percent, piece) << std::flush;
    }
    return true;
  };
}

}  // namespace prismwright
