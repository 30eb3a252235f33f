#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "core/lens/quantities.h"
#include "geometry/despatch/pack.h"
#include "tests/support/planned_lens.h"

namespace prismwright {

/// A belt of few prisms, whose solids are soon made.
inline LensValues few_prisms() {
  LensValues values = starting_values("6", Work::belt, 3);
  values.brief.title = "Low Head <sixth> & \"small\"";
  values.section.refracting_to_deg = 12;
  values.section.upper_to_deg = 22;
  values.section.lower_to_deg = 12;
  return values;
}

/// What was made of a lens for the tests before, so that solids are made once for each plan.
inline DespatchSource source_of(const LensValues& values) {
  DespatchSource source;
  source.plan = std::make_shared<const LensPlan>(plan_of(values));
  source.book_name = "low-head";
  return source;
}

/// The same with everything made once for all tests of a program.
inline const DespatchSource& few_prisms_made() {
  static const DespatchSource made = [] {
    DespatchSource source = source_of(few_prisms());
    source.frame = std::make_shared<const FramePlan>(plan_frame(*source.plan));
    source.bodies = std::make_shared<const LensBodies>(BodyShop().make(*source.plan).value());
    source.metal = std::make_shared<const std::vector<FrameBody>>(make_frame(*source.frame).value());
    source.clearances = std::make_shared<const std::vector<Clearance>>(
        find_clearances(*source.plan, *source.bodies, *source.frame, *source.metal).value());
    return source;
  }();
  return made;
}

inline PaperChoice papers_on(const std::string& date) {
  PaperChoice choice;
  choice.date = date;
  return choice;
}

/// Every file below a folder, by its path in it.
inline std::map<std::string, std::string> files_below(const std::string& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream file(entry.path(), std::ios::binary);
    files[entry.path().lexically_relative(folder).generic_string()] = {std::istreambuf_iterator<char>(file),
                                                                       std::istreambuf_iterator<char>()};
  }
  return files;
}

inline const PackedPiece* piece_of(const PackManifest& manifest, DespatchGroup group, const std::string& name) {
  const auto found = std::ranges::find_if(manifest.pieces, [&](const PackedPiece& packed) {
    return packed.piece.group == group && packed.piece.name == name;
  });
  return found == manifest.pieces.end() ? nullptr : &*found;
}

/// Every address that a page links to.
inline std::set<std::string> links_of(const std::string& html) {
  std::set<std::string> links;
  for (const std::string attribute : {"href=\"", "src=\""}) {
    for (std::size_t at = html.find(attribute); at != std::string::npos; at = html.find(attribute, at)) {
      at += attribute.size();
      links.insert(html.substr(at, html.find('"', at) - at));
    }
  }
  return links;
}

}  // namespace prismwright
