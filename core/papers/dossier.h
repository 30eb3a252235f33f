#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/lens/plan.h"
#include "core/light/bench_plan.h"
#include "core/light/bench_reading.h"
#include "core/light/light_report.h"
#include "core/optics/proof.h"
#include "core/works/congruence.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

/// What is known of a lens when its owner gets it. Pointers may be null: then the dossier says that this was
/// not worked out, and leaves nothing to guess.
struct DossierFacts {
  const LensPlan& plan;
  std::span<const Master> masters = {};
  const Proof* proof = nullptr;
  const LightReport* light = nullptr;
  std::span<const LedgerEntry> ledger = {};
  const WorksLog* log = nullptr;
  std::span<const BenchReading> readings = {};
  const BenchPlan* bench = nullptr;
  double glass_kg = 0;
  double brass_kg = 0;
  bool clearances_known = false;                     ///< they were found, whatever there is
  std::optional<double> tightest_mm = std::nullopt;  ///< least gap, and between what; blank where none is near
  std::string tightest_between = {};
  int clashes = 0;
  int tight = 0;                                   ///< pairs with less room than they need
  std::shared_ptr<const PointImage> picture = {};  ///< of the whole lens; may be null
};

/// The owner's dossier: what the lens is (with its picture, order, focal distance, panels, character, size and
/// mass); how it was proved (proof of the section, bench readings prism by prism, beam, range, colour,
/// character against the brief); what it is made of, castings by number with resin and lot; care and cleaning
/// of acrylic; handling, sun and lifting cautions; what local authority and licensed practice decide; every
/// prism with its mark, its master and its number once, and how to order a spare from the mark. What was not
/// done or measured is said so. Texts never cover each other, nor the border.
Outcome<Drawing> dossier(const DossierFacts& facts, const HouseWords& words);

}  // namespace prismwright
