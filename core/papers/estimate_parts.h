#pragma once

#include "core/papers/document_pages.h"
#include "core/papers/estimate.h"
#include "core/papers/estimate_options.h"

namespace prismwright {

/// The numbers of an estimate as they are printed.
struct EstimateFacts {
  Money lines;     ///< sum of the printed lines
  Money cost;      ///< the works page's total, as printed
  Money rounding;  ///< cost less lines: what rounding each line by itself makes, some hundredths at most
  Money margin;
  Money total;  ///< cost and margin
  EstimateOptions options;
};
EstimateFacts estimate_facts(const LensPlan& plan, const WorksReckoning& works, const EstimateChoice& choice);

// The parts of the paper, in their order.
void write_offer(DocumentPages& pages, const LensPlan& plan, const WorksReckoning& works,
                 const EstimateFacts& facts, const EstimateChoice& choice, const HouseWords& words);
void write_money(DocumentPages& pages, const WorksReckoning& works, const EstimateFacts& facts,
                 const EstimateChoice& choice);
void write_hours(DocumentPages& pages, const WorksReckoning& works, const EstimateFacts& facts);
void write_options(DocumentPages& pages, const EstimateFacts& facts);
void write_not_in_it(DocumentPages& pages, const LensPlan& plan, const WorksReckoning& works,
                     const EstimateChoice& choice);

}  // namespace prismwright
