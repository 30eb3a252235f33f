#include "core/light/flux_budget.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr int kSets = 4;
constexpr long kBlock = 500;

/// Books of one block of rays.
struct Books {
  std::array<double, kLightFates> lm{};
  std::map<std::string, ZoneFlux> zones;

  void add(const Books& other) {
    for (std::size_t i = 0; i < lm.size(); ++i) lm[i] += other.lm[i];
    for (const auto& [mark, flux] : other.zones) {
      ZoneFlux& own = zones[mark];
      own.zone = mark;
      own.level_lm += flux.level_lm;
      own.stray_lm += flux.stray_lm;
    }
  }
};

class Keeper {
 public:
  explicit Keeper(const LampBody& lamp) : lamp_(lamp) {}

  void book(const PathFinder& finder, const SpaceRay& ray, double lm, Books& books) const {
    const auto put = [&](LightFate fate, double part) { books.lm[static_cast<std::size_t>(fate)] += part; };
    if (lamp_.meet(ray)) return put(LightFate::lamp, lm);
    const LightPath path = finder.follow(ray);
    put(LightFate::reflected, lm * path.reflected);
    put(LightFate::absorbed, lm * path.absorbed);
    const double left = lm * path.through;
    if (path.end == PathEnd::stopped) return put(LightFate::metal, left);
    if (path.end == PathEnd::trapped) return put(LightFate::absorbed, left);
    const bool up = path.last.along.z >= 0;
    if (path.prisms == 0) return put(up ? LightFate::missed_up : LightFate::missed_down, left);
    put(path.own_way ? LightFate::level : up ? LightFate::stray_up : LightFate::stray_down, left);
    ZoneFlux& zone = books.zones[path.body->zone()];
    (path.own_way ? zone.level_lm : zone.stray_lm) += left;
  }

 private:
  const LampBody& lamp_;
};

FluxBudget closed(const std::vector<Books>& sets, double flux_lm, long rays) {
  FluxBudget budget;
  budget.flux_lm = flux_lm;
  budget.rays = rays;
  Books all;
  for (const Books& set : sets) all.add(set);
  for (std::size_t i = 0; i < all.lm.size(); ++i) {
    budget.lm[i] = all.lm[i];
    double squares = 0;
    for (const Books& set : sets) squares += std::pow(set.lm[i] * kSets - all.lm[i], 2);
    budget.error_lm[i] = std::sqrt(squares / (kSets * (kSets - 1.0)));
  }
  for (const auto& [mark, zone] : all.zones) budget.zones.push_back(zone);
  return budget;
}

}  // namespace

std::string_view name_of(LightFate fate) {
  switch (fate) {
    case LightFate::level:
      return "level";
    case LightFate::stray_up:
      return "stray up";
    case LightFate::stray_down:
      return "stray down";
    case LightFate::reflected:
      return "reflected back";
    case LightFate::absorbed:
      return "absorbed";
    case LightFate::metal:
      return "stopped by metal";
    case LightFate::lamp:
      return "stopped by a lamp";
    case LightFate::missed_up:
      return "missed, up";
    case LightFate::missed_down:
      return "missed, down";
  }
  return "";
}

Outcome<FluxBudget> flux_budget(const LightLens& lens, const LampBody& lamp, const BudgetRequest& request,
                                const Progress& progress) {
  const Keeper keeper(lamp);
  const long blocks = std::max(1L, (request.rays / kSets + kBlock - 1) / kBlock);
  const double ray_lm = lamp.flux_lm() / static_cast<double>(kSets * blocks * kBlock);
  std::vector<Books> sets;
  for (int set = 0; set < kSets; ++set) {
    if (!goes_on(progress, static_cast<double>(set) / kSets, "flux"))
      return Problem{Trouble::stopped, "stopped", "light", "The flux budget was stopped."};
    std::vector<Books> parts(static_cast<std::size_t>(blocks));
    tbb::parallel_for(0L, blocks, [&](long b) {
      // Drawn at random: a regular sequence of four numbers favours some zones by some hundredths.
      std::mt19937_64 random(static_cast<std::uint64_t>(set) * 1000003 + static_cast<std::uint64_t>(b));
      std::uniform_real_distribution<double> even(0, 1);
      for (const BeamColour& colour : request.colours) {
        const PathFinder finder(lens, colour.glass);
        for (long i = b * kBlock; i < (b + 1) * kBlock; ++i) {
          const std::array<double, 4> numbers{even(random), even(random), even(random), even(random)};
          keeper.book(finder, lamp.ray(numbers), ray_lm * colour.weight, parts[static_cast<std::size_t>(b)]);
        }
      }
    });
    Books sum;
    for (const Books& part : parts) sum.add(part);
    sets.push_back(std::move(sum));
  }
  return closed(sets, lamp.flux_lm(), kSets * blocks * kBlock);
}

}  // namespace prismwright
