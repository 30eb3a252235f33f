#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/works/stage.h"

namespace prismwright {

/// One line of the works ledger. Lines are only ever added; a correction is a new line.
struct LedgerEntry {
  long long number = 0;  ///< given by the book, rising
  std::string when_utc;  ///< ISO 8601, given by the book
  std::string mark;
  Stage from = Stage::drawn;
  Stage to = Stage::drawn;
  std::string by;    ///< who did it; may be empty
  std::string note;  ///< needed where a step is skipped or gone back
};

/// A step that someone wants to record for one or many prisms.
struct StepRequest {
  std::vector<std::string> marks;
  Stage to = Stage::mastered;
  std::string by;
  std::string note;
  std::optional<Stage> back_to;  ///< scrapped only: the stage the prism starts again from (default: moulded)
};

/// Where each prism stands. A prism without a line is drawn.
using StageByMark = std::map<std::string, Stage>;
/// A scrapped prism stands at `scrapped` until its next line.
StageByMark stages_from(std::span<const LedgerEntry> ledger);

/// The ledger lines that the request makes, or why not: an unknown mark, a stage already reached, a skipped or
/// backward step without a note, scrap without a note. All or none.
Outcome<std::vector<LedgerEntry>> plan_steps(const StepRequest& request, const StageByMark& now,
                                             std::span<const std::string> known_marks);

/// Counts by stage, and by zone and stage (zone = mark without its panel and without a/b).
struct StageCounts {
  std::array<int, 9> all{};
  std::map<std::string, std::array<int, 9>> by_zone;
  int total = 0;
};
StageCounts count_stages(const StageByMark& now, std::span<const std::string> known_marks);

}  // namespace prismwright
