// Prints, for every prism of the distinct panels of each sample, how far the room beside its end in the pockets
// departs from the setting gap, measured between solids read back from STEP files:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_frame_figures
//   build/bench/tests/bench/prismwright_frame_figures
#include <fmt/format.h>

#include <chrono>
#include <map>
#include <set>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "tests/support/pocket_gaps.h"

namespace prismwright {
namespace {

struct Worst {
  double departs_mm = 0;
  std::string where = "nowhere";
  int sides = 0;
  int at_neighbours = 0;

  void take(const SideGap& side, const std::string& rib, double gap_mm) {
    if (side.faces_neighbour(gap_mm + 0.02)) {
      ++at_neighbours;
      return;
    }
    ++sides;
    const double departs = std::abs(side.wall_mm - gap_mm);
    if (departs <= departs_mm) return;
    departs_mm = departs;
    where = fmt::format("{} face {} in {} ({:.4f} mm)", side.mark, side.side, rib, side.wall_mm);
  }
};

// Panels whose prisms and ribs are not all like those of a panel before.
std::set<int> distinct_panels(const LensPlan& plan, const FramePlan& frame) {
  std::map<int, std::string> likeness;
  for (const PlannedPrism& prism : plan.prisms) likeness[prism.panel] += prism.shape_key + "\n";
  for (const RibPlan& rib : frame.ribs) likeness[rib.panel] += rib.shape_key + "\n";
  std::set<std::string> known;
  std::set<int> panels;
  for (const auto& [panel, alike] : likeness) {
    if (known.insert(alike).second) panels.insert(panel);
  }
  return panels;
}

Worst worst_of_panel(int panel, const LensPlan& plan, const FramePlan& frame,
                     const std::vector<FrameBody>& metal, const LensBodies& bodies) {
  std::vector<ReadPrism> prisms;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel != panel) continue;
    prisms.push_back({prism.mark, reread(prism.mark, bodies.find(prism.mark)->shape, PartStuff::glass)});
  }
  Worst worst;
  for (std::size_t i = 0; i < frame.ribs.size(); ++i) {
    const RibPlan& rib = frame.ribs[i];
    if (rib.panel != panel) continue;
    const auto walls = pocket_walls(reread(rib.mark, metal[i].shape, PartStuff::metal), inward_of(rib));
    for (const ReadPrism& prism : prisms) {
      for (const SideGap& side : side_gaps(prism, prisms, walls, rib)) {
        worst.take(side, rib.mark, plan.values.frame.setting_gap_mm);
      }
    }
  }
  return worst;
}

void sample_figures(const std::string& name) {
  auto book =
      Lensbook::open(std::string(PRISMWRIGHT_SAMPLES) + "/" + name + ".lensbook", Lensbook::Access::read_only);
  if (!book) {
    fmt::print("{}: {}\n", name, book.problem().text);
    return;
  }
  const LensPlan plan = *plan_lens(book->values());
  const FramePlan frame = plan_frame(plan);
  const auto start = std::chrono::steady_clock::now();
  const auto metal = make_frame(frame);
  const double taken_s = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  if (!metal) {
    fmt::print("{}: {}\n", name, metal.problem().text);
    return;
  }
  fmt::print("{}: {} frame parts as solids in {:.2f} s\n", name, metal->size(), taken_s);
  BodyShop shop;
  const LensBodies bodies = *shop.make(plan);
  for (const int panel : distinct_panels(plan, frame)) {
    const Worst worst = worst_of_panel(panel, plan, frame, *metal, bodies);
    fmt::print(
        "  panel {}: {} sides at a wall depart from the setting gap by {:.4f} mm at most, at {}; {} more face "
        "a neighbour\n",
        panel, worst.sides, worst.departs_mm, worst.where, worst.at_neighbours);
  }
}

}  // namespace
}  // namespace prismwright

int main() {
  for (const char* name : {"sixth-order-belt", "fourth-order-bullseye", "first-order-group-flashing"}) {
    prismwright::sample_figures(name);
  }
}
