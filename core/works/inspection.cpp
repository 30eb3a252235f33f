#include "core/works/inspection.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/drawing/lengths.h"
#include "core/frame/frame_csv.h"
#include "core/light/bench_check.h"

namespace prismwright {

namespace {

constexpr std::string_view kLaser = "laser";
constexpr std::size_t kMostNamed = 3;  ///< features that a sentence names

/// The casting that stands for a mark, and since when.
struct StandingCasting {
  long long serial = 0;
  std::string since;  ///< empty: from the beginning

  [[nodiscard]] bool made(long long of_serial, const std::string& when_utc) const {
    if (of_serial != 0 && serial != 0) return of_serial == serial;
    return when_utc >= since;
  }
};

StandingCasting standing_of(const std::string& mark, std::span<const LedgerEntry> ledger) {
  StandingCasting standing;
  for (const LedgerEntry& line : ledger) {
    if (line.mark != mark) continue;
    if (line.to == Stage::cast) {
      standing = {line.serial, line.when_utc};
    } else if (line.to == Stage::scrapped && line.back_to.value_or(Stage::moulded) < Stage::cast) {
      standing = {0, line.when_utc};
    } else if (line.serial != 0) {
      standing.serial = line.serial;
    }
  }
  return standing;
}

/// Reads what was recorded of one prism.
class Inspector {
 public:
  Inspector(const std::string& mark, const InspectionRecord& record)
      : record_(record), standing_(standing_of(mark, record.ledger)) {
    prism_.mark = mark;
    prism_.serial = standing_.serial;
  }

  InspectedPrism inspect(std::vector<Feature> features) {
    for (Feature& feature : features) {
      CheckedFeature checked;
      checked.feature = std::move(feature);
      prism_.features.push_back(std::move(checked));
    }
    read_measurements();
    read_bench();
    read_decisions();
    for (CheckedFeature& checked : prism_.features) judge(checked);
    conclude();
    return std::move(prism_);
  }

 private:
  CheckedFeature* find(std::string_view key) {
    const auto found = std::ranges::find(
        prism_.features, key,
        [](const CheckedFeature& checked) -> std::string_view { return checked.feature.key; });
    return found == prism_.features.end() ? nullptr : &*found;
  }

  static void take(CheckedFeature& checked, double value, const std::string& when_utc, const std::string& by) {
    ++checked.readings;
    if (when_utc < checked.when_utc) return;
    checked.measured = value;
    checked.when_utc = when_utc;
    checked.by = by;
  }

  void read_measurements() {
    for (const Measurement& m : record_.measurements) {
      if (m.mark != prism_.mark || !standing_.made(m.serial, m.when_utc)) continue;
      if (CheckedFeature* checked = find(m.feature)) take(*checked, m.measured, m.when_utc, m.by);
    }
  }

  void read_bench() {
    CheckedFeature* laser = find(kLaser);
    const BenchAim* aim = record_.bench && laser ? record_.bench->find(prism_.mark) : nullptr;
    if (!aim) return;
    if (!aim->trouble.empty()) {
      laser->feature.needed = false;
      laser->feature.how = aim->trouble;
      return;
    }
    for (const BenchReading& reading : record_.readings) {
      if (reading.mark != prism_.mark || !standing_.made(0, reading.when_utc)) continue;
      take(*laser, mend_of(*aim, reading).off_deg(), reading.when_utc, reading.by);
    }
  }

  void read_decisions() {
    for (const Decision& decision : record_.decisions) {
      if (decision.mark != prism_.mark || !standing_.made(decision.serial, decision.when_utc)) continue;
      if (!prism_.decision || decision.when_utc >= prism_.decision->when_utc) prism_.decision = decision;
    }
  }

  void judge(CheckedFeature& checked) {
    if (!checked.measured) {
      if (checked.feature.needed) ++prism_.missing;
      return;
    }
    checked.off = *checked.measured - checked.feature.drawn;
    // A reading that lies on the limit is within it, whatever its last binary digit.
    const double limit = checked.feature.within * (1 + 1e-9) + 1e-12 * std::abs(checked.feature.drawn);
    const bool within = std::abs(checked.off) <= limit;
    checked.verdict = within ? InspectionVerdict::within : InspectionVerdict::out;
    ++(within ? prism_.within : prism_.out);
  }

