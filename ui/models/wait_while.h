#pragma once

#include <functional>

namespace prismwright {

/// Runs the event loop while `busy` says so, at most `timeout_ms`: for tests and pictures of the window.
void wait_while(const std::function<bool()>& busy, int timeout_ms);

}  // namespace prismwright
