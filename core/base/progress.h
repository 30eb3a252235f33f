#pragma once

#include <functional>
#include <string_view>

namespace prismwright {

/// Told how far long work has come; answers false to stop it.
///
/// `share` runs from 0 to 1, `what` names the piece in hand (a prism mark, a file). It may be called
/// from a worker thread. An empty function means that nobody is listening.
using Progress = std::function<bool(double share, std::string_view what)>;

/// Reports and asks at once whether to go on.
inline bool goes_on(const Progress& progress, double share, std::string_view what) {
  return !progress || progress(share, what);
}

}  // namespace prismwright
