// Clearances of the first-order sample in one run with the plain way: every pair by the kernel's own solid to
// solid distance, one by one, nothing shared. Run it on a quiet machine:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_clearance_figures
//   build/bench/tests/bench/prismwright_clearance_figures [every nth pair for the plain way] [book]
#include <fmt/format.h>

#include <TopLoc_Location.hxx>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <functional>
#include <map>
#include <string>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/frame_bodies.h"
#include "geometry/solid_gap.h"

namespace prismwright {
namespace {

constexpr double kClash_mm3 = 1e-3;
constexpr double kDiffer_mm = 1e-3;

double seconds_of(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Lens {
  LensPlan plan;
  LensBodies bodies;
  FramePlan frame;
  std::vector<FrameBody> metal;
};

Lens make(const std::string& path) {
  const auto book = Lensbook::open(path);
  Lens lens{plan_lens(book->values()).value(), {}, {}, {}};
  lens.bodies = BodyShop().make(lens.plan).value();
  lens.frame = plan_frame(lens.plan);
  lens.metal = make_frame(lens.frame).value();
  return lens;
}

std::map<std::string, TopoDS_Shape> shapes_of(const Lens& lens) {
  std::map<std::string, TopoDS_Shape> shapes;
  for (const PrismBody& body : lens.bodies.prisms) shapes[body.mark] = body.shape;
  for (const FrameBody& body : lens.metal) shapes[body.mark] = body.shape;
  return shapes;
}

struct Plain {
  int pairs = 0;
  double seconds = 0;
  int differ_in_verdict = 0;
  int differ_in_gap = 0;
  double greatest_mm = 0;
};

Verdict plain_verdict(const SolidGap& gap, double needed_mm) {
  if (gap.overlap_mm3 > kClash_mm3) return Verdict::clash;
  return gap.gap_mm < needed_mm - 1e-6 ? Verdict::tight : Verdict::clear;
}

// What stands round is not a solid, so it has no plain way.
Plain plain_way(const Lens& lens, const std::vector<Clearance>& ours, std::size_t every) {
  const auto shapes = shapes_of(lens);
  Plain plain;
  for (std::size_t i = 0; i < ours.size(); i += every) {
    const Clearance& c = ours[i];
    if (c.kind == ClearanceKind::surroundings) continue;
    SolidGap gap;
    plain.seconds += seconds_of([&] { gap = gap_between(shapes.at(c.first), shapes.at(c.second)); });
    ++plain.pairs;
    const double apart = std::abs(gap.gap_mm - c.gap_mm);
    plain.greatest_mm = std::max(plain.greatest_mm, apart);
    const bool other = plain_verdict(gap, c.needed_mm) != c.verdict;
    plain.differ_in_verdict += other ? 1 : 0;
    plain.differ_in_gap += apart > kDiffer_mm ? 1 : 0;
    if (other || apart > kDiffer_mm) {
      fmt::print("  {} {}: ours {:.6f} mm {}, plain {:.6f} mm {} ({:.5f} mm3)\n", c.first, c.second, c.gap_mm,
                 name_of(c.verdict), gap.gap_mm, name_of(plain_verdict(gap, c.needed_mm)), gap.overlap_mm3);
    }
  }
  return plain;
}

double after_a_move_s(ClearanceShop& shop, Lens lens) {
  gp_Trsf move;
  move.SetTranslation(gp_Vec(0.02, 0.01, 0.03));
  lens.bodies.prisms[lens.bodies.prisms.size() / 2].shape.Move(TopLoc_Location(move));
  return seconds_of([&] { (void)shop.find(lens.plan, lens.bodies, lens.frame, lens.metal); });
}

void figures(const std::string& path, std::size_t every) {
  const Lens lens = make(path);
  ClearanceShop shop;
  std::vector<Clearance> ours;
  const double our_s = seconds_of([&] { ours = *shop.find(lens.plan, lens.bodies, lens.frame, lens.metal); });
  fmt::print("pairs {}, of which measured {}: {:.2f} s\n", ours.size(), shop.measured_anew(), our_s);
  fmt::print("after moving one prism: {:.3f} s, to reach: under 0.2 s\n", after_a_move_s(shop, lens));
  const Plain plain = plain_way(lens, ours, every);
  if (every > 1) fmt::print("the plain way was taken with every {}th pair only\n", every);
  const double whole_s = plain.seconds * static_cast<double>(ours.size()) / std::max(plain.pairs, 1);
  fmt::print("plain way: {} pairs in {:.1f} s, all would take {:.0f} s\n", plain.pairs, plain.seconds, whole_s);
  fmt::print("verdicts that differ: {}, to reach: 0\n", plain.differ_in_verdict);
  fmt::print("gaps that differ by more than 0.001 mm: {}; greatest {:.6f} mm\n", plain.differ_in_gap,
             plain.greatest_mm);
  fmt::print("times as fast: {:.0f}, to reach: 20, aimed at: 50\n", whole_s / our_s);
}

}  // namespace
}  // namespace prismwright

int main(int count, char** words) {
  const std::size_t every = count > 1 ? std::max(1, std::atoi(words[1])) : 1;
  const std::string book =
      count > 2 ? words[2] : std::string(PRISMWRIGHT_SAMPLES) + "/first-order-group-flashing.lensbook";
  prismwright::figures(book, every);
  return 0;
}
