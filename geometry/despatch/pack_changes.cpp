#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/lens/quantities.h"
#include "geometry/despatch/pack.h"

namespace prismwright {

namespace {

constexpr std::size_t kMostLetters = 60;  ///< of a value that is told

using Values = std::map<std::string, std::string>;

std::string shown(const std::string& text) {
  if (text.empty()) return "blank";
  if (text.size() <= kMostLetters) return text;
  std::size_t end = kMostLetters;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;  // not within a letter
  return text.substr(0, end) + "...";
}

/// Quantities that one of both does not know are none that changed.
std::vector<std::string> value_lines(const Values& before, const Values& now) {
  std::vector<std::string> lines;
  for (const Quantity& quantity : quantities()) {
    const auto old_text = before.find(quantity.key);
    const auto new_text = now.find(quantity.key);
    if (old_text == before.end() || new_text == now.end() || old_text->second == new_text->second) continue;
    lines.push_back(fmt::format("{} {} -> {}{}{}", quantity.key, shown(old_text->second),
                                shown(new_text->second), quantity.unit.empty() ? "" : " ", quantity.unit));
  }
  return lines;
}

using PieceName = std::pair<DespatchGroup, std::string>;

std::map<PieceName, const PackedPiece*> by_name(const PackManifest& manifest) {
  std::map<PieceName, const PackedPiece*> pieces;
  for (const PackedPiece& packed : manifest.pieces) pieces[{packed.piece.group, packed.piece.name}] = &packed;
  return pieces;
}

/// What became of the pieces of one group.
struct GroupChanges {
  std::vector<std::string> anew;
  std::vector<std::string> came;
  std::vector<std::string> went;
  std::vector<std::string> withheld;

  void tell(DespatchGroup group, std::vector<std::string>& lines) const {
    const auto say = [&](const char* what, const std::vector<std::string>& names) {
      if (!names.empty())
        lines.push_back(fmt::format("{} {}: {}", words_of(group), what, fmt::join(names, ", ")));
    };
    say("made anew", anew);
    say("that came", came);
    say("that went", went);
    say("withheld now", withheld);
  }
};

}  // namespace

std::vector<std::string> values_changed(const PackManifest& last, const LensValues& now) {
  Values texts;
  for (const Quantity& quantity : quantities()) texts[quantity.key] = value_text(now, quantity.key);
  return value_lines({last.values.begin(), last.values.end()}, texts);
}

std::vector<std::string> changes_since(const PackManifest& last, const PackManifest& now) {
  std::vector<std::string> lines =
      value_lines({last.values.begin(), last.values.end()}, {now.values.begin(), now.values.end()});
  const auto before = by_name(last);
  const auto after = by_name(now);
  std::map<DespatchGroup, GroupChanges> groups;  // those that the pack was asked for
  for (const auto& [name, packed] : after) {
    GroupChanges& changes = groups[name.first];
    const auto known = before.find(name);
    const bool lay_there = known != before.end() && !known->second->files.empty();
    if (!packed->piece.withheld.empty()) {
      if (lay_there) changes.withheld.push_back(name.second);
    } else if (!lay_there) {
      changes.came.push_back(name.second);
    } else if (known->second->piece.key != packed->piece.key) {
      changes.anew.push_back(name.second);
    }
  }
  for (const auto& [name, packed] : before) {
    const auto group = groups.find(name.first);
    if (group != groups.end() && !after.contains(name)) group->second.went.push_back(name.second);
  }
  for (const auto& [group, changes] : groups) changes.tell(group, lines);
  return lines;
}

const char* name_of(DespatchState state) {
  switch (state) {
    case DespatchState::fresh:
      return "fresh";
    case DespatchState::stale:
      return "stale";
    case DespatchState::unpacked:
      return "unpacked";
    case DespatchState::withheld:
      return "withheld";
  }
  return "";
}

const PackedPiece* find_packed(const PackManifest& manifest, const DespatchPiece& piece) {
  const auto found = std::ranges::find_if(manifest.pieces, [&](const PackedPiece& packed) {
    return packed.piece.group == piece.group && packed.piece.name == piece.name;
  });
  return found == manifest.pieces.end() ? nullptr : &*found;
}

DespatchState state_of(const DespatchPiece& piece, const PackManifest* last) {
  if (!piece.withheld.empty()) return DespatchState::withheld;
  if (!last) return DespatchState::unpacked;
  const PackedPiece* known = find_packed(*last, piece);
  if (!known || known->files.empty()) return DespatchState::unpacked;
  return known->piece.key == piece.key ? DespatchState::fresh : DespatchState::stale;
}

std::string next_revision(const std::string& last) {
  constexpr auto is_letter = [](char c) { return c >= 'A' && c <= 'Z'; };
  constexpr auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  if (last.empty()) return "A";
  if (!std::ranges::all_of(last, is_letter)) {
    const auto digits = std::find_if_not(last.rbegin(), last.rend(), is_digit).base();
    if (digits == last.end() || last.end() - digits > 9) return last + "-2";
    return std::string(last.begin(), digits) + std::to_string(std::stol(std::string(digits, last.end())) + 1);
  }
  std::string next = last;
  for (auto letter = next.rbegin(); letter != next.rend(); ++letter) {
    if (*letter != 'Z') {
      ++*letter;
      return next;
    }
    *letter = 'A';
  }
  return "A" + next;
}

}  // namespace prismwright
