#include <algorithm>

#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/base/inches.h"
#include "core/drawing/card_pages.h"
#include "core/drawing/frame_drawings.h"
#include "core/frame/assembly_order.h"

namespace prismwright {

namespace {

constexpr double kWithHeading_mm = 10;

std::string brass_words(const FramePlan& frame, bool inches) {
  constexpr double kGrams = 1000;
  const PartsTotals totals = totals_of(parts_list(frame, drawn_volumes(frame)));
  const std::string known =
      totals.unweighed > 0 ? fmt::format(", {} turned parts not counted", totals.unweighed) : "";
  const double mass_g = totals.brass_g + totals.steel_g;
  const std::string pounds = inches ? fmt::format(" ({:.1f} lb)", mass_g / kGramsPerPound) : "";
  return fmt::format("The metal of this frame weighs {:.1f} kg{}{}; the glass comes on top of it.",
                     mass_g / kGrams, pounds, known);
}

/// Common practice of workshop and site; nothing here replaces what law and trained people decide.
std::vector<std::string> cautions(const FramePlan& frame, bool inches) {
  return {"Lifting: " + brass_words(frame, inches) +
              " Work out what a piece weighs before it is lifted. What is more than two people carry with "
              "ease, or is lifted overhead, is lifted with rated gear by people who are trained for it. Lift a "
              "glazed panel upright by both of its ribs, never by its glass or by one rib.",
          "Glass: edges, lands and chips cut. Wear cut-resistant gloves and eye protection, never wipe along "
          "an edge, and lay prisms on felt, never glass on glass or on brass. A prism that does not go in by "
          "hand is taken out again: find the cause, do not force it.",
          "Height: never work alone on a ladder, nor carry glass up one. Work from a platform with rails that "
          "trained people have put up, with a second person at hand, and nobody below.",
          "Light: a lens gathers the sun and can set fire to what stands behind it. Keep it covered with an "
          "opaque cloth from the first glazed panel on.",
          "Local law, the owner's rules and the people in charge of the site come before anything said here."};
}

std::vector<std::string> numbered(const std::vector<std::string>& sentences) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < sentences.size(); ++i)
    lines.push_back(fmt::format("{}. {}", i + 1, sentences[i]));
  return lines;
}

void add_part(CardPages& pages, const std::string& heading, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  pages.heading(heading, kWithHeading_mm);
  pages.lines(lines);
}

void add_panels(CardPages& pages, const PanelAssembly& assembly) {
  const std::string panels =
      fmt::format("Panel{} {}", assembly.panels.size() > 1 ? "s" : "", numbers_words(assembly.panels));
  const std::string last =
      assembly.second_rib.empty() ? "" : fmt::format("; {} goes on last", assembly.second_rib);
  add_part(pages, panels, {fmt::format("Put together on {}{}.", assembly.first_rib, last)});
  if (assembly.panels.size() > 1)
    pages.lines({fmt::format("Marks are those of panel {}; in the others the number of the panel is theirs.",
                             assembly.panels.front())});
  pages.lines(numbered(assembly.steps));
  add_part(pages, panels + ": without a way into their seats", assembly.cannot);
  if (assembly.open_seats.empty()) return;
  add_part(pages, panels + ": can be changed in the finished lens",
           {fmt::format("{}.", fmt::join(assembly.open_seats, "; "))});
}

/// Panels with ribs that no order was given for hold no prisms.
void add_empty_panels(CardPages& pages, const FramePlan& frame, const std::vector<PanelAssembly>& panels) {
  std::set<int> left;
  for (const RibPlan& rib : frame.ribs) left.insert(rib.panel);
  for (const PanelAssembly& assembly : panels)
    for (const int panel : assembly.panels) left.erase(panel);
  if (left.empty()) return;
  const std::vector<int> numbers(left.begin(), left.end());
  add_part(pages, fmt::format("Panel{} {}", numbers.size() > 1 ? "s" : "", numbers_words(numbers)),
           {"No prisms: screw the ribs and rails together."});
}

}  // namespace

Drawing assembly_sheets(const FramePlan& frame, const std::vector<PanelAssembly>& panels,
                        const HouseWords& words) {
  CardPages pages(words.paper.value_or(Paper::a4));
  add_part(pages, "Before you begin", cautions(frame, words.inches));
  const std::vector<std::string> whole = order_of_assembly(frame);
  add_part(pages, "The whole frame",
           whole.empty() ? std::vector<std::string>{"The frame has no side ribs, so there is no order to give: "
                                                    "glaze as the holder of the prisms asks for."}
                         : numbered(whole));
  for (const PanelAssembly& assembly : panels) add_panels(pages, assembly);
  if (!panels.empty()) add_empty_panels(pages, frame, panels);
  std::vector<UntitledSheet> sheets;
  for (SheetMaker& page : pages.take()) sheets.push_back({std::move(page), "Order of assembly", "none"});
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
