#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/quantities.h"

namespace prismwright {

/// What the section as it stands is called where variants are named; no variant may have this name.
inline constexpr std::string_view kPresentName = "present";
/// The longest name of a variant, in letters.
inline constexpr int kLongestVariantName = 60;

/// A section kept under a name: every quantity of the section and its material, as text by key, so that it
/// needs no change when a later program knows further quantities.
struct SectionVariant {
  std::string name;
  std::string when_utc;           ///< when it was kept, ISO 8601
  std::vector<Assignment> texts;  ///< in the order of the keys
};

/// All `section.*` and `material.*` quantities as texts that read back exactly.
std::vector<Assignment> section_texts(const LensValues& values);

/// The name as it is kept: without white space round it. Refuses an empty one, one that is too long, `present`,
/// and one that holds control characters or is not UTF-8.
Outcome<std::string> variant_name(std::string_view typed);

/// A variant taken over into other values.
struct TakenVariant {
  LensValues values;
  std::vector<std::string> notes;  ///< sentences on what the variant holds and this program does not know
};

/// The values with the variant's texts in place of their own. Keys that the variant does not hold keep their
/// value. Refuses a variant from which no section can be worked out with the rest of the values.
Outcome<TakenVariant> with_variant(const LensValues& values, const SectionVariant& variant);

}  // namespace prismwright
