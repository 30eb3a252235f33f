#include "core/papers/lens_facts.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/lens/lens_size.h"
#include "core/lens/orders.h"

namespace prismwright {

namespace {

std::string order_words(const LensValues& values) {
  const Order* order = find_order(values.brief.order);
  return order ? std::string(order->words) : values.brief.order;
}

std::string work_words(Work work) { return work == Work::belt ? "belt" : "bull's-eye"; }

std::string panel_words(const LensPlan& plan) {
  const std::size_t lit = static_cast<std::size_t>(lit_panels(plan));
  const std::size_t blind = plan.panels.size() - lit;
  const std::string words = counted_words(lit, "panel", "panels");
  return blind == 0 ? words : fmt::format("{} and {} blind", words, blind);
}

std::string material_words(const Material& material) {
  const std::string tint = material.tint.empty() ? "" : ", tinted";
  return fmt::format("{}{}, index {:.5f}", material.name, tint, material.effective_index());
}

}  // namespace

std::string counted_words(std::size_t count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

int lit_panels(const LensPlan& plan) {
  return static_cast<int>(
      std::ranges::count_if(plan.values.panels, [](const Panel& panel) { return !panel.blind; }));
}

std::string what_it_is(const LensPlan& plan, const HouseWords& words) {
  const LengthWords lengths{words.inches};
  const std::string order = order_words(plan.values);
  return fmt::format(
      "a lighthouse lens{} of {} work, with a focal distance of {} {}: {} with {} of {} in a frame of "
      "brass.",
      order.empty() ? "" : " of the " + order, work_words(plan.values.brief.work),
      lengths.plain(plan.values.brief.focal_mm), lengths.unit(), panel_words(plan),
      counted_words(plan.prisms.size(), "prism", "prisms"), plan.values.material.name);
}

std::string what_it_does(const LensPlan& plan) {
  const bool horizon = plan.section.input.settings.aim_at == AimAt::horizon;
  const char* way = horizon ? "towards the sea's horizon" : "level";
  const double turn_s = plan.values.light.turn_s;
  if (plan.values.turns_about_lens(Band::refracting))
    return fmt::format(
        "Its prisms go round the upright axis: light of the lamp in the focus that would go up or "
        "down leaves {}, to all sides that they stand before{}.",
        way, turn_s > 0 ? fmt::format(", while the lens turns once in {} s", shortest(turn_s)) : "");
  return fmt::format(
      "Each panel gathers the light of the lamp in the focus into one beam that leaves {}{}.", way,
      turn_s > 0 ? fmt::format(", and the lens turns once in {} s, so that a far observer sees each beam "
                               "as a flash",
                               shortest(turn_s))
                 : "; the lens stands still as it is planned");
}

std::vector<DocumentPages::Fact> lens_facts(const LensPlan& plan, int kinds, const LengthWords& lengths) {
  const LensSize size = size_of(plan);
  const auto length = [&](double mm) { return lengths.plain(mm) + " " + lengths.unit(); };
  std::vector<DocumentPages::Fact> facts = {{"Order", order_words(plan.values)},
                                            {"Work", work_words(plan.values.brief.work)},
                                            {"Focal distance", length(plan.values.brief.focal_mm)},
                                            {"Panels", panel_words(plan)},
                                            {"Prisms", std::to_string(plan.prisms.size())},
                                            {"Height of the glass", length(size.height_mm)},
                                            {"Inside diameter", length(size.inside_diameter_mm)},
                                            {"Material", material_words(plan.values.material)}};
  if (kinds > 0) facts.insert(facts.begin() + 5, {"Kinds of prism", std::to_string(kinds)});
  const std::string& character = plan.values.brief.character;
  facts.push_back({"Character asked for", character.empty() ? "none" : character});
  return facts;
}

}  // namespace prismwright
