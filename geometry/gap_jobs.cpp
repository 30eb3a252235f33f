#include "geometry/gap_jobs.h"

#include <utility>

#include <fmt/format.h>
#include <TopLoc_Location.hxx>

#include "geometry/likeness.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

std::optional<SolidGap> moved(std::optional<SolidGap> gap, const gp_Trsf& place) {
  if (!gap) return gap;
  gap->first_point.Transform(place);
  gap->second_point.Transform(place);
  return gap;
}

std::optional<SolidGap> mirrored(std::optional<SolidGap> gap) {
  if (!gap) return gap;
  gap->first_point.SetY(-gap->first_point.Y());
  gap->second_point.SetY(-gap->second_point.Y());
  return gap;
}

TopoDS_Shape placed(const TopoDS_Shape& made, const gp_Trsf& place) {
  return made.Moved(TopLoc_Location(place));
}

}  // namespace

GapJobs::GapJobs(const std::vector<GapWanted>& wanted) {
  for (const GapWanted& pair : wanted) uses_.push_back(use_of(pair));
}

std::vector<GapsFound> GapJobs::results() const {
  std::vector<GapsFound> all;
  for (const Use& use : uses_) {
    GapsFound found = jobs_[use.job].found;
    if (use.mirrored) found = {mirrored(found.end), mirrored(found.side)};
    all.push_back({moved(found.end, use.to_lens), moved(found.side, use.to_lens)});
  }
  return all;
}

GapJobs::Use GapJobs::use_of(const GapWanted& pair) {
  Use use;
  use.to_lens = pair.first.Location().Transformation();
  if (pair.rib && is_as_planned(pair)) {
    use_rib(pair, use);
  } else if (pair.turned) {
    use_turned(pair, use);
  } else {
    use_kernel(pair, use);
  }
  return use;
}

// A prism that is its own mirror image has its left rib's gaps from its right rib.
void GapJobs::use_rib(const GapWanted& pair, Use& use) {
  const TopoDS_Shape prism = as_made(pair.first);
  gp_Trsf rib_place = use.to_lens.Inverted() * rib_turn(*pair.rib);
  RibPlan rib = *pair.rib;
  const UprightTurn turn = upright_turn(rib_place);
  use.mirrored = rib.side == Side::anticlockwise && turn.is_turn && is_symmetric(prism);
  if (use.mirrored) {
    rib.side = Side::clockwise;
    rib_place = turn_about_lens(-degrees(turn.angle));
  }
  const auto room = room_of(rib);
  const std::string key =
      fmt::format("rib {} {} {}", solid_word(prism), fmt::ptr(room.get()), place_word(rib_place));
  use.job = job_for(key, pair.mark, [room, prism, rib_place] {
    const RibGaps gaps = room->gaps_to(placed(prism, rib_place.Inverted()));
    return GapsFound{moved(gaps.floor, rib_place), moved(gaps.walls, rib_place)};
  });
}

void GapJobs::use_turned(const GapWanted& pair, Use& use) {
  const TopoDS_Shape prism = as_made(pair.first);
  const std::shared_ptr<const TurnedPart> part = pair.turned;
  gp_Trsf in_part = part->to_lens().Inverted() * use.to_lens;
  // A round part looks the same from wherever the prism stands.
  if (part->is_round() && upright_turn(in_part).is_turn) in_part = gp_Trsf();
  const std::string key =
      fmt::format("turned {} {} {}", solid_word(prism), solid_word(pair.second), place_word(in_part));
  use.job = job_for(key, pair.mark, [part, prism, in_part] {
    const TopoDS_Shape first = placed(prism, in_part);
    auto gap = part->gap_from(first);
    if (!gap) gap = gap_between(first, part->solid());
    return GapsFound{std::nullopt, moved(gap, in_part.Inverted())};
  });
}

void GapJobs::use_kernel(const GapWanted& pair, Use& use) {
  const TopoDS_Shape first = as_made(pair.first);
  const gp_Trsf relative = use.to_lens.Inverted() * pair.second.Location().Transformation();
  const TopoDS_Shape second = placed(as_made(pair.second), relative);
  const std::string key =
      fmt::format("kernel {} {} {}", solid_word(first), solid_word(second), place_word(relative));
  use.job = job_for(key, pair.mark, [first, second] {
    return GapsFound{std::nullopt, gap_between(first, second)};
  });
}

std::size_t GapJobs::job_for(const std::string& key, const std::string& mark,
                             std::function<GapsFound()> measure) {
  const auto [known, fresh] = by_key_.emplace(key, jobs_.size());
  if (fresh) jobs_.push_back({mark, std::move(measure), {}});
  return known->second;
}

bool GapJobs::is_as_planned(const GapWanted& pair) {
  const auto [known, fresh] = planned_.emplace(pair.rib->mark, false);
  if (fresh) known->second = stands_as_planned(pair.second, *pair.rib);
  return known->second;
}

bool GapJobs::is_symmetric(const TopoDS_Shape& made) {
  const auto [known, fresh] = symmetric_.emplace(solid_word(made), false);
  if (fresh) known->second = mirrors_itself(made);
  return known->second;
}

std::shared_ptr<const RibRoom> GapJobs::room_of(RibPlan rib) {
  auto& room = rooms_[fmt::format("{} {}", rib.shape_key, static_cast<int>(rib.side))];
  if (!room) room = std::make_shared<RibRoom>(std::move(rib));
  return room;
}

}  // namespace prismwright
