#pragma once

#include <CLI/App.hpp>
#include <ostream>
#include <string_view>

#include "app/batch/exit_code.h"

namespace prismwright {

/// Where a verb speaks: its answer on `out`, refusals and progress on `err`.
struct Voice {
  std::ostream& out;
  std::ostream& err;
  bool watched = false;  ///< `err` is a terminal: progress of long work is shown there
};

/// One thing that prismwright-batch can do. A verb is asked for its options first and run once afterwards.
class Verb {
 public:
  virtual ~Verb() = default;

  [[nodiscard]] virtual std::string_view name() const = 0;
  [[nodiscard]] virtual std::string_view help() const = 0;  ///< one line
  /// Puts the verb's own arguments on its subcommand; they are filled in before run is called.
  virtual void configure(CLI::App& command) = 0;
  virtual ExitCode run(Voice& voice) = 0;
};

}  // namespace prismwright
