#include "geometry/gap_finder.h"

#include <algorithm>
#include <atomic>
#include <future>
#include <mutex>
#include <new>
#include <optional>

#include <fmt/format.h>
#include <Standard_Failure.hxx>
#include <TopLoc_Location.hxx>

#include "geometry/likeness.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

// One piece of work, in the frame in which its first part was made.
struct Job {
  TopoDS_Shape first;
  TopoDS_Shape second;
  const RibPlan* rib = nullptr;  // measured by its plan; its side and place may be those of the mirror image
  RibPlan mirrored_rib;
  gp_Trsf rib_place;  // from the rib's own frame
  std::string mark;
  GapsFound found;
};

// How a wanted pair is had from a job.
struct Use {
  std::size_t job = 0;
  gp_Trsf to_lens;
  bool mirrored = false;
};

class JobBook {
 public:
  explicit JobBook(const std::vector<GapWanted>& wanted) {
    for (const GapWanted& pair : wanted) uses_.push_back(use_of(pair));
  }

  std::vector<Job>& jobs() { return jobs_; }
  [[nodiscard]] const std::vector<Use>& uses() const { return uses_; }

 private:
  Use use_of(const GapWanted& pair) {
    Use use;
    use.to_lens = pair.first.Location().Transformation();
    gp_Trsf relative = use.to_lens.Inverted();
    Job job{as_made(pair.first), {}, nullptr, {}, {}, pair.mark, {}};
    std::string key = solid_word(pair.first) + " ";
    if (pair.rib && is_as_planned(pair)) {
      relative.Multiply(rib_turn(*pair.rib));
      Side side = pair.rib->side;
      use.mirrored = may_mirror(job.first, side, relative);
      if (use.mirrored) {
        side = Side::clockwise;
        relative = turned_other_way(relative);
        job.mirrored_rib = *pair.rib;
        job.mirrored_rib.side = side;
      }
      key += fmt::format("{} {} ", pair.rib->shape_key, static_cast<int>(side));
      job.rib = pair.rib;
      job.rib_place = relative;
    } else {
      relative.Multiply(pair.second.Location().Transformation());
      if (pair.round && upright_turn(relative).is_turn) relative = gp_Trsf();
      key += solid_word(pair.second) + " ";
      job.second = as_made(pair.second).Moved(TopLoc_Location(relative));
    }
    key += place_word(relative);
    const auto [known, fresh] = by_key_.emplace(key, jobs_.size());
    if (fresh) jobs_.push_back(std::move(job));
    use.job = known->second;
    return use;
  }

  bool is_as_planned(const GapWanted& pair) {
    const auto key = pair.rib->mark;
    const auto known = planned_.find(key);
    if (known != planned_.end()) return known->second;
    return planned_[key] = stands_as_planned(pair.second, *pair.rib);
  }

  // A prism that is its own mirror image has its left rib's gaps from its right rib.
  bool may_mirror(const TopoDS_Shape& prism, Side side, const gp_Trsf& relative) {
    if (side != Side::anticlockwise || !upright_turn(relative).is_turn) return false;
    const std::string key = solid_word(prism);
    const auto known = symmetric_.find(key);
    if (known != symmetric_.end()) return known->second;
    return symmetric_[key] = mirrors_itself(prism);
  }

  static gp_Trsf turned_other_way(const gp_Trsf& relative) {
    gp_Trsf turn;
    turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), -upright_turn(relative).angle);
    return turn;
  }

  std::vector<Job> jobs_;
  std::vector<Use> uses_;
  std::map<std::string, std::size_t> by_key_;
  std::map<std::string, bool> planned_;
  std::map<std::string, bool> symmetric_;
};

SolidGap moved(SolidGap gap, const gp_Trsf& place) {
  gap.first_point.Transform(place);
  gap.second_point.Transform(place);
  return gap;
}

void work_out(Job& job) {
  if (!job.rib) {
    job.found.side = gap_between(job.first, job.second);
    return;
  }
  const RibPlan& rib = job.mirrored_rib.outline.empty() ? *job.rib : job.mirrored_rib;
  const RibGaps gaps = RibRoom(rib).gaps_to(job.first.Moved(TopLoc_Location(job.rib_place.Inverted())));
  if (gaps.floor) job.found.end = moved(*gaps.floor, job.rib_place);
  if (gaps.walls) job.found.side = moved(*gaps.walls, job.rib_place);
}

// Jobs that two threads take from one list.
class TwoHands {
 public:
  TwoHands(std::vector<Job>& jobs, const Progress& progress) : jobs_(jobs), progress_(progress) {}

  std::optional<Problem> run() {
    auto helper = std::async(std::launch::async, [this] { work(); });
    work();
    helper.get();
    return trouble_;
  }

 private:
  void work() {
    for (std::size_t i = next_++; i < jobs_.size() && !over_; i = next_++) {
      if (!report(jobs_[i])) return;
      try {
        work_out(jobs_[i]);
      } catch (const Standard_Failure& failure) {
        give_up(jobs_[i], failure.GetMessageString());
      } catch (const std::bad_alloc&) {
        give_up(jobs_[i], "memory ran out");
      }
    }
  }

  bool report(const Job& job) {
    const std::lock_guard<std::mutex> lock(guard_);
    if (!over_ &&
        !goes_on(progress_, static_cast<double>(begun_) / static_cast<double>(jobs_.size()), job.mark)) {
      over_ = true;
      trouble_ = Problem{Trouble::stopped, "stopped", job.mark,
                         "The clearances were stopped before all were measured. Start them again to go on."};
    }
    ++begun_;
    return !over_;
  }

  void give_up(const Job& job, const char* why) {
    const std::lock_guard<std::mutex> lock(guard_);
    over_ = true;
    trouble_ =
        request_problem("clearance", job.mark,
                        fmt::format("The room round {} could not be measured ({}). Change the setting gap "
                                    "or the division of the zones a little.",
                                    job.mark, why));
  }

  std::vector<Job>& jobs_;
  const Progress& progress_;
  std::atomic<std::size_t> next_{0};
  std::atomic<bool> over_{false};
  std::mutex guard_;
  std::size_t begun_ = 0;
  std::optional<Problem> trouble_;
};

std::optional<SolidGap> placed(const std::optional<SolidGap>& gap, const Use& use) {
  if (!gap) return gap;
  SolidGap here = *gap;
  if (use.mirrored) {
    here.first_point.SetY(-here.first_point.Y());
    here.second_point.SetY(-here.second_point.Y());
  }
  return moved(here, use.to_lens);
}

}  // namespace

Outcome<std::vector<GapsFound>> find_gaps(const std::vector<GapWanted>& wanted, const Progress& progress) {
  JobBook book(wanted);
  if (auto trouble = TwoHands(book.jobs(), progress).run()) return *trouble;
  std::vector<GapsFound> found;
  for (const Use& use : book.uses()) {
    const GapsFound& at_home = book.jobs()[use.job].found;
    found.push_back({placed(at_home.end, use), placed(at_home.side, use)});
  }
  return found;
}

}  // namespace prismwright
