#include "core/works/load_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "core/base/angle.h"
#include "core/works/load_bounds.h"
#include "core/works/load_stands.h"
#include "core/works/shelf_fill.h"

namespace prismwright {

namespace {

constexpr std::size_t kMostHeights = 8;  ///< of a shelf that are tried
constexpr double kPercent = 100;
constexpr double kMm3PerCm3 = 1000;

/// Plans load after load from what is still to be cast.
class LoadPlanner {
 public:
  LoadPlanner(const std::vector<LoadPiece>& pieces, const WorksSettings& works)
      : pieces_(pieces), works_(works), radius_(works.vessel_diameter_mm / 2 - works.load_spacing_mm) {
    for (const LoadPiece& piece : pieces) left_.push_back(piece.count);
  }

  LoadPlan plan() {
    set_unfit_aside();
    std::vector<LoadPiece> fit = pieces_;
    for (const UnfitPiece& unfit : plan_.unfit) fit[unfit.piece].count = 0;
    std::erase_if(fit, [](const LoadPiece& piece) { return piece.count == 0; });
    plan_.least_loads = least_loads(fit, works_);
    while (const auto leader = thickest_left()) {
      const PlannedLoad load = next_load(*leader);
      if (load.places.empty()) {  // fits but for the last digits
        set_aside(*leader);
        continue;
      }
      for (int times = repeats_of(load, moulds_with(*leader).size()); times > 0; --times) keep(load);
    }
    plan_.masses = masses_for(volume_, works_);
    return std::move(plan_);
  }

 private:
  void set_unfit_aside() {
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      if (left_[i] > 0 && stands_of(pieces_[i], works_).empty()) set_aside(i);
    }
  }
  void set_aside(std::size_t i) {
    plan_.unfit.push_back(unfit_piece(pieces_[i], i, works_));
    left_[i] = 0;
  }

  [[nodiscard]] std::optional<std::size_t> thickest_left() const {
    std::optional<std::size_t> thickest;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      if (left_[i] > 0 && (!thickest || pieces_[i].thickest_mm > pieces_[*thickest].thickest_mm)) thickest = i;
    }
    return thickest;
  }

