#include "core/drawing/part_tables.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/base/angle.h"
#include "core/drawing/plate_view.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/cutter_radius.h"

namespace prismwright {

namespace {

using Kind = TableLine::Kind;

std::string with_unit(const std::string& words, const LengthWords& lengths) {
  return words + " " + lengths.unit();
}

/// Names of things by the row they belong to, numbered where a row has several.
std::vector<std::string> names_of(const std::vector<std::size_t>& rows, const std::vector<HoleRow>& kinds,
                                  bool small) {
  std::vector<int> seen(kinds.size(), 0);
  std::vector<std::string> names;
  for (const std::size_t row : rows) {
    const std::string letter = row_letter(row, small);
    names.push_back(kinds[row].count > 1 ? letter + std::to_string(++seen[row]) : letter);
  }
  return names;
}

struct Measured {
  std::string x;
  std::string y;
};
Measured measured(PlatePoint p, const PlateDatum& datum, const LengthWords& lengths) {
  return {lengths.plain(p.u - datum.origin.u), lengths.plain(p.v - datum.origin.v)};
}

/// One hole as a row of the table; of round plates with its place on a circle about the middle too.
TableLine hole_row(const std::string& name, const PlateHole& hole, const PlateDatum& datum,
                   const LengthWords& lengths) {
  const auto [x, y] = measured(hole.centre, datum, lengths);
  const bool sunk = hole.sink_diameter_mm > hole.diameter_mm;
  TableLine row{
      Kind::row,
      {name, lengths.plain(hole.diameter_mm), x, y, sunk ? lengths.plain(hole.sink_diameter_mm) : ""}};
  if (datum.middle) {
    const double u = hole.centre.u - datum.origin.u;
    const double v = hole.centre.v - datum.origin.v;
    row.cells.push_back(lengths.plain(std::hypot(u, v)));
    row.cells.push_back(decimals(degrees(std::atan2(v, u)), 3));
  }
  const std::string side = sunk ? hole.sunk_in_back ? ", sunk in back" : ", sunk in front" : "";
  row.cells.push_back("   " + hole.use + side);
  return row;
}

ColumnNote hole_note(const FlatPart& part, const PlateDatum& datum, const LengthWords& lengths) {
  ColumnNote note{"places of the holes", {"hole\tx\ty"}, {}};
  note.wide.columns = {{14}, {22, true}, {24, true}, {24, true}, {22, true}};
  TableLine head{Kind::head,
                 {"hole", with_unit("diameter", lengths), with_unit("x", lengths), with_unit("y", lengths),
                  with_unit("sunk to", lengths)}};
  if (datum.middle) {
    note.wide.columns.insert(note.wide.columns.end(), {{22, true}, {18, true}});
    head.cells.insert(head.cells.end(), {with_unit("on radius", lengths), "at deg"});
  }
  note.wide.columns.push_back({datum.middle ? 42.0 : 82.0});
  head.cells.emplace_back("   use");
  note.wide.lines = {{Kind::heading, {"Holes right through; " + datum.words}}, std::move(head)};
  const std::vector<std::string> names = hole_names(part);
  for (std::size_t i = 0; i < part.holes.size(); ++i) {
    const auto [x, y] = measured(part.holes[i].centre, datum, lengths);
    note.lines.push_back(names[i] + "\t" + x + "\t" + y);
    note.wide.lines.push_back(hole_row(names[i], part.holes[i], datum, lengths));
  }
  return note;
}

/// Which way a bore runs, seen from the front.
std::string way_words(SpaceVector along) {
  constexpr double kStraight = 1e-6;
  if (std::hypot(along.x, along.y) < kStraight) return along.z > 0 ? "to the front" : "to the back";
  if (std::abs(along.z) < kStraight) {
    if (std::abs(along.y) < kStraight) return along.x > 0 ? "to the right" : "to the left";
    if (std::abs(along.x) < kStraight) return along.y > 0 ? "upwards" : "downwards";
  }
  std::string words = fmt::format("{}\u00B0 from x", decimals(degrees(std::atan2(along.y, along.x)), 2));
  if (std::abs(along.z) >= kStraight)
    words += fmt::format(", {}\u00B0 out", decimals(degrees(std::asin(along.z)), 2));
  return words;
}

ColumnNote bore_note(const FlatPart& part, const PlateDatum& datum, const LengthWords& lengths) {
  ColumnNote note{"places of the bores, z from the back face", {"bore\tx\ty\tz"}, {}};
  note.wide.columns = {{16}, {24, true}, {24, true}, {24, true}, {24, true}, {20, true}, {34}, {22}};
  note.wide.lines = {{Kind::heading, {"Drilled into the edges; " + datum.words + "; z from the back face"}},
                     {Kind::head,
                      {"bore", with_unit("x", lengths), with_unit("y", lengths), with_unit("z", lengths),
                       with_unit("diameter", lengths), with_unit("deep", lengths), "   runs", "use"}}};
  const std::vector<std::string> names = bore_names(part);
  for (std::size_t i = 0; i < part.bores.size(); ++i) {
    const PlateBore& bore = part.bores[i];
    const auto [x, y] = measured({bore.from.x, bore.from.y}, datum, lengths);
    const std::string z = lengths.plain(bore.from.z);
    note.lines.push_back(fmt::format("{}\t{}\t{}\t{}", names[i], x, y, z));
    note.wide.lines.push_back({Kind::row,
                               {names[i], x, y, z, lengths.plain(bore.diameter_mm),
                                lengths.plain(bore.depth_mm), "   " + way_words(bore.along), bore.use}});
  }
  return note;
}

ColumnNote pocket_note(const FlatPart& part, const PlateDatum& datum, const LengthWords& lengths) {
  ColumnNote note{"pockets: extents and cutter radii", {}, {}};
  note.wide.columns = {{20}, {28, true}, {28, true}, {28, true}, {28, true}, {26, true}, {30, true}};
  note.wide.lines = {
      {Kind::heading, {"Pockets from the front; " + datum.words}},
      {Kind::head,
       {"pocket", with_unit("from x", lengths), with_unit("to x", lengths), with_unit("from y", lengths),
        with_unit("to y", lengths), with_unit("deep", lengths), with_unit("cutter radius up to", lengths)}}};
  std::vector<std::string> taken;
  int number = 0;
  for (const PlatePocket& pocket : blind_pockets(part)) {
    const std::string name = pocket_name(number++);
    const PlateExtent extent = extent_of(pocket.outline);
    const auto [low_x, low_y] = measured(extent.low, datum, lengths);
    const auto [high_x, high_y] = measured(extent.high, datum, lengths);
    const double radius = cutter_radius_mm(pocket.outline, CutSide::inside_of_chain);
    note.wide.lines.push_back({Kind::row,
                               {name, low_x, high_x, low_y, high_y, lengths.plain(pocket.depth_mm),
                                std::isfinite(radius) ? lengths.plain(radius) : "none"}});
    if (!pocket.marks.empty()) taken.push_back(fmt::format("{}: {}", name, fmt::join(pocket.marks, " ")));
  }
  if (!taken.empty()) {
    add_words(note.wide, fmt::format("In the first of the marks they take {}.", fmt::join(taken, "; ")));
  }
  return note;
}

/// How the prisms bear in the pockets of this very plate; nothing where that was not worked out.
ColumnNote landing_note(const FlatPart& part, const std::vector<Landing>& landings,
                        const LengthWords& lengths) {
  ColumnNote note{"how prisms bear in the pockets", {}, {}};
  note.wide.columns = {{40}, {40, true}, {40, true}, {68}};
  const std::vector<PlatePocket> pockets = blind_pockets(part);
  for (const Landing& landing : landings) {
    if (landing.rib != part.mark) continue;
    std::string pocket;
    for (std::size_t i = 0; i < pockets.size(); ++i) {
      if (std::ranges::find(pockets[i].marks, landing.prism) != pockets[i].marks.end())
        pocket = pocket_name(static_cast<int>(i));
    }
    note.wide.lines.push_back(
        {Kind::row,
         {landing.prism, lengths.plain(landing.reach_mm), lengths.plain(landing.width_mm), "   " + pocket}});
  }
  if (note.wide.lines.empty()) return note;
  add_words(note.wide, "A width of 0: the prism has only other prisms under it.");
  const std::vector<TableLine> head = {
      {Kind::heading, {"Landings: how far a prism reaches into its pocket, and what of it bears on the wall"}},
      {Kind::head, {"prism", with_unit("reach", lengths), with_unit("landing width", lengths), "   pocket"}}};
  note.wide.lines.insert(note.wide.lines.begin(), head.begin(), head.end());
  return note;
}

bool is_upright_rectangle(const PlateChain& chain) {
  return chain.size() == 4 && std::ranges::all_of(chain, [](const PlateStep& step) {
           return step.straight() && (step.from.u == step.to.u || step.from.v == step.to.v);
         });
}

void add_steps(const PlateChain& chain, const PlateDatum& datum, const LengthWords& lengths,
               std::vector<TableLine>& lines) {
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& step = chain[i];
    TableLine line{Kind::row,
                   {std::to_string(i + 1),
                    step.straight() ? "line"
                    : step.turn > 0 ? "arc, full"
                                    : "arc, hollow",
                    lengths.exact(step.from.u - datum.origin.u), lengths.exact(step.from.v - datum.origin.v)}};
    if (!step.straight()) {
      for (const double value :
           {step.radius_mm, step.centre.u - datum.origin.u, step.centre.v - datum.origin.v})
        line.cells.push_back(lengths.exact(value));
    }
    lines.push_back(std::move(line));
  }
}

/// Short chains in the column: start and radius of each step.
std::vector<std::string> short_steps(const PlateChain& chain, const PlateDatum& datum,
                                     const LengthWords& lengths) {
  constexpr std::size_t kMost = 14;
  if (chain.size() > kMost) return {};
  std::vector<std::string> lines = {
      "each from its start to that of the next; R with a minus bends into the part", "step\tx\ty\tR"};
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& step = chain[i];
    const std::string radius =
        step.straight() ? "line" : (step.turn < 0 ? "-" : "") + lengths.exact(step.radius_mm);
    lines.push_back(fmt::format("{}\t{}\t{}\t{}", i + 1, lengths.exact(step.from.u - datum.origin.u),
                                lengths.exact(step.from.v - datum.origin.v), radius));
  }
  for (std::size_t i = 0; i < chain.size(); ++i) {
    if (std::abs(chain[i].turn) > kPi + 1e-9)
      lines.push_back(fmt::format("step {} is more than half a circle", i + 1));
  }
  return lines;
}

