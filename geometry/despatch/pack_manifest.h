#pragma once

#include <string>

#include "geometry/despatch/pack.h"

namespace prismwright {

inline constexpr const char* kManifestName = "manifest.json";
inline constexpr const char* kSumsName = "SHA256SUMS";
inline constexpr const char* kStartPageName = "index.html";
inline constexpr const char* kChangesName = "changes.txt";

/// A book's name as words that any reader takes: letters that are none (a file name is any bytes) are replaced.
std::string readable_name(const std::string& book);

std::string manifest_text(const PackManifest& manifest);
/// The same checks as read_manifest; `where` names it in refusals.
Outcome<PackManifest> manifest_of(const std::string& text, const std::string& where);

}  // namespace prismwright
