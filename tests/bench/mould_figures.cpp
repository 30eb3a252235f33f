// Moulds of every master of the samples, stock and shrinkage on: how many are made, whether they fill their
// blocks, and whether any line along the draw meets a half more than once.
//   cmake --preset bench && cmake --build --preset bench --target prismwright_mould_figures
#include <fmt/format.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <cmath>

#include "core/book/lensbook.h"
#include "core/works/congruence.h"
#include "geometry/master.h"
#include "geometry/mould.h"
#include "tests/support/mould_lines.h"

namespace prismwright {
namespace {

constexpr int kAcross = 30;

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps props;
  BRepGProp::VolumeProperties(shape, props);
  return props.Mass();
}

void look_at(const char* name) {
  const auto book =
      Lensbook::open(std::string(PRISMWRIGHT_SAMPLES "/") + name + ".lensbook", Lensbook::Access::read_only);
  if (!book) return (void)fmt::print("{}\n", book.problem().text);
  const auto plan = plan_lens(book->values());
  if (!plan) return (void)fmt::print("{}\n", plan.problem().text);
  MasterShop masters;
  std::vector<MouldOrder> orders;
  for (const Master& master : masters_of(*plan)) {
    const auto body = masters.make(plan->prisms[master.prism], master.name, plan->values.works);
    if (body) orders.push_back({(*body)->prism, (*body)->shape});
  }
  MouldShop moulds;
  const auto answers = moulds.make(orders, plan->values.works);
  if (!answers) return (void)fmt::print("{}\n", answers.problem().text);
  int made = 0, free = 0, lines = 0, twice = 0;
  double departs = 0;
  for (const MouldAnswer& answer : *answers) {
    if (!answer.mould) continue;
    const Mould& mould = *answer.mould;
    const MouldFacts& f = mould.facts;
    ++made;
    const double all = volume_of(mould.lower) + volume_of(mould.upper) + volume_of(mould.master) +
                       f.openings_mm3 + f.pin_gap_mm3;
    departs = std::max(departs, std::abs(all / f.block_mm3 - 1));
    if (!f.draw.free()) continue;
    ++free;
    for (const TopoDS_Shape& half : {mould.lower, mould.upper}) {
      const LinesMet met = lines_along_draw(half, mould.master, f, kAcross);
      lines += met.met;
      twice += met.most_stretches > 1 ? 1 : 0;
    }
  }
  fmt::print(
      "{}: {} of {} moulds made; blocks filled within {:.2g}, to reach 1e-4; {} called free of undercuts; {} "
      "lines "
      "along the draw, halves met twice by one: {}\n",
      name, made, orders.size(), departs, free, lines, twice);
  std::fflush(stdout);
}

}  // namespace
}  // namespace prismwright

int main() {
  for (const char* name : {"fourth-order-bullseye", "sixth-order-belt", "first-order-group-flashing"})
    prismwright::look_at(name);
}