ColumnNote outline_note(const std::string& what, const PlateChain& chain, const PlateDatum& datum,
                        const LengthWords& lengths) {
  ColumnNote note{what + ": lines and arcs", short_steps(chain, datum, lengths), {}};
  note.wide.columns = {{14}, {30}, {28, true}, {28, true}, {28, true}, {30, true}, {30, true}};
  note.wide.lines = {
      {Kind::heading, {fmt::format("{}, anticlockwise; {}", what, datum.words)}},
      {Kind::head,
       {"step", "shape", with_unit("start x", lengths), with_unit("start y", lengths),
        with_unit("radius", lengths), with_unit("centre x", lengths), with_unit("centre y", lengths)}}};
  add_steps(chain, datum, lengths, note.wide.lines);
  return note;
}

}  // namespace

bool is_round(const PlateChain& chain) {
  return !chain.empty() && std::ranges::all_of(chain, [&](const PlateStep& step) {
    return !step.straight() && step.radius_mm == chain.front().radius_mm &&
           step.centre.u == chain.front().centre.u && step.centre.v == chain.front().centre.v;
  });
}

PlateDatum datum_of(const FlatPart& part) {
  if (part.outline.empty()) return {{}, false, "x and y from the plate's own origin"};
  if (is_round(part.outline)) return {part.outline.front().centre, true, "x and y from 0, the middle"};
  return {extent_of(part.outline).low, false, "x and y from 0, the corner of leftmost and lowest edge"};
}

