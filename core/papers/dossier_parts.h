#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/drawing/lengths.h"
#include "core/light/bench_check.h"
#include "core/papers/document_pages.h"
#include "core/papers/dossier.h"

namespace prismwright {

/// What the ledger and the bench say of the lens as it stands.
struct DossierState {
  std::vector<std::string> marks;  ///< of all prisms, in the order of the plan
  StageByMark now;
  StageCounts counts;
  std::map<long long, long long> load_of;  ///< vessel load by casting number, where one is recorded
  std::vector<BenchedPrism> benched;       ///< empty without a bench plan
  BenchSummary bench;

  [[nodiscard]] int at(Stage stage) const { return counts.all[static_cast<std::size_t>(stage)]; }
  /// Number of the casting that stands for the mark; 0: none.
  [[nodiscard]] long long serial_of(const std::string& mark) const;
  /// Its vessel load; 0: none recorded.
  [[nodiscard]] long long load_of_mark(const std::string& mark) const;
};
DossierState dossier_state(const DossierFacts& facts);

/// A dossier while it is being written.
struct DossierDesk {
  const DossierFacts& facts;
  const DossierState& state;
  const HouseWords& words;
  LengthWords lengths;
  DocumentPages& pages;
};

// The chapters, in their order.
void write_front(DossierDesk& desk);
void write_proved(DossierDesk& desk);
void write_bench(DossierDesk& desk);     ///< of the chapter before
void write_not_done(DossierDesk& desk);  ///< of the chapter before
void write_light(DossierDesk& desk);
void write_made_of(DossierDesk& desk);
void write_care(DossierDesk& desk);
void write_handling(DossierDesk& desk);
void write_authority(DossierDesk& desk);
void write_prisms(DossierDesk& desk);

/// "1-4, 7, 9-10" of rising numbers.
std::string number_ranges(const std::vector<long long>& numbers);

}  // namespace prismwright
