#include "app/batch/exit_code.h"

#include <cctype>
#include <string>

namespace prismwright {

namespace {

/// A sentence begins with a capital and ends with a stop, but a key or a file it begins with stays as it is.
std::string as_sentence(std::string text) {
  const std::string first = text.substr(0, text.find(' '));
  if (!first.empty() && first.find_first_of("._/-=") == std::string::npos) {
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  }
  return text.ends_with('.') ? text : text + '.';
}

}  // namespace

ExitCode refuse(const Problem& problem, std::ostream& err) {
  err << as_sentence(problem.text) << '\n';
  return problem.trouble == Trouble::file ? ExitCode::file_trouble : ExitCode::bad_request;
}

}  // namespace prismwright
