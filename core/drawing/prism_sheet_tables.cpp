#include "core/drawing/prism_sheet_tables.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/arc_chain.h"
#include "core/drawing/offset_table.h"
#include "core/drawing/round_words.h"
#include "core/lens/trimmed_ring.h"
#include "core/optics/face_words.h"
#include "core/works/inspection.h"
#include "core/works/section_corners.h"
#include "core/works/whole_face.h"

namespace prismwright {

namespace {

using Kind = TableLine::Kind;

bool about_lens(const PlannedPrism& prism) { return prism.turning == TurningAxis::lens; }

TableLine row(std::vector<std::string> cells) { return {Kind::row, std::move(cells)}; }

/// Letters at the start and the end of a face.
std::pair<std::string, std::string> letters_of(const std::vector<SectionCorner>& corners, std::size_t face) {
  return {corners[face].letter, corners[(face + 1) % corners.size()].letter};
}

/// Where the glass of a corner stands about the turning axis, two cells of degrees.
std::vector<std::string> kept_cells(const PlannedPrism& prism, const TrimmedRing& ring, SectionPoint corner) {
  const bool whole = !about_lens(prism) && prism.trim.half == Half::whole;
  if (whole && ring.clears_sides()) return {"all", "round"};
  const auto kept = ring.kept(about_lens(prism) ? corner : SectionPoint{corner.r, std::abs(corner.z)});
  if (!kept) return {"none", ""};
  return {degrees_words(degrees(kept->from)), degrees_words(degrees(kept->to))};
}

std::string kept_words(const PlannedPrism& prism, const TrimmedRing& ring) {
  if (about_lens(prism)) {
    return "Glass from, to: about the lens axis, from the panel's own axis, + anticlockwise seen from above.";
  }
  if (prism.trim.half == Half::whole && ring.clears_sides()) return "Glass stands all round the panel's axis.";
  const char* side = prism.trim.half == Half::lower ? "down" : "up";
  return fmt::format(
      "Glass from, to: about the panel's axis, from level on the left seen from the lamp towards {}{}.", side,
      prism.trim.half == Half::whole ? "; below, its mirror image" : "");
}

std::string frame_words(const PlannedPrism& prism, LengthWords lengths) {
  const char* unit = lengths.inches ? "inches" : "mm";
  if (about_lens(prism)) {
    return fmt::format("r: square away from the lens axis; z: above the focal plane; in {}.", unit);
  }
  std::string words = fmt::format(
      "r: along the panel's axis from the lens axis, seaward; z: square away from the panel's axis; in {}.",
      unit);
  if (prism.profile.faces.front().start().z < 0) words += " The section shown lies below that axis.";
  return words;
}

/// Offsets of a face that is its own mirror image across the axis are told from its middle.
TableBlock offsets_of_face(const PlannedPrism& prism, std::size_t index,
                           const std::vector<SectionCorner>& corners, LengthWords lengths) {
  const Face face = whole_face(prism.profile, index);
  const auto [from, to] = letters_of(corners, index);
  const std::string name = words_of(face.role);
  const double step = round_step_mm(
      distance(prism.profile.faces[index].start(), prism.profile.faces[index].end()), lengths.inches);
  if (ends_on_axis(prism.profile, index)) {
    return offset_block(offsets_from_middle(face, step),
                        fmt::format("Offsets of the {} face from the chord across its rim", name),
                        "the axis to the rim, all ways alike", lengths);
  }
  return offset_block(offsets_of(face, step), fmt::format("Offsets of the {} face, {} to {}", name, from, to),
                      "corner " + from, lengths);
}

std::string within_words(const Feature& feature, LengthWords lengths) {
  return feature.unit == "mm" ? lengths.exact(feature.within) : shortest(feature.within);
}

std::string marks_line(const Master& kind, bool turned) {
  std::string words;
  for (const MasterUse& use : kind.uses) {
    if (use.turned == turned) words += (words.empty() ? "" : ", ") + use.mark;
  }
  return words;
}

}  // namespace

std::vector<std::string> face_names(const Profile& profile) {
  std::vector<std::string> names;
  for (const Face& face : profile.faces)
    names.push_back(face.role == FaceRole::axis ? "" : words_of(face.role));
  return names;
}

TableBlock corner_block(const PlannedPrism& prism, LengthWords lengths) {
  const std::vector<SectionCorner> corners = lettered_corners(prism.profile);
  const TrimmedRing ring(prism);
  TableBlock block;
  block.columns = {{16}, {54}, {24, true}, {24, true}, {24, true}, {23, true}, {23, true}};
  block.lines.push_back({Kind::heading, {"Corners of the section"}});
  add_words(block, frame_words(prism, lengths));
  add_words(block, kept_words(prism, ring));
  block.lines.push_back(
      {Kind::head, {"corner", "between", "r", "z", "angle of glass", "glass from", "glass to"}});
  const std::vector<std::string> names = face_names(prism.profile);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const SectionPoint place = corners[i].place;
    const std::size_t before = (i + corners.size() - 1) % corners.size();
    if (corners[i].on_axis) {
      const std::string& name = names[i].empty() ? names[before] : names[i];
      block.lines.push_back(
          row({corners[i].letter, name + ", on the axis", lengths.exact(place.r), lengths.exact(place.z)}));
      continue;
    }
    TableLine line =
        row({corners[i].letter, names[before] + " and " + names[i], lengths.exact(place.r),
             lengths.exact(place.z), degrees_words(corner_angle_deg(prism.profile, i)) + "\u00B0"});
    for (const std::string& cell : kept_cells(prism, ring, place)) line.cells.push_back(cell);
    block.lines.push_back(std::move(line));
  }
  return block;
}

