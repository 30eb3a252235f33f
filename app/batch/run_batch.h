#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace prismwright {

/// Does what the words ask (without the program's name) and answers the exit code of ExitCode.
///
/// Answers go to `out`, refusals and progress to `err`; progress only when `err_is_terminal`. Throws nothing.
/// An answer that `out` could not take in whole (a full disk) counts as file trouble.
int run_batch(const std::vector<std::string>& words, std::ostream& out, std::ostream& err,
              bool err_is_terminal = false);

}  // namespace prismwright
