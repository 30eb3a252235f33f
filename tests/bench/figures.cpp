// Prints each measured figure beside the one to reach. Run on a quiet machine:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_figures
//   build/bench/tests/bench/prismwright_figures
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <functional>
#include <vector>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "core/lens/quantities.h"
#include "core/optics/proof.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/exports.h"
#include "geometry/frame_bodies.h"

namespace prismwright {
namespace {

namespace fs = std::filesystem;

double seconds_of(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Spread {
  double median;
  double p99;
};

Spread spread_of(int times, const std::function<void()>& work) {
  std::vector<double> taken;
  for (int i = 0; i < times; ++i) taken.push_back(seconds_of(work));
  std::sort(taken.begin(), taken.end());
  const auto at = [&](double share) {
    return taken[static_cast<std::size_t>(share * static_cast<double>(times - 1))];
  };
  return {at(0.5), at(0.99)};
}

void say(const char* what, const std::string& figure, const char* wanted) {
  fmt::print("{:<58} {:<40} {}\n", what, figure, wanted);
}

LensValues first_order() {
  LensValues values = starting_values("1", Work::bullseye, 9);
  for (std::size_t i = 0; i < 9; ++i) {
    values.panels[i].width_deg = i % 3 == 1 ? 36 : 42;
    values.panels[i].axis_shift_deg = i % 3 == 0 ? 9 : i % 3 == 2 ? -9 : 0;
  }
  return values;
}

void section_figures() {
  LensValues values = first_order();
  for (const double bluntness : {0.0, 0.5}) {
    values.section.land_mm = values.section.gap_mm = bluntness;
    const Spread both = spread_of(300, [&] { (void)prove(*solve_section(values.section_input())); });
    say(fmt::format("section and proof, first order, lands and gaps {} mm", bluntness).c_str(),
        fmt::format("median {:.2f} ms, 99 % {:.2f} ms", 1e3 * both.median, 1e3 * both.p99), "under 5 ms");
  }
  values.section.land_mm = values.section.gap_mm = 0;
  const Proof proof = prove(*solve_section(values.section_input()), 100000);
  say("share escaped, gap 0, land 0, 100 000 elevations", fmt::format("{:g}", proof.of(Fate::escaped)), "0");
}

void lens_figures(const char* name, const LensValues& values, const char* wanted_solids,
                  const char* wanted_room) {
  const LensPlan plan = *plan_lens(values);
  const fs::path folder = fs::temp_directory_path() / "prismwright-figures";
  LensBodies bodies;
  std::vector<FrameBody> metal;
  const FramePlan frame = plan_frame(plan);
  BodyShop shop;
  const double solids_s = seconds_of([&] { bodies = *shop.make(plan); });
  const double frame_s = seconds_of([&] { metal = *make_frame(frame); });
  const double step_s = seconds_of([&] { (void)export_bodies(bodies, metal, folder.string(), {}); });
  say(fmt::format("{}: {} solids", name, bodies.prisms.size()).c_str(), fmt::format("{:.2f} s", solids_s), "");
  say(fmt::format("{}: frame solids", name).c_str(), fmt::format("{:.2f} s", frame_s), "");
  say(fmt::format("{}: solids, frame and STEP files", name).c_str(),
      fmt::format("{:.2f} s", solids_s + frame_s + step_s), wanted_solids);
  std::size_t pairs = 0;
  const double room_s = seconds_of([&] { pairs = find_clearances(plan, bodies, frame, metal)->size(); });
  say(fmt::format("{}: clearances of {} pairs", name, pairs).c_str(), fmt::format("{:.2f} s", room_s),
      wanted_room);
  fs::remove_all(folder);
}

void book_figures() {
  const fs::path path = fs::temp_directory_path() / "prismwright-figures.lensbook";
  fs::remove(path);
  LensValues values = starting_values("4", Work::bullseye, 8);
  auto book = Lensbook::create(path.string(), values);
  const Spread edit = spread_of(100, [&] {
    values.section.edge_mm += 0.01;
    (void)book->edit(values, "edge");
  });
  say("one edit of a lensbook, on disk",
      fmt::format("median {:.2f} ms, 99 % {:.2f} ms", 1e3 * edit.median, 1e3 * edit.p99), "");
  fs::remove(path);
}

}  // namespace
}  // namespace prismwright

int main() {
  using namespace prismwright;
  say("what", "measured", "to reach");
  section_figures();
  book_figures();
  lens_figures("sixth-order belt, 6 panels", starting_values("6", Work::belt, 6), "", "");
  lens_figures("fourth-order bull's-eye, 8 panels", starting_values("4", Work::bullseye, 8), "under 20 s", "");
  lens_figures("first-order group-flashing, 9 panels", first_order(), "", "");
  return 0;
}
