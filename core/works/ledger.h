#pragma once

#include <array>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
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
  std::string by;                ///< who did it; may be empty
  std::string note;              ///< needed where a step is skipped or gone back
  std::optional<Stage> back_to;  ///< lines to scrapped only: the stage the prism starts again from
  /// The casting's own number, rising through the whole book: a line to cast that names none is given the next
  /// by the book, later lines repeat it; 0: none yet.
  long long serial = 0;
  /// Number of the vessel load that it was cast in (core/works/works_log.h); 0: none recorded.
  long long load = 0;
};

/// A step that someone wants to record for one or many prisms.
struct StepRequest {
  std::vector<std::string> marks;
  Stage to = Stage::mastered;
  std::string by;
  std::string note;
  /// Scrapped only: the stage the prism starts again from, earlier than the one it stands at. Blank: moulded
  /// when the prism was past that (the casting is lost, its mould is not), else the stage before the one it
  /// stands at.
  std::optional<Stage> back_to;
  long long load = 0;  ///< cast only: the vessel load
};

/// Where each prism stands. A prism without a line is drawn.
struct StageByMark : std::map<std::string, Stage> {
  using std::map<std::string, Stage>::map;

  [[nodiscard]] Stage stage_of(const std::string& mark) const;
  /// Scrapped prisms only: the stage each starts again from; one that is missing starts from moulded.
  std::map<std::string, Stage> back_to;
  /// The casting that stands for each mark, for marks that have one.
  std::map<std::string, long long> serial;
};

/// A scrapped prism stands at `scrapped` until its next line.
StageByMark stages_from(std::span<const LedgerEntry> ledger);

/// The ledger lines that the request makes, or why not. All or none; a mark named twice makes one line.
///
/// The next stage in order needs nothing. These need a note, or are refused: a stage that skips others, a stage
/// that lies behind, scrapping, and for a scrapped prism any stage but the one it starts again from. Refused
/// always: no mark, an unknown mark, the stage that the prism stands at already, and a `back_to` that the prism
/// has not passed or that belongs to no scrapping.
Outcome<std::vector<LedgerEntry>> plan_steps(const StepRequest& request, const StageByMark& now,
                                             std::span<const std::string> known_marks);

/// The zone of a prism: its mark without the panel and without a or b ("P03-R2a" gives "R2").
std::string zone_of_mark(std::string_view mark);

/// Counts by stage, and by zone and stage (zone_of_mark). Marks that the lens no longer has are left out.
struct StageCounts {
  std::array<int, kStages.size()> all{};
  std::map<std::string, std::array<int, kStages.size()>> by_zone;
  int total = 0;
};
StageCounts count_stages(const StageByMark& now, std::span<const std::string> known_marks);

}  // namespace prismwright
