// Prints how fast and how exactly rays drawn at random give a lens's light. Run on a quiet machine:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_light_figures
//   (needs libembree-dev; takes some ten minutes)
//   build/bench/tests/bench/prismwright_light_figures [DEFLECTION_MM [LONGEST_RUN_S]]
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <functional>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "tests/bench/embree_tracer.h"
#include "tests/bench/light_checks.h"
#include "tests/bench/other_beams.h"

namespace prismwright::bench {
namespace {

constexpr double kWantedError = 0.005;  ///< rms over the grid, as a share of the peak
constexpr std::uint64_t kFirstRays = 4000000;

/// Seconds by the clock and of both processors together: the second does not mind what else the machine does.
struct Taken {
  double clock_s = 0;
  double processor_s = 0;
};

Taken time_of(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  const std::clock_t worked = std::clock();
  work();
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(),
          static_cast<double>(std::clock() - worked) / CLOCKS_PER_SEC};
}

void say(const std::string& what, const std::string& figure) {
  fmt::print("  {:<52} {}\n", what, figure);
  std::fflush(stdout);
}

std::string in_words(Taken taken) {
  return fmt::format("{:.2f} s ({:.2f} s of processors)", taken.clock_s, taken.processor_s);
}

/// A lens ready to be traced.
struct BenchLens {
  std::string name;
  LensPlan plan;
  std::unique_ptr<EmbreeTracer> tracer;
  TraceOrder order;
};

std::optional<BenchLens> ready(const std::string& name, const LensValues& values, double deflection_mm) {
  BenchLens lens{name, *plan_lens(values), nullptr, {}};
  BodyShop shop;
  const auto bodies = shop.make(lens.plan);
  const auto metal = make_frame(plan_frame(lens.plan));
  if (!bodies || !metal) {
    fmt::print("{}\n", bodies ? metal.problem().text : bodies.problem().text);
    return std::nullopt;
  }
  const Taken taken = time_of([&] {
    auto mesh = mesh_lens(*bodies, *metal, deflection_mm, 0.05);
    if (!mesh) return fmt::print("{}\n", mesh.problem().text), void();
    lens.tracer = std::make_unique<EmbreeTracer>(*std::move(mesh));
  });
  if (!lens.tracer) return std::nullopt;
  const LensMesh& mesh = lens.tracer->mesh();
  fmt::print("{}\n", name);
  say(fmt::format("mesh, deflection {} mm, and search tree", deflection_mm),
      fmt::format("{} triangles in {}", mesh.triangles.size(), in_words(taken)));
  say("normals, interpolated against exact",
      fmt::format("rms {:.6f} deg, most {:.5f} deg", mesh.error.normal_rms_deg, mesh.error.normal_most_deg));
  say("triangles off the surface",
      fmt::format("rms {:.5f} mm, most {:.5f} mm", mesh.error.place_rms_mm, mesh.error.place_most_mm));
  lens.order.index = values.material.effective_index();
  lens.order.absorption_per_mm = values.material.absorption_per_m / 1000;
  lens.order.grid.panels_alike = static_cast<int>(values.panels.size());
  lens.order.rays = kFirstRays;
  return lens;
}

void say_fates(const Trace& trace) {
  const TraceFates& f = trace.fates;
  const auto share = [&](double sum) { return 100 * sum / trace.rays; };
  say("out through glass / missed / metal / absorbed, %",
      fmt::format("{:.3f} / {:.3f} / {:.3f} / {:.3f}", share(f.out), share(f.missed), share(f.metal),
                  share(f.absorbed)));
  say("reflected at faces / on lamp / given up / astray, %",
      fmt::format("{:.3f} / {:.3f} / {:.4f} / {:.4f}", share(f.reflected), share(f.on_lamp), share(f.given_up),
                  share(f.astray)));
  say("check: all shares together less 1", fmt::format("{:.1e}", f.sum() / trace.rays - 1));
}

void say_field(const std::string& what, const FarFigures& f) {
  say(fmt::format("{}: on the axis", what), fmt::format("{:.1f} cd +- {:.1f}", f.axis_cd, f.axis_error_cd));
  say(fmt::format("{}: greatest cell", what),
      fmt::format("{:.1f} cd +- {:.1f} at {:g}, {:g} deg", f.peak_cd, f.peak_error_cd, f.peak_azimuth_deg,
                  f.peak_elevation_deg));
  const auto width = [](double deg) { return deg > 0 ? fmt::format("{:.3f} deg", deg) : "beyond the map"; };
  say(fmt::format("{}: width / height at half peak", what),
      fmt::format("{} / {}", width(f.half_width_deg), width(f.half_height_deg)));
  say(fmt::format("{}: standard error, rms over the map", what),
      fmt::format("{:.3f} % of axis", 100 * f.rms_error));
}

std::string errors_of(const Trace& trace) {
  const FarFigures f = figures_of(trace.all, trace.flux_lm, trace.rays);
  return fmt::format("{:.3f} % rms over the map, {:.3f} % on the axis", 100 * f.rms_error,
                     100 * f.axis_error_cd / f.axis_cd);
}

/// How many rays a wanted error takes, by what the first rays left of it: it falls as the root of their number.
double rays_needed(const std::string& what, const Trace& first, double error, Taken taken) {
  const double needed = first.rays * (error / kWantedError) * (error / kWantedError);
  const double part = needed / first.rays;
  say(fmt::format("foretold for {} % {} (as 1/sqrt N)", 100 * kWantedError, what),
      fmt::format("{:.3g} rays, {}", needed, in_words({part * taken.clock_s, part * taken.processor_s})));
  return needed;
}

/// Traces until the wanted error is reached over the map and on the axis too, as far as the first rays foretell
/// that it takes no longer than allowed.
Trace trace_to_error(const BenchLens& lens, double longest_s) {
  Trace trace(lens.order.grid);
  const Taken first = time_of([&] { trace = lens.tracer->trace(lens.order); });
  say("speed, 2 threads",
      fmt::format("{:.0f} rays/s by the clock, {:.0f} rays per processor second, {:.2f} meetings a ray",
                  trace.rays / first.clock_s, trace.rays / first.processor_s, trace.meetings / trace.rays));
  const FarFigures f = figures_of(trace.all, trace.flux_lm, trace.rays);
  say(fmt::format("{:.3g} rays give", trace.rays), errors_of(trace));
  const double most = longest_s * trace.rays / first.clock_s;
  double wanted = 0;
  for (const double needed : {rays_needed("rms over the map", trace, f.rms_error, first),
                              rays_needed("on the axis", trace, f.axis_error_cd / f.axis_cd, first)}) {
    if (needed <= most) wanted = std::max(wanted, needed);
  }
  if (wanted <= trace.rays) return trace;
  TraceOrder rest = lens.order;
  rest.rays = static_cast<std::uint64_t>(wanted - trace.rays);
  rest.seed = lens.order.seed + 1;
  const Taken then = time_of([&] { trace.add(lens.tracer->trace(rest)); });
  say(fmt::format("confirmed: {:.3g} rays really gave", trace.rays),
      fmt::format("{} in {}", errors_of(trace),
                  in_words({first.clock_s + then.clock_s, first.processor_s + then.processor_s})));
  return trace;
}

/// How far another map is from the rays' over the cells of at least a share of the peak, rms, and how much of
/// that is the rays' own noise.
std::string difference(const std::vector<double>& cd, const Trace& trace, double peak, double from_share) {
  const FarGrid& grid = trace.one_prism.grid();
  double off2 = 0, noise2 = 0, cells = 0;
  for (int at = 0; at < grid.cells(); ++at) {
    const auto cell = trace.one_prism.cell(at % grid.azimuths, at / grid.azimuths, trace.flux_lm, trace.rays);
    if (cd[at] < from_share * peak) continue;
    off2 += (cd[at] - cell.cd) * (cd[at] - cell.cd);
    noise2 += cell.error_cd * cell.error_cd;
    cells += 1;
  }
  return fmt::format("{:.3f} % of axis, the rays' noise is {:.3f} %", 100 * std::sqrt(off2 / cells) / peak,
                     100 * std::sqrt(noise2 / cells) / peak);
}

double flux_of(const FarGrid& grid, const std::function<double(int)>& cd) {
  double flux = 0;
  for (int at = 0; at < grid.cells(); ++at) flux += grid.cell_sr(at) * cd(at);
  return flux;
}

/// Times the other computations over the same map and holds them against the rays that went through one prism.
void say_others(const BenchLens& lens, const Trace& trace) {
  const FarGrid& grid = lens.order.grid;
  const FarFigures rays = figures_of(trace.one_prism, trace.flux_lm, trace.rays);
  const double rays_lm = flux_of(grid, [&](int at) {
    return trace.one_prism.cell(at % grid.azimuths, at / grid.azimuths, trace.flux_lm, trace.rays).cd;
  });
  for (const OtherBeam& other : other_beams()) {
    OtherMap map;
    const Taken taken = time_of([&] { map = other.map(lens.plan, lens.order); });
    const std::vector<double>& cd = map.cd;
    if (cd.size() != static_cast<std::size_t>(grid.cells())) {
      say(other.name + " gave no map", map.words);
      continue;
    }
    const double axis = cd[grid.cell_of({1, 0, 0})];
    say(other.name, fmt::format("{}, {}", in_words(taken), map.words));
    say(other.name + ": on the axis, and rays against it",
        fmt::format("{:.1f} cd; {:.4f} +- {:.4f}", axis, rays.axis_cd / axis, rays.axis_error_cd / axis));
    say(other.name + ": differs from the rays, rms", difference(cd, trace, rays.axis_cd, 0));
    say(other.name + ": where over half the peak", difference(cd, trace, rays.axis_cd, 0.5));
    say(other.name + ": rays' flux in the map against it",
        fmt::format("{:.5f}", rays_lm / flux_of(grid, [&](int at) { return cd[at]; })));
  }
}

void say_checks(const BenchLens& lens, const FarFigures& found) {
  say("check: straight through, closed form / traced",
      fmt::format("{:.6f} / {:.6f}", straight_through(lens.order.index),
                  traced_straight_through(*lens.tracer, lens.order)));
  say("check: glass on the axis, by absorption / planned",
      fmt::format("{:.4f} / {:.4f} mm", traced_glass_mm(*lens.tracer, lens.order),
                  lens.plan.section.find("C")->thickness_mm));
  if (lens.plan.values.brief.work == Work::belt) {
    const Section& section = lens.plan.section;
    const double closed = belt_peak_cd(*lens.tracer, lens.order, section.lowest_deg, section.highest_deg);
    say("check: axis, closed form L d (integral T cos t dz)",
        fmt::format("{:.1f} cd; rays / closed form {:.4f} +- {:.4f}", closed, found.axis_cd / closed,
                    found.axis_error_cd / closed));
  }
  const SentBack back = sent_back_cd(*lens.tracer, lens.order, kFirstRays / 2);
  say("check: axis, level rays sent back to the lamp",
      fmt::format(
          "{:.1f} cd +- {:.1f}; rays / sent back {:.4f} +- {:.4f}", back.cd, back.error_cd,
          found.axis_cd / back.cd,
          found.axis_cd / back.cd * std::hypot(found.axis_error_cd / found.axis_cd, back.error_cd / back.cd)));
}

void lens_figures(const std::string& name, const LensValues& values, double deflection_mm, double longest_s) {
  auto lens = ready(name, values, deflection_mm);
  if (!lens) return;
  fmt::print(" main branch only\n");
  const Trace trace = trace_to_error(*lens, longest_s);
  say_fates(trace);
  const FarFigures found = figures_of(trace.all, trace.flux_lm, trace.rays);
  say_field("all light", found);
  say_field("through one prism", figures_of(trace.one_prism, trace.flux_lm, trace.rays));
  say_checks(*lens, found);
  say_others(*lens, trace);
  fmt::print(" both branches, drawn by Fresnel's shares\n");
  TraceOrder both = lens->order;
  both.branches = Branches::roulette;
  const Trace drawn = lens->tracer->trace(both);
  say_fates(drawn);
  say_field("all light", figures_of(drawn.all, drawn.flux_lm, drawn.rays));
}

/// The fourth order with so many times the usual prisms in every panel, all else the same.
LensValues with_prisms(int times) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.section.refracting = divided(Division::count, 3 * times);
  values.section.upper = divided(Division::count, 4 * times);
  values.section.lower = divided(Division::count, 2 * times);
  return values;
}