  /// Moulds that may stand in a load with this one, the leader's first.
  [[nodiscard]] std::vector<std::size_t> moulds_with(std::size_t leader) const {
    std::vector<std::size_t> moulds;
    const auto add = [&](std::size_t i) {
      const int most = std::min({left_[i], pieces_[i].moulds, std::max(1, most_moulds(pieces_[i], works_))});
      moulds.insert(moulds.end(), static_cast<std::size_t>(most), i);
    };
    add(leader);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      if (i == leader || left_[i] == 0) continue;
      if (pieces_[leader].thickest_mm <= works_.thickness_ratio * pieces_[i].thickest_mm) add(i);
    }
    return moulds;
  }

  [[nodiscard]] PlannedLoad next_load(std::size_t leader) const {
    PlannedLoad load;
    std::vector<std::size_t> moulds = moulds_with(leader);
    double foot = 0;
    while (!moulds.empty()) {
      const Shelf shelf = best_shelf(moulds, works_.vessel_height_mm - foot, load.places.empty());
      if (shelf.places.empty()) break;
      load.shelf_foot_mm.push_back(foot);
      for (LoadPlace place : shelf.places) {
        place.shelf = static_cast<int>(load.shelf_foot_mm.size()) - 1;
        place.z_mm = foot;
        moulds.erase(std::ranges::find(moulds, place.piece));
        load.places.push_back(place);
      }
      foot += shelf.height + works_.load_spacing_mm;
    }
    sum_up(load);
    return load;
  }

  struct Shelf {
    double height = 0;
    double worth = 0;  ///< for each mm of height
    std::vector<LoadPlace> places;
  };

  [[nodiscard]] Shelf best_shelf(const std::vector<std::size_t>& moulds, double room, bool with_leader) const {
    Shelf best;
    for (const double height : heights_for(moulds, room)) {
      Shelf shelf = shelf_of(moulds, height, with_leader);
      if (!shelf.places.empty() && shelf.worth > best.worth) best = std::move(shelf);
    }
    return best;
  }

  /// Heights worth trying: those at which moulds stand, thinned out evenly where they are many.
  [[nodiscard]] std::vector<double> heights_for(const std::vector<std::size_t>& moulds, double room) const {
    std::set<double> all;
    for (const std::size_t i : std::set<std::size_t>(moulds.begin(), moulds.end()))
      for (const Stand& stand : stands_of(pieces_[i], works_))
        if (stand.high_mm <= room) all.insert(stand.high_mm);
    const std::vector<double> sorted(all.begin(), all.end());
    if (sorted.size() <= kMostHeights) return sorted;
    std::vector<double> some;
    for (std::size_t k = 1; k <= kMostHeights; ++k)
      some.push_back(sorted[k * sorted.size() / kMostHeights - 1]);
    return some;
  }

  [[nodiscard]] Shelf shelf_of(const std::vector<std::size_t>& moulds, double height, bool with_leader) const {
    std::vector<FloorItem> items;
    std::vector<LoadPlace> stood;
    for (const std::size_t i : moulds) {
      const auto stand = least_ground(stands_of(pieces_[i], works_), height);
      if (!stand) {
        if (with_leader && items.empty()) return {};
        continue;
      }
      items.push_back({stand->long_mm, stand->short_mm, worth_of(i), rounds_left(i)});
      LoadPlace place;
      place.piece = i;
      place.high_mm = stand->high_mm;
      place.upward = stand->upward;
      stood.push_back(place);
    }
    Shelf shelf;
    for (const FloorSpot& spot : fill_floor(items, radius_, works_.load_spacing_mm)) {
      LoadPlace place = stood[spot.item];
      place.x_mm = spot.x_mm;
      place.y_mm = spot.y_mm;
      place.wide_mm = spot.wide_mm;
      place.long_mm = spot.long_mm;
      place.turned = spot.long_mm > spot.wide_mm;
      shelf.height = std::max(shelf.height, place.high_mm);
      shelf.worth += items[spot.item].value;
      shelf.places.push_back(place);
    }
    shelf.worth /= shelf.height + works_.load_spacing_mm;
    return shelf;
  }

  /// Turns that the moulds of a kind still have to make.
  [[nodiscard]] double rounds_left(std::size_t i) const {
    return std::ceil(static_cast<double>(left_[i]) / pieces_[i].moulds);
  }
  /// Room is scarce, and the more so are the turns of a mould that has many castings to make.
  [[nodiscard]] double worth_of(std::size_t i) const {
    const MouldBox& box = pieces_[i].mould;
    return box.length_mm * box.depth_mm * box.height_mm * rounds_left(i) * rounds_left(i);
  }

  void sum_up(PlannedLoad& load) const {
    double castings = 0;
    double moulds = 0;
    for (const LoadPlace& place : load.places) {
      const LoadPiece& piece = pieces_[place.piece];
      castings += piece.casting_mm3;
      moulds += piece.mould.length_mm * piece.mould.depth_mm * piece.mould.height_mm;
      load.thickest_mm = std::max(load.thickest_mm, piece.thickest_mm);
      load.thinnest_mm =
          load.thinnest_mm > 0 ? std::min(load.thinnest_mm, piece.thickest_mm) : piece.thickest_mm;
    }
    load.masses = masses_for(castings, works_);
    const double across = works_.vessel_diameter_mm;
    load.filled_share = moulds / (kPi * across * across / 4 * works_.vessel_height_mm);
  }

  /// How often the very same load comes next: while it takes in all that may stand in it, and that stays the
  /// same. Where moulds are left out, the next load is theirs first.
  [[nodiscard]] int repeats_of(const PlannedLoad& load, std::size_t moulds) const {
    if (load.places.size() < moulds) return 1;
    int times = 1;
    while (std::ranges::all_of(load.places, [&](const LoadPlace& place) {
      const int used = load.count_of(place.piece);
      return left_[place.piece] - times * used >= used;
    }))
      ++times;
    return times;
  }

  void keep(const PlannedLoad& load) {
    for (const LoadPlace& place : load.places) {
      --left_[place.piece];
      ++plan_.castings;
      volume_ += pieces_[place.piece].casting_mm3;
    }
    plan_.loads.push_back(load);
  }

  const std::vector<LoadPiece>& pieces_;
  const WorksSettings& works_;
  double radius_;
  std::vector<int> left_;
  LoadPlan plan_;
  double volume_ = 0;
};

