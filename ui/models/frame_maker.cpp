#include "ui/models/frame_maker.h"

#include <exception>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"
#include "ui/models/window_progress.h"

namespace prismwright {
namespace {

/// How the bar is shared out: sheets, fit-up, door.
constexpr double kNestTo = 0.1;
constexpr double kFitTo = 0.3;

Progress part_of(const Progress& whole, double from, double to) {
  return [whole, from, to](double share, std::string_view what) {
    return goes_on(whole, from + share * (to - from), what);
  };
}

/// Keeps what a piece of work gives, or the sentence that says why it gives nothing.
template <class Work, class Result>
void keep(Work&& work, std::shared_ptr<const Result>& kept, QString& reason) {
  try {
    auto outcome = work();
    if (outcome)
      kept = std::make_shared<const Result>(std::move(outcome).value());
    else
      reason = sentence_of(outcome.problem());
  } catch (const std::exception& error) {
    reason = FrameMaker::tr("It could not be worked out: %1.").arg(QString::fromUtf8(error.what()));
  }
}

void sweep(FrameResults& results, const Progress& progress) {
  const MadeLens& made = *results.made;
  std::shared_ptr<const std::optional<DoorSweep>> swept;
  keep([&] { return sweep_door(*made.plan, *made.bodies, *made.frame, *made.metal, progress); }, swept,
       results.no_door);
  if (swept && *swept) results.door = std::shared_ptr<const DoorSweep>(swept, &**swept);
}

}  // namespace

FrameMaker::FrameMaker(Workbench* bench, QObject* parent)
    : QObject(parent), bench_(bench), thread_(std::make_unique<WorkThread>()) {
  connect(bench_, &Workbench::bookChanged, this, [this] {
    thread_->stop();
    job_ = 0;
    halted_ = complete_ = false;
    results_ = {};
    follow();
  });
  connect(bench_, &Workbench::madeChanged, this, &FrameMaker::follow);
  connect(bench_, &Workbench::makingFinished, this, &FrameMaker::follow);
}

FrameMaker::~FrameMaker() { thread_.reset(); }

bool FrameMaker::isStale() const {
  return !results_.made || !complete_ || results_.made != bench_->made() || bench_->madeIsStale();
}

void FrameMaker::setWatched(bool watched) {
  watched_ = watched;
  follow();
}

/// Waits for the clearances: solids and work that compete for the same processors are both late.
void FrameMaker::follow() {
  const auto made = bench_->hasBook() ? bench_->made() : nullptr;
  const bool of_these = made && results_.made == made;
  if (job_ != 0 && (!made || bench_->madeIsStale() || !of_these)) {
    thread_->stop();
    job_ = 0;
  }
  if (made != results_.made) halted_ = false;
  const bool ready = made && !bench_->madeIsStale() && !bench_->isMaking();
  if (watched_ && ready && !halted_ && job_ == 0 && !(of_these && complete_)) return start();
  emit changed();
}

void FrameMaker::start() {
  const auto made = bench_->made();
  if (!made || bench_->madeIsStale()) return;
  halted_ = complete_ = false;
  // What was known of the very same solids stays until it is known again.
  if (results_.made != made) results_ = {};
  results_.made = made;
  job_ = thread_->start([this, made](int job, const WorkThread::Wanted& wanted) { work(job, made, wanted); });
  emit progress(0, tr("sheets"));
  emit changed();
}

void FrameMaker::stop() {
  if (job_ == 0) return;
  thread_->stop();
  job_ = 0;
  halted_ = true;
  emit changed();
}

void FrameMaker::work(int job, const std::shared_ptr<const MadeLens>& made, const WorkThread::Wanted& wanted) {
  const Progress whole = window_progress(
      this, wanted,
      [this, job](double share, const QString& words) {
        if (job == job_) emit progress(share, words);
      },
      kBarEvery);
  FrameResults results;
  results.made = made;
  const auto tell = [&](bool last) {
    const auto kept = std::make_shared<const FrameResults>(results);
    QMetaObject::invokeMethod(
        this, [this, job, kept, last] { take(job, *kept, last); }, Qt::QueuedConnection);
  };
  const LensPlan& plan = *made->plan;
  keep([&]() -> Outcome<std::vector<SettingCheck>> { return check_setting(plan, *made->frame); },
       results.setting, results.no_setting);
  tell(false);
  keep([&] { return nest_flats(made->frame->flats, plan.values.frame, part_of(whole, 0, kNestTo)); },
       results.nest, results.no_nest);
  if (!wanted()) return;
  tell(false);
  keep([&] { return fit_up(plan, *made->frame, part_of(whole, kNestTo, kFitTo)); }, results.fit,
       results.no_fit);
  if (!wanted()) return;
  tell(false);
  if (made->frame->hinge) sweep(results, part_of(whole, kFitTo, 1));
  tell(true);
}

void FrameMaker::take(int job, const FrameResults& results, bool last) {
  if (job != job_) return;
  results_ = results;
  complete_ = last;
  if (last) job_ = 0;
  emit changed();
}

bool FrameMaker::waitUntilDone(int timeout_ms) {
  wait_while([this] { return bench_->isMaking() || isWorking() || (watched_ && isStale() && !halted_); },
             timeout_ms);
  return !isStale();
}

}  // namespace prismwright
