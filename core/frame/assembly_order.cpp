#include "core/frame/assembly_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace prismwright {
namespace {

std::string list_of(const std::vector<std::string>& marks) {
  std::string words;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (i > 0) words += i + 1 == marks.size() ? " and " : ", ";
    words += marks[i];
  }
  return words;
}

class AssemblyOrder {
 public:
  explicit AssemblyOrder(const FramePlan& frame) : frame_(frame) {
    std::set<int> panels;
    for (const RibPlan& rib : frame.ribs) panels.insert(rib.panel);
    door_ = door_panel();
    panels.erase(door_);
    panels_.assign(panels.begin(), panels.end());
  }

  std::vector<std::string> say() {
    if (frame_.ribs.empty()) return {};
    add_base();
    add_panels();
    add_top();
    if (door_ > 0) add_door();
    return std::move(steps_);
  }

 private:
  /// Leaves stand on both sides of the hinge; its pins are set in those that do not swing. 0: no door.
  [[nodiscard]] int door_panel() const {
    std::set<int> leaves;
    for (const FlatPart& flat : frame_.flats)
      if (flat.kind == PartKind::hinge_leaf) leaves.insert(flat.panel);
    for (const RoundPart& part : frame_.rounds)
      if (part.kind == PartKind::hinge_pin && leaves.size() > 1) leaves.erase(part.panel);
    return leaves.empty() ? 0 : *leaves.begin();
  }

  [[nodiscard]] bool has(const std::string& mark) const {
    return std::any_of(frame_.rings.begin(), frame_.rings.end(), [&](const auto& r) { return r.mark == mark; });
  }

  [[nodiscard]] std::vector<std::string> flats_of(PartKind kind) const {
    std::vector<std::string> marks;
    for (const FlatPart& flat : frame_.flats) {
      if (flat.kind == kind) marks.push_back(flat.mark);
    }
    return marks;
  }

  [[nodiscard]] std::vector<std::string> rounds_of(PartKind kind, const std::string& head = "") const {
    std::vector<std::string> marks;
    for (const RoundPart& part : frame_.rounds) {
      if (part.kind == kind && part.mark.starts_with(head)) marks.push_back(part.mark);
    }
    return marks;
  }

  // Spacers stand under the bottom ring or over the top ring.
  void add_plate(PartKind kind, const char* ring, const char* spacers) {
    for (const std::string& plate : flats_of(kind)) {
      const std::size_t count = rounds_of(PartKind::spacer, spacers).size();
      steps_.push_back(count > 0 ? fmt::format("Screw {} and {} together with {} spacer{} between them.", plate,
                                               ring, count, count == 1 ? "" : "s")
                                 : fmt::format("Screw {} and {} together.", plate, ring));
    }
  }

  void add_base() { add_plate(PartKind::base_table, "ring-bottom", "spacer-bottom"); }

  void add_panels() {
    std::vector<int> all = panels_;
    if (door_ > 0) all.push_back(door_);
    std::sort(all.begin(), all.end());
    steps_.push_back(fmt::format("Put panel{} {} together, each on its first rib as its own order says.",
                                 all.size() > 1 ? "s" : "", numbers_words(all)));
    if (panels_.empty()) return;
    const bool railed = !flats_of(PartKind::rail).empty();
    steps_.push_back(fmt::format("Stand panel {} on {}{}.", panels_.front(),
                                 has("ring-bottom") ? "ring-bottom" : "the floor",
                                 railed ? " and screw its bottom rail to it" : ""));
    if (panels_.size() == 1) return;
    const char* dowelled = rounds_of(PartKind::dowel).empty() ? "" : "set the dowels, ";
    steps_.push_back(fmt::format(
        "Stand panel{} {} beside it{}, each rib against its neighbour's: {}then "
        "screw rib to rib{}.",
        panels_.size() > 2 ? "s" : "", numbers_words({panels_.begin() + 1, panels_.end()}),
        panels_.size() > 2 ? " one after another" : "", dowelled, railed ? " and each bottom rail down" : ""));
  }

  void add_top() {
    if (has("ring-top")) {
      steps_.push_back(flats_of(PartKind::rail).empty()
                           ? "Lay ring-top on the ribs."
                           : "Lay ring-top on the ribs and screw it to the top rails.");
    }
    add_plate(PartKind::finial_plate, "ring-top", "spacer-top");
  }

  void add_door() {
    const auto leaves = flats_of(PartKind::hinge_leaf);
    const auto pins = rounds_of(PartKind::hinge_pin);
    steps_.push_back(fmt::format("Screw {} to the ribs at the hinge{}.", list_of(leaves),
                                 pins.empty() ? "" : ", and set " + list_of(pins)));
    steps_.push_back(fmt::format("Hang panel {}, the door, on its pins from above.", door_));
    const auto latches = flats_of(PartKind::latch);
    if (!latches.empty()) {
      steps_.push_back(fmt::format("Screw {} on so that it turns, and shut the door.", list_of(latches)));
    }
  }

  const FramePlan& frame_;
  std::vector<int> panels_;
  int door_ = 0;
  std::vector<std::string> steps_;
};

}  // namespace

std::string numbers_words(const std::vector<int>& numbers) {
  std::string words;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    const bool range = last > i + 1;
    const std::size_t next = range ? last + 1 : i + 1;
    if (!words.empty()) words += next == numbers.size() ? " and " : ", ";
    words += range ? fmt::format("{} to {}", numbers[i], numbers[last]) : fmt::to_string(numbers[i]);
    i = next;
  }
  return words;
}

std::vector<std::string> order_of_assembly(const FramePlan& frame) { return AssemblyOrder(frame).say(); }

}  // namespace prismwright
