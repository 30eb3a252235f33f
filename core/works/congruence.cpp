#include "core/works/congruence.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include "core/works/turned_solid.h"

namespace prismwright {
namespace {

/// Sorts the prisms of a plan into masters, one after the other.
class MasterSorter {
 public:
  explicit MasterSorter(const LensPlan& plan)
      : plan_(plan), share_turned_(plan.values.works.half_turn == HalfTurn::shared) {}

  std::vector<Master> sorted() {
    for (std::size_t i = 0; i < plan_.prisms.size(); ++i) add(i);
    name_all();
    return std::move(masters_);
  }

 private:
  struct Place {
    std::size_t master = 0;
    bool turned = false;
  };

  void add(std::size_t index) {
    const PlannedPrism& prism = plan_.prisms[index];
    const auto known = by_key_.find(prism.shape_key);
    const Place place = known == by_key_.end() ? place_new_shape(index) : known->second;
    by_key_.emplace(prism.shape_key, place);
    masters_[place.master].uses.push_back({prism.mark, place.turned});
  }

  Place place_new_shape(std::size_t index) {
    TurnedSolid solid = turned_solid(plan_.prisms[index]);
    std::optional<std::size_t> twin;
    std::optional<std::size_t> image;
    for (std::size_t m = 0; m < masters_.size(); ++m) {
      const Alike alike = how_alike(solids_[m], solid);
      if (alike == Alike::same) return {m, false};
      if (alike == Alike::turned && !twin) twin = m;
      if (alike == Alike::mirrored && !image) image = m;
    }
    if (twin && share_turned_) return {*twin, true};
    Master master;
    master.prism = index;
    masters_.push_back(std::move(master));
    solids_.push_back(std::move(solid));
    relations_.push_back({image, twin});
    return {masters_.size() - 1, false};
  }

  void name_all() {
    std::map<std::string, std::set<std::size_t>> masters_of_piece;
    for (std::size_t m = 0; m < masters_.size(); ++m) {
      for (const MasterUse& use : masters_[m].uses) masters_of_piece[piece_of_mark(use.mark)].insert(m);
    }
    for (Master& master : masters_) {
      const PlannedPrism& first = plan_.prisms[master.prism];
      master.name = piece_of_mark(first.mark);
      if (masters_of_piece[master.name].size() > 1) master.name += fmt::format("-P{:02}", first.panel);
    }
    for (std::size_t m = 0; m < masters_.size(); ++m) {
      if (relations_[m].image) masters_[m].mirror_of = masters_[*relations_[m].image].name;
      if (relations_[m].twin) masters_[m].turned_twin_of = masters_[*relations_[m].twin].name;
    }
  }

  struct Relations {
    std::optional<std::size_t> image;
    std::optional<std::size_t> twin;
  };

  const LensPlan& plan_;
  bool share_turned_;
  std::vector<Master> masters_;
  std::vector<TurnedSolid> solids_;
  std::vector<Relations> relations_;
  std::unordered_map<std::string, Place> by_key_;
};

}  // namespace

std::vector<Master> masters_of(const LensPlan& plan) { return MasterSorter(plan).sorted(); }

std::string piece_of_mark(std::string_view mark) {
  const std::size_t dash = mark.find('-');
  return std::string(dash == std::string_view::npos ? mark : mark.substr(dash + 1));
}

const Master* master_of_mark(std::span<const Master> masters, std::string_view mark) {
  for (const Master& master : masters) {
    for (const MasterUse& use : master.uses) {
      if (use.mark == mark) return &master;
    }
  }
  return nullptr;
}

const Master* find_master(std::span<const Master> masters, std::string_view name) {
  const auto found =
      std::find_if(masters.begin(), masters.end(), [&](const Master& m) { return m.name == name; });
  return found == masters.end() ? nullptr : &*found;
}

int half_turn_saves(std::span<const Master> masters) {
  return static_cast<int>(
      std::count_if(masters.begin(), masters.end(), [](const Master& m) { return !m.turned_twin_of.empty(); }));
}

}  // namespace prismwright
