#include "core/works/mould_notes.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kAlong = 0.9998;  ///< cosine from which a direction is one of the axes (1.1 deg)

std::string axis_word(char axis, bool positive) {
  switch (axis) {
    case 'x':
      return positive ? "seaward" : "lampward";
    case 'y':
      return positive ? "to the anticlockwise end" : "to the clockwise end";
    default:
      return positive ? "upward" : "downward";
  }
}

std::string places(std::size_t count, const char* one, const char* many) {
  return count == 1 ? fmt::format("one {}", one) : fmt::format("{} {}", count, many);
}

}  // namespace

std::string direction_words(SpaceVector unit) {
  struct Part {
    char axis;
    double size;
  };
  std::vector<Part> parts = {{'x', unit.x}, {'y', unit.y}, {'z', unit.z}};
  std::stable_sort(parts.begin(), parts.end(),
                   [](const Part& m, const Part& n) { return std::abs(m.size) > std::abs(n.size); });
  const std::string main = axis_word(parts[0].axis, parts[0].size > 0);
  if (std::abs(parts[0].size) >= kAlong) return main;
  const double turn = degrees(std::acos(std::min(1.0, std::abs(parts[0].size))));
  std::string words =
      fmt::format("{}, leaning {:.1f} deg {}", main, turn, axis_word(parts[1].axis, parts[1].size > 0));
  if (std::abs(parts[2].size) > 0.25 * std::abs(parts[1].size) && std::abs(parts[2].size) > 0.02)
    words += fmt::format(" and {}", axis_word(parts[2].axis, parts[2].size > 0));
  return words;
}

std::string draw_note(const DrawFacts& draw) {
  const std::string way = fmt::format("The upper half is lifted {}, {:.1f} mm off the casting",
                                      direction_words(draw.along), draw.height_mm);
  if (draw.free())
    return fmt::format("{}; nothing is undercut, and the least draft is {:.1f} deg.", way, draw.draft_deg);
  if (draw.drawable())
    return fmt::format(
        "{}; nothing stands in its way, but there are steep faces: the least draft is {:.2f} deg.", way,
        draw.draft_deg);
  return fmt::format("Best drawn {}, but parts of it stand in the way.", direction_words(draw.along));
}

std::string parting_note(const MouldFacts& facts) {
  if (facts.parting == PartingKind::plane) return "The halves meet in one plane.";
  return fmt::format(
      "No one plane parts it: the halves meet along its corners, on a surface that rises {:.1f} mm "
      "along the draw.",
      facts.parting_rise_mm);
}

std::string standing_note(const MouldFacts& facts) {
  const bool level = std::abs(dot(facts.up, facts.draw.along)) > 0.5;
  return fmt::format(
      "It stands {:.0f} mm high on {:.0f} x {:.0f} mm when it is filled, its parting {}, with the "
      "casting's side that looks {} on top.",
      facts.standing_mm, facts.footprint_long_mm, facts.footprint_short_mm, level ? "level" : "upright",
      direction_words(facts.up));
}

std::string opening_note(const MouldFacts& facts) {
  std::string note;
  std::size_t vents = 0;
  for (const MouldOpening& opening : facts.openings) {
    if (!opening.gate) {
      ++vents;
      continue;
    }
    note = fmt::format("The pour gate is {:g} mm wide and leaves a mark of {:.1f} mm on the face \"{}\".",
                       opening.diameter_mm, opening.throat_mm, opening.face);
  }
  if (vents == 0) return note + " It stands at the only high point, so that no vent is needed.";
  return note + fmt::format(" There {} {} at the high points that it does not reach.",
                            vents == 1 ? "is" : "are", places(vents, "vent", "vents"));
}

std::string pin_note(const MouldFacts& facts) {
  if (facts.pins.empty()) return "It has no register pins.";
  const MouldPin& pin = facts.pins.front();
  return fmt::format(
      "{} register pins of {:g} mm stand {:g} mm over the parting of the lower half; their holes are {:g} mm "
      "wide.",
      facts.pins.size(), pin.diameter_mm, pin.length_mm, pin.hole_diameter_mm);
}

std::string undercut_note(const Undercut& undercut) {
  if (undercut.kind == UndercutKind::hidden) {
    return fmt::format("Face \"{}\": {:.1f} mm2 are hidden from the draw and reach {:.1f} mm under the rest.",
                       undercut.face, undercut.area_mm2, undercut.depth_mm);
  }
  return fmt::format("Face \"{}\": {:.1f} mm2 have a draft of only {:.2f} deg.", undercut.face,
                     undercut.area_mm2, undercut.draft_deg);
}

std::vector<std::string> mould_notes(const MouldFacts& facts) {
  std::vector<std::string> notes = {draw_note(facts.draw)};
  for (const Undercut& undercut : facts.draw.undercuts) notes.push_back(undercut_note(undercut));
  for (const std::string& note :
       {parting_note(facts), standing_note(facts), opening_note(facts), pin_note(facts)})
    notes.push_back(note);
  notes.push_back(
      fmt::format("Block {:.0f} x {:.0f} x {:.0f} mm; tooling material {:.2f} l in the lower half and {:.2f} l "
                  "in the upper; resin {:.0f} g.",
                  facts.block_length_mm, facts.block_width_mm, facts.block_height_mm, facts.lower_mm3 / 1e6,
                  facts.upper_mm3 / 1e6, facts.resin_g));
  return notes;
}

}  // namespace prismwright
