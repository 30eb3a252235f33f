#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/batch/verb.h"
#include "geometry/despatch/pack.h"

namespace prismwright {

/// How papers are wanted, the same for every verb that draws them: --date, --revision, --sheet, --inches and
/// what the estimate says.
class PaperAsk {
 public:
  void add_options(CLI::App& command);
  /// Today where no date was given; of the estimate what a new book begins with where nothing was given, or an
  /// empty word.
  [[nodiscard]] PaperChoice choice() const;
  /// The same, but what was not given of the estimate is as in the last pack, if there is one.
  [[nodiscard]] PaperChoice choice_after(const LastPack* last) const;
  /// What choice_after takes from the last pack, a sentence for each that differs from the beginning.
  [[nodiscard]] std::vector<std::string> remembered(const LastPack* last) const;

 private:
  struct Given {
    std::optional<std::string> margin_percent;
    std::optional<std::string> valid_days;
    std::optional<std::string> spare_sets;
    std::optional<std::string> note;
  };
  PaperChoice choice_;  ///< of the estimate nothing
  Given given_;         ///< of the estimate, as it was typed
  std::string sheet_;
};

/// Opens the book and sets it up to go out with the papers as they are asked for, then does the work there.
/// Refused before any work: a date that is none, a book that cannot be read or made.
ExitCode at_despatch_desk(const std::string& book_path, const PaperAsk& papers, Voice& voice,
                          const std::function<ExitCode(DespatchDesk& desk)>& work);

}  // namespace prismwright
