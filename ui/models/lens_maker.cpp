#include "ui/models/lens_maker.h"

#include <exception>
#include <utility>

#include "geometry/clearance_order.h"

namespace prismwright {
namespace {

/// How the bar is shared out: solids, frame, clearances (measured on the samples; clearances take longest).
constexpr double kSolidsTo = 0.35;
constexpr double kFrameTo = 0.45;

Problem stopped_problem() {
  return {Trouble::stopped, "stopped", "", "Stopped: solids and clearances are those of earlier values."};
}

Progress part_of(const Progress& whole, double from, double to) {
  return [whole, from, to](double share, std::string_view what) {
    return goes_on(whole, from + share * (to - from), what);
  };
}

void index_clearances(MadeLens& made) {
  const std::vector<Clearance>& all = *made.clearances;
  const auto worse = [&](std::size_t a, std::size_t b) {
    if (all[a].verdict != all[b].verdict) return all[a].verdict > all[b].verdict;
    if (rests_by_design(all[a]) != rests_by_design(all[b])) return rests_by_design(all[b]);
    return all[a].gap_mm < all[b].gap_mm;
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const std::string& mark : {all[i].first, all[i].second, std::string()}) {
      const auto [place, fresh] = made.tightest.try_emplace(mark, i);
      if (!fresh && worse(i, place->second)) place->second = i;
    }
  }
}

}  // namespace

const Clearance* MadeLens::tightest_of(const std::string& mark) const {
  const auto found = tightest.find(mark);
  return found == tightest.end() ? nullptr : &(*clearances)[found->second];
}

LensMaker::LensMaker(Listener listener) : listener_(std::move(listener)), thread_([this] { run(); }) {}

LensMaker::~LensMaker() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    wanted_job_ = 0;
    next_.reset();
  }
  wake_.notify_all();
  thread_.join();
}

int LensMaker::start(std::shared_ptr<const LensPlan> plan) {
  const std::lock_guard lock(mutex_);
  next_ = Job{++last_number_, std::move(plan)};
  wanted_job_ = last_number_;
  wake_.notify_all();
  return last_number_;
}

void LensMaker::stop() {
  const std::lock_guard lock(mutex_);
  wanted_job_ = 0;
}

void LensMaker::run() {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || next_; });
      if (closing_) return;
      job = std::move(*next_);
      next_.reset();
    }
    Done outcome;
    try {
      outcome = make(job);
    } catch (const std::exception& error) {
      outcome =
          request_problem("making", "", std::string("The solids could not be made: ") + error.what() + ".");
    }
    listener_.finished(job.number, outcome);
  }
}

Done LensMaker::make(const Job& job) {
  const Progress whole = [this, &job](double share, std::string_view what) {
    listener_.progress(job.number, share, what);
    return wanted(job.number);
  };
  Outcome<LensBodies> bodies = shop_.make(*job.plan, part_of(whole, 0, kSolidsTo));
  if (!bodies) return bodies.problem();
  if (!goes_on(whole, kSolidsTo, "frame")) return stopped_problem();
  auto made = std::make_shared<MadeLens>();
  made->plan = job.plan;
  made->bodies = std::make_shared<const LensBodies>(std::move(bodies).value());
  made->frame = std::make_shared<const FramePlan>(plan_frame(*job.plan));
  Outcome<std::vector<FrameBody>> metal = make_frame(*made->frame, part_of(whole, kSolidsTo, kFrameTo));
  if (!metal) return metal.problem();
  made->metal = std::make_shared<const std::vector<FrameBody>>(std::move(metal).value());
  made->clearances = std::make_shared<const std::vector<Clearance>>();
  if (!goes_on(whole, kFrameTo, "clearances")) return stopped_problem();
  listener_.made(job.number, made);

  auto measured = std::make_shared<MadeLens>(*made);
  Outcome<std::vector<Clearance>> clearances =
      clearance_shop_.find(*job.plan, *made->bodies, *made->frame, *made->metal, part_of(whole, kFrameTo, 1));
  if (!clearances) return clearances.problem();
  measured->clearances = std::make_shared<const std::vector<Clearance>>(std::move(clearances).value());
  measured->clearances_known = true;
  index_clearances(*measured);
  listener_.made(job.number, measured);
  return {};
}

}  // namespace prismwright