std::string row_letter(std::size_t row, bool small) {
  const std::string letter(1, static_cast<char>((small ? 'a' : 'A') + row % 26));
  return row < 26 ? letter : letter + letter;
}

std::vector<std::string> hole_names(const FlatPart& part) {
  const std::vector<HoleRow> kinds = hole_rows(part);
  std::vector<std::size_t> rows;
  for (const PlateHole& hole : part.holes) rows.push_back(row_of(kinds, hole));
  return names_of(rows, kinds, false);
}

std::vector<std::string> bore_names(const FlatPart& part) {
  const std::vector<HoleRow> kinds = bore_rows(part);
  std::vector<std::size_t> rows;
  for (const PlateBore& bore : part.bores) {
    const auto found = std::ranges::find_if(kinds, [&](const HoleRow& row) {
      return row.diameter_mm == bore.diameter_mm && row.depth_mm == bore.depth_mm && row.use == bore.use;
    });
    rows.push_back(static_cast<std::size_t>(found - kinds.begin()));
  }
  return names_of(rows, kinds, true);
}

std::vector<ColumnNote> part_notes(const FlatPart& part, const std::vector<Landing>& landings,
                                   const LengthWords& lengths) {
  const PlateDatum datum = datum_of(part);
  std::vector<ColumnNote> notes;
  if (!part.holes.empty()) notes.push_back(hole_note(part, datum, lengths));
  if (!part.bores.empty()) notes.push_back(bore_note(part, datum, lengths));
  if (!blind_pockets(part).empty()) notes.push_back(pocket_note(part, datum, lengths));
  if (ColumnNote note = landing_note(part, landings, lengths); !note.wide.lines.empty())
    notes.push_back(std::move(note));
  const auto irregular = [](const PlateChain& chain) {
    return !chain.empty() && !is_round(chain) && !is_upright_rectangle(chain);
  };
  if (irregular(part.outline)) notes.push_back(outline_note("Outline", part.outline, datum, lengths));
  int number = 0;
  for (const PlateChain& cut : through_cuts(part)) {
    ++number;
    if (irregular(cut)) notes.push_back(outline_note(fmt::format("Opening {}", number), cut, datum, lengths));
  }
  return notes;
}

}  // namespace prismwright
