#pragma once

#include "app/batch/verb.h"
#include "core/base/progress.h"

namespace prismwright {

/// A line on a watched `err` that says how far long work has come; it is wiped when the object goes.
class ProgressLine {
 public:
  explicit ProgressLine(Voice& voice);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  /// What to hand to the work called `what`; empty when nobody watches. Must not outlive this object.
  [[nodiscard]] Progress of(std::string what);

 private:
  Voice& voice_;
  int shown_percent_ = -1;
};

}  // namespace prismwright