Done check_piece(const LoadPiece& piece) {
  const auto refuse = [&](const std::string& what) {
    return request_problem("load.piece", piece.name, fmt::format("{}: {}", piece.name, what));
  };
  if (piece.count < 0)
    return refuse(fmt::format("{} castings cannot be planned. Ask for none or more", piece.count));
  if (piece.moulds < 1)
    return refuse(fmt::format("there are {} moulds of it. Make one at least before it is cast", piece.moulds));
  for (const auto& [what, size] :
       {std::pair{"mould's length", piece.mould.length_mm}, std::pair{"mould's depth", piece.mould.depth_mm},
        std::pair{"mould's height", piece.mould.height_mm}, std::pair{"thickest section", piece.thickest_mm},
        std::pair{"casting's volume", piece.casting_mm3}}) {
    if (!std::isfinite(size) || size <= 0)
      return refuse(fmt::format("the {} is {:g}; it must be more than 0. Check the prism's size", what, size));
  }
  return {};
}

}  // namespace

MouldBox mould_box(const PrismSize& prism, double wall_mm) {
  return {prism.length_mm + 2 * wall_mm, prism.depth_mm + 2 * wall_mm, prism.height_mm + 2 * wall_mm};
}

std::string way_up_note(const std::vector<LoadPiece>& pieces) {
  const auto wanted = std::ranges::count_if(pieces, [](const LoadPiece& piece) { return piece.count > 0; });
  const auto guessed = std::ranges::count_if(
      pieces, [](const LoadPiece& piece) { return piece.count > 0 && piece.any_side_up; });
  if (wanted == 0) return "";
  if (guessed == 0) return "Every mould stands with its gate up, as its own plan has it.";
  return fmt::format(
      "{} of {} kinds of mould are not worked out: their boxes are guessed from the prisms, and since it "
      "is not known where their gates are they are laid whichever way fits. Work the moulds out before a load "
      "is filled.",
      guessed, wanted);
}

const char* name_of(Upward upward) {
  switch (upward) {
    case Upward::height:
      return "standing";
    case Upward::depth:
      return "on its back";
    case Upward::length:
      return "on end";
  }
  return "standing";
}

int PlannedLoad::count_of(std::size_t piece) const {
  return static_cast<int>(std::ranges::count(places, piece, &LoadPlace::piece));
}

LoadMasses masses_for(double castings_mm3, const WorksSettings& works) {
  LoadMasses masses;
  masses.castings_mm3 = castings_mm3;
  masses.resin_g =
      castings_mm3 / kMm3PerCm3 * (1 + works.resin_head_percent / kPercent) * works.resin_density_g_cm3;
  masses.initiator_g = masses.resin_g * works.initiator_percent / kPercent;
  masses.tint_g = masses.resin_g * works.tint_percent / kPercent;
  return masses;
}

Outcome<LoadPlan> plan_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  for (const LoadPiece& piece : pieces)
    if (const Done sound = check_piece(piece); !sound) return sound.problem();
  return LoadPlanner(pieces, works).plan();
}

}  // namespace prismwright
