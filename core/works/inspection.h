#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/plan.h"
#include "core/light/bench_plan.h"
#include "core/light/bench_reading.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"

namespace prismwright {

enum class FeatureKind { width, angle, radius, length, thickness, laser };
const char* name_of(FeatureKind kind);

/// A true curve as a template of one radius shows it.
struct TemplateArc {
  double sagitta_mm = 0;  ///< of the face over its chord, both ends laid on
  double departs_mm = 0;  ///< greatest distance of the face from the template; 0 for an arc
};

/// One thing to measure on a finished prism, as the drawing has it.
///
/// Keys: width.X-Y between neighbouring corners of the section, angle.X (at a sharp corner, or at both ends of
/// a land), radius.ROLE (name_of FaceRole; radius.land-X for a rounded land), length.outer, length.inner,
/// thickness, laser. Corners are lettered anticlockwise: reflecting prisms A (entry and exit), B (entry and
/// reflecting), C (reflecting and exit); refracting ones A upper inner, B lower inner, C lower outer, D upper
/// outer; a centre's middle is M inside and V outside. A land parts its corner in two, A1 and A2 in the order
/// of the walk.
struct Feature {
  std::string key;
  FeatureKind kind = FeatureKind::width;
  std::string name;  ///< in words: "width of the entry face, corner A to corner B"
  double drawn = 0;
  std::string unit;                ///< "mm" or "deg"
  double within = 0;               ///< tolerance to both sides, in the unit
  std::string how;                 ///< how to measure it, a sentence
  bool needed = true;              ///< to be measured before a prism counts as fit to glaze
  std::optional<TemplateArc> arc;  ///< radii only
};

/// In the order of the walk: widths, angles, radii, lengths, thickness, laser. Angles between faces are those
/// of the glass, between tangents at the corner. Lengths are straight from end to end along an edge; whole
/// rings and centres have diameters.
std::vector<Feature> features_of(const PlannedPrism& prism, const WorksSettings& works);

enum class InspectionVerdict { within, out, not_measured };
const char* name_of(InspectionVerdict verdict);  ///< "within", "out", "not measured"

/// A feature with what was measured of the standing casting. The latest reading counts.
struct CheckedFeature {
  Feature feature;
  InspectionVerdict verdict = InspectionVerdict::not_measured;
  std::optional<double> measured;
  double off = 0;  ///< measured less drawn
  int readings = 0;
  std::string when_utc;
  std::string by;
};

/// One prism's inspection. Only what was measured of the casting that stands counts, not of one that was
/// scrapped before it.
struct InspectedPrism {
  std::string mark;
  long long serial = 0;
  std::vector<CheckedFeature> features;
  int within = 0;
  int out = 0;
  int missing = 0;                   ///< needed features that are not measured
  int unsettled = 0;                 ///< features out that no later decision accepted, shimmed or scrapped
  std::optional<Decision> decision;  ///< the latest on this casting
  bool fit = false;   ///< to glaze: nothing missing, and nothing out but what was accepted or shimmed since
  std::string words;  ///< a sentence: fit, or why not

  [[nodiscard]] const CheckedFeature* find(std::string_view key) const;
};

/// What was recorded of a lens. `bench`: blank where no bench readings are to count; else they count as
/// measurements of "laser" (how far the beam is off its way in all, mend_of).
struct InspectionRecord {
  std::span<const Measurement> measurements;
  std::span<const Decision> decisions;
  std::span<const LedgerEntry> ledger;
  std::span<const BenchReading> readings;
  const BenchPlan* bench = nullptr;
};

InspectedPrism inspect(const PlannedPrism& prism, const WorksSettings& works, const InspectionRecord& record);
/// All prisms in the order of the plan.
std::vector<InspectedPrism> inspect(const LensPlan& plan, const InspectionRecord& record);

struct InspectionSummary {
  int prisms = 0;
  int fit = 0;
  int out = 0;       ///< prisms with a feature out that no decision settles
  int measured = 0;  ///< prisms with any reading
};
InspectionSummary summary_of(std::span<const InspectedPrism> prisms);

/// The prism of a mark, or for a spare ("S01-U07") the first of its piece; null when there is none.
const PlannedPrism* prism_of_mark(const LensPlan& plan, std::string_view mark);

/// Refuses a mark that the lens has not (spares of its pieces count), a feature that its prism has not (the
/// text lists those it has), and a value that is not finite, negative but for the laser, or farther than half
/// of itself and 5 units off what is drawn: a slip of the pen, not a casting.
Done check_measurement(const LensPlan& plan, const Measurement& measurement);
/// Refuses a mark that the lens has not and a decision without a reason.
Done check_decision(const LensPlan& plan, const Decision& decision);

/// What the drawing is measured against, for a page or a file: all features of all prisms as CSV, with
/// measured values and verdicts where there are any. Columns: mark, serial, feature, name, drawn, unit, within,
/// measured, off, verdict, readings, when_utc, by, how.
std::string inspection_csv(std::span<const InspectedPrism> prisms);

}  // namespace prismwright