TableBlock face_block(const PlannedPrism& prism, LengthWords lengths) {
  const std::vector<SectionCorner> corners = lettered_corners(prism.profile);
  TableBlock block;
  block.columns = {{22}, {26}, {44}, {24, true}, {24, true}, {24, true}, {24, true}};
  block.lines.push_back({Kind::heading, {"Faces"}});
  block.lines.push_back(
      {Kind::head, {"corners", "face", "shape", "straight width", "radius", "centre r", "centre z"}});
  for (std::size_t i = 0; i < prism.profile.faces.size(); ++i) {
    const Face& face = prism.profile.faces[i];
    if (face.role == FaceRole::axis) continue;
    const auto [from, to] = letters_of(corners, i);
    const bool curve = face.kind == FaceKind::true_curve;
    const SingleArc best = curve ? best_arc(whole_face(prism.profile, i)) : SingleArc{arcs_of(face).front(), 0};
    TableLine line = row({fmt::format("{} to {}", from, to), words_of(face.role),
                          curve ? "true curve, see its offsets" : round_words(best.piece),
                          lengths.exact(distance(face.start(), face.end()))});
    if (!curve) add_round(line.cells, best.piece, lengths);
    block.lines.push_back(std::move(line));
    if (!curve) continue;
    TableLine arc = row({"", "", "best one arc, off " + departure_words(best.departs_mm, lengths), ""});
    add_round(arc.cells, best.piece, lengths);
    block.lines.push_back(std::move(arc));
  }
  add_words(block, "Full: bulges out of the glass; hollow: into it.");
  return block;
}

std::vector<TableBlock> offset_blocks(const PlannedPrism& prism, LengthWords lengths) {
  const std::vector<SectionCorner> corners = lettered_corners(prism.profile);
  std::vector<TableBlock> blocks;
  for (std::size_t i = 0; i < prism.profile.faces.size(); ++i) {
    if (prism.profile.faces[i].kind == FaceKind::true_curve)
      blocks.push_back(offsets_of_face(prism, i, corners, lengths));
  }
  return blocks;
}

TableBlock tolerance_block(const PlannedPrism& prism, const WorksSettings& works, LengthWords lengths) {
  TableBlock block;
  block.columns = {{34}, {92}, {26, true}, {24, true}, {12}};
  block.lines.push_back({Kind::heading, {"Tolerances of the finished prism"}});
  block.lines.push_back({Kind::head, {"measure", "", "drawn", "within, both ways", ""}});
  for (const Feature& feature : features_of(prism, works)) {
    const bool length = feature.unit == "mm";
    block.lines.push_back(
        row({feature.key, feature.name, length ? lengths.exact(feature.drawn) : degrees_words(feature.drawn),
             within_words(feature, lengths), length ? lengths.unit() : "deg"}));
  }
  return block;
}

TableBlock marks_block(const Master& kind) {
  TableBlock block;
  block.lines.push_back({Kind::heading, {fmt::format("Prisms of this kind: {}", kind.uses.size())}});
  const std::string plain = marks_line(kind, false);
  const std::string turned = marks_line(kind, true);
  if (!plain.empty()) add_words(block, plain);
  if (!turned.empty()) add_words(block, "Turned end for end: " + turned);
  return block;
}

}  // namespace prismwright