/// What the map costs as the prisms grow in number: both ways by processor time, to the same error over the
/// lit part.
void cost_by_prisms(double deflection_mm) {
  fmt::print("cost by the number of prisms, fourth-order bull's-eye, 8 panels\n");
  for (const int times : {1, 2, 4, 8}) {
    const LensValues values = with_prisms(times);
    const auto lens = ready(fmt::format(" {} times the prisms", times), values, deflection_mm);
    if (!lens) continue;
    TraceOrder order = lens->order;
    order.rays = kFirstRays / 4;
    OtherMap own;
    const Taken beam = time_of([&] { own = other_beams().front().map(lens->plan, order); });
    Trace trace(order.grid);
    const Taken rays = time_of([&] { trace = lens->tracer->trace(order); });
    const FarFigures found = figures_of(trace.all, trace.flux_lm, trace.rays);
    const double axis_error = found.axis_error_cd / found.axis_cd;
    say(fmt::format("{} prisms: beam map to {} %", lens->plan.prisms.size(), 100 * kWantedError),
        fmt::format("{}; {}", in_words(beam), own.words));
    say(fmt::format("rays: {:.3g} give {:.3f} % on the axis", trace.rays, 100 * axis_error), in_words(rays));
    rays_needed("on the axis", trace, axis_error, rays);
  }
}

