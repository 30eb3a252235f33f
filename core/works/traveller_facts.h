#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/label_sheets.h"
#include "core/drawing/traveller.h"
#include "core/lens/plan.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

/// What the book says of the prisms that a label or a traveller is made for.
struct PaperFacts {
  const LensPlan& plan;
  std::span<const LedgerEntry> ledger;
  const WorksLog& log;
  std::string date;  ///< YYYY-MM-DD, of the print
};

/// The traveller of these prisms in this order: their pieces drawn once each, the stages that the castings that
/// stand have reached, and what was written down of them (loads, readings, decisions, photographs, scrapped
/// castings before them). Spare marks have the drawing of their piece. Refused: a mark that is neither a prism
/// of the lens nor a spare of one of its pieces.
Outcome<Traveller> traveller_of(const PaperFacts& facts, const std::vector<std::string>& marks);

/// A label for each: title, and day, load and lot of the casting that stands.
std::vector<PrismLabel> labels_of(const PaperFacts& facts, const std::vector<std::string>& marks);

/// The stages that the casting that stands for a mark has reached; a scrapped one stands where it starts again.
std::map<Stage, TravellerStamp> stages_reached(std::span<const LedgerEntry> ledger, const std::string& mark);

}  // namespace prismwright