  /// What a decision does not settle: readings that came after it.
  [[nodiscard]] std::vector<std::string> unsettled() const {
    std::vector<std::string> open;
    const bool settles = prism_.decision && prism_.decision->kind != DecisionKind::scrap;
    for (const CheckedFeature& checked : prism_.features) {
      if (checked.verdict != InspectionVerdict::out) continue;
      if (settles && checked.when_utc <= prism_.decision->when_utc) continue;
      open.push_back(fmt::format("{} by {:+.3g} {}", checked.feature.key, checked.off, checked.feature.unit));
    }
    return open;
  }
  [[nodiscard]] std::vector<std::string> missing() const {
    std::vector<std::string> keys;
    for (const CheckedFeature& checked : prism_.features)
      if (!checked.measured && checked.feature.needed) keys.push_back(checked.feature.key);
    return keys;
  }

  static std::string listed(const std::vector<std::string>& all) {
    std::string words;
    for (std::size_t i = 0; i < std::min(all.size(), kMostNamed); ++i) words += (i > 0 ? ", " : "") + all[i];
    if (all.size() > kMostNamed) words += fmt::format(" and {} more", all.size() - kMostNamed);
    return words;
  }

  void conclude() {
    if (prism_.decision && prism_.decision->kind == DecisionKind::scrap) {
      prism_.words = "Scrapped: " + prism_.decision->note;
      return;
    }
    const auto open = unsettled();
    prism_.unsettled = static_cast<int>(open.size());
    if (!open.empty()) {
      prism_.words = fmt::format(
          "Out of tolerance: {}. Accept it with a reason, set it with a shim or scrap it.", listed(open));
      return;
    }
    if (const auto keys = missing(); !keys.empty()) {
      prism_.words = fmt::format("Still to be measured: {}.", listed(keys));
      return;
    }
    prism_.fit = true;
    prism_.words = "Fit to glaze: all within tolerance.";
    if (prism_.out > 0) {
      prism_.words = fmt::format("Fit to glaze, {}: {}",
                                 prism_.decision->kind == DecisionKind::shim ? "with a shim" : "accepted",
                                 prism_.decision->note);
    }
  }

  const InspectionRecord& record_;
  StandingCasting standing_;
  InspectedPrism prism_;
};

}  // namespace

const char* name_of(InspectionVerdict verdict) {
  switch (verdict) {
    case InspectionVerdict::within:
      return "within";
    case InspectionVerdict::out:
      return "out";
    case InspectionVerdict::not_measured:
      return "not measured";
  }
  return "not measured";
}

const CheckedFeature* InspectedPrism::find(std::string_view key) const {
  const auto found = std::ranges::find(
      features, key, [](const CheckedFeature& checked) -> std::string_view { return checked.feature.key; });
  return found == features.end() ? nullptr : &*found;
}

InspectedPrism inspect(const PlannedPrism& prism, const WorksSettings& works, const InspectionRecord& record) {
  return Inspector(prism.mark, record).inspect(features_of(prism, works));
}

std::vector<InspectedPrism> inspect(const LensPlan& plan, const InspectionRecord& record) {
  std::map<std::string, std::vector<Feature>> features;
  std::vector<InspectedPrism> prisms;
  for (const PlannedPrism& prism : plan.prisms) {
    const auto [place, is_new] = features.try_emplace(prism.shape_key);
    if (is_new) place->second = features_of(prism, plan.values.works);
    prisms.push_back(Inspector(prism.mark, record).inspect(place->second));
  }
  return prisms;
}

InspectionSummary summary_of(std::span<const InspectedPrism> prisms) {
  InspectionSummary summary;
  for (const InspectedPrism& prism : prisms) {
    ++summary.prisms;
    summary.fit += prism.fit;
    const bool measured = prism.within + prism.out > 0;
    summary.measured += measured;
    summary.out += prism.unsettled > 0;
  }
  return summary;
}

std::string inspection_csv(std::span<const InspectedPrism> prisms) {
  std::string csv =
      "mark,serial,feature,name,drawn,unit,within,measured,off,verdict,readings,when_utc,by,how\n";
  for (const InspectedPrism& prism : prisms) {
    for (const CheckedFeature& checked : prism.features) {
      const Feature& feature = checked.feature;
      csv += fmt::format("{},{},{},{},{:.4f},{},{},{},{},{},{},{},{},{}\n", csv_cell(prism.mark),
                         prism.serial > 0 ? std::to_string(prism.serial) : "", feature.key,
                         csv_cell(feature.name), feature.drawn, feature.unit, shortest(feature.within),
                         checked.measured ? shortest(*checked.measured) : "",
                         checked.measured ? fmt::format("{:.4f}", checked.off) : "", name_of(checked.verdict),
                         checked.readings, checked.when_utc, csv_cell(checked.by), csv_cell(feature.how));
    }
  }
  return csv;
}

}  // namespace prismwright