void lamp_figures() {
  fmt::print("bare lamps\n");
  for (const bool sphere : {false, true}) {
    BenchLamp lamp;
    lamp.sphere = sphere;
    say(fmt::format("check: {}, 10 deg about level, closed form / rays", sphere ? "sphere" : "cylinder"),
        fmt::format("{:.3f} / {:.3f} cd", bare_lamp_closed_cd(lamp), bare_lamp_cd(lamp, 20000000)));
  }
}

}  // namespace
}  // namespace prismwright::bench

int main(int count, char** words) {
  using namespace prismwright;
  const double deflection_mm = count > 1 ? std::atof(words[1]) : 0.005;
  const double longest_s = count > 2 ? std::atof(words[2]) : 300;
  const auto book =
      Lensbook::open(PRISMWRIGHT_SAMPLES "/fourth-order-bullseye.lensbook", Lensbook::Access::read_only);
  if (!book) return fmt::print("{}\n", book.problem().text), 1;
  bench::lamp_figures();
  bench::cost_by_prisms(deflection_mm);
  bench::lens_figures("fourth-order bull's-eye sample, 8 panels", book->values(), deflection_mm, longest_s);
  bench::lens_figures("sixth-order belt, 6 panels", starting_values("6", Work::belt, 6), deflection_mm,
                      longest_s);
  return 0;
}
