#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/lens_values.h"
#include "core/lens/zone_glass.h"
#include "core/optics/proof.h"
#include "core/optics/section.h"

namespace prismwright {

/// One of two sections that are compared: what it is called, and all that was worked out from its values.
struct ComparedSection {
  std::string name;
  LensValues values;
  Section section;
  Proof proof;
  std::vector<ZoneGlass> glass;  ///< by zone; empty where it was not worked out (geometry/glass_by_zone.h)
};

/// Solves and proves a section for comparing; `glass` is left empty. Refuses what cannot be worked out, with
/// the name of the section.
Outcome<ComparedSection> compared_section(std::string name, const LensValues& values, int elevations = 4000);

/// A quantity whose value differs.
struct SettingDifference {
  std::string key;
  std::string label;
  std::string unit;
  std::string first;  ///< as text; empty when blank
  std::string second;
};

/// What a figure counts.
enum class FigureForm {
  count,
  share,  ///< 0 to 1
  degrees,
  length_mm,
  volume_mm3,
  mass_g,
};

/// A figure of both sections, in one row whether it differs or not.
struct FigurePair {
  std::string key;    ///< stable, with the unit: "share_level", "worst_departure_deg"
  std::string label;  ///< "Level light"
  FigureForm form = FigureForm::count;
  std::optional<double> first;  ///< blank: the section has no such figure
  std::optional<double> second;
  [[nodiscard]] bool differs() const;
};

/// A zone as it stands in one of the sections.
struct ZoneFigures {
  double from_deg = 0;
  double to_deg = 0;
  SizeBy size_by = SizeBy::margin_mm;  ///< margin_mm of a refracting zone, side_mm of a reflecting prism
  double size_mm = 0;
  double section_thickness_mm = 0;
  bool locked = false;
  std::optional<double> volume_mm3;  ///< in the whole lens
};
ZoneFigures figures_of(const Section& section, const Zone& zone);

/// A zone of both sections or of one of them.
struct ZonePair {
  std::string mark;
  ZoneKind kind = ZoneKind::centre;
  std::optional<ZoneFigures> first;
  std::optional<ZoneFigures> second;
  /// On one side only, or with a limit, size or thickness that differs by more than 1e-6 deg or mm, or locked
  /// on one side only.
  [[nodiscard]] bool differs() const;
};

/// Two sections side by side.
struct SectionComparison {
  std::string first;
  std::string second;
  std::vector<SettingDifference> settings;  ///< only those that differ, in the order of the keys
  std::vector<FigurePair> figures;          ///< all of them
  std::vector<ZonePair> zones;              ///< all of them: from the centre outward, upper, then lower prisms
  [[nodiscard]] bool alike() const;         ///< no setting, figure or zone differs
};
SectionComparison compare_sections(const ComparedSection& first, const ComparedSection& second);

/// From the lowest to the highest corner of the glass, lower images of rings included, mm; 0 without zones.
double height_mm(const Section& section);

}  // namespace prismwright
