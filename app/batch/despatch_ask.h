#pragma once

#include <string>

#include "app/batch/verb.h"
#include "core/book/lensbook.h"
#include "geometry/despatch/despatch_desk.h"

namespace prismwright {

/// How papers are wanted, the same for every verb that draws them: --date, --revision, --sheet, --inches and
/// what the estimate says.
class PaperAsk {
 public:
  void add_options(CLI::App& command);
  /// Today where no date was given.
  [[nodiscard]] PaperChoice choice() const;

 private:
  PaperChoice choice_;
  std::string sheet_;
};

/// The book as it goes out. Photographs are read from it, so it must outlive the source.
Outcome<DespatchSource> despatch_source(const Lensbook& book);

}  // namespace prismwright
