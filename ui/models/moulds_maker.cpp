#include "ui/models/moulds_maker.h"

#include <exception>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"
#include "ui/models/window_progress.h"

namespace prismwright {
namespace {

constexpr int kStandStill_ms = 300;

}  // namespace

MouldsMaker::MouldsMaker(Workbench* bench, QObject* parent)
    : QObject(parent), bench_(bench), thread_(std::make_unique<WorkThread>()) {
  rest_.setSingleShot(true);
  rest_.setInterval(kStandStill_ms);
  connect(&rest_, &QTimer::timeout, this, &MouldsMaker::start);
  connect(bench_, &Workbench::bookChanged, this, &MouldsMaker::forget);
  connect(bench_, &Workbench::sectionChanged, this, &MouldsMaker::followPlan);
}

MouldsMaker::~MouldsMaker() { thread_.reset(); }

void MouldsMaker::work(int job, const LensPlan& plan, const WorkThread::Wanted& wanted) {
  const Progress told = window_progress(
      this, wanted,
      [this, job](double share, const QString& words) {
        if (job == job_) emit progress(share, words);
      },
      std::chrono::milliseconds(0));
  const auto worked = [&]() -> Outcome<std::vector<WorkedMould>> {
    try {
      return desk_.work_out(plan, masters_of(plan), {}, told);
    } catch (const std::exception& error) {
      return request_problem("mould", "", std::string("The moulds could not be worked out: ") + error.what());
    }
  };
  const auto kept = std::make_shared<const Outcome<std::vector<WorkedMould>>>(worked());
  QMetaObject::invokeMethod(
      this, [this, job, kept] { finish(job, *kept); }, Qt::QueuedConnection);
}

void MouldsMaker::drop() {
  thread_->stop();
  rest_.stop();
  job_ = 0;
  working_on_.reset();
  halted_ = false;
}

/// Another book: nothing of the last one is shown.
void MouldsMaker::forget() {
  drop();
  moulds_.reset();
  plan_of_.reset();
  reason_.clear();
  if (watched_) return start();
  emit changed();
}

void MouldsMaker::followPlan() {
  if (!bench_->hasBook() || bench_->isPreviewing() || !isStale()) return;
  if (working_on_ && working_on_ == bench_->plan()) return;
  const bool goes_on = watched_ || moulds_ || isWorking();
  drop();
  if (goes_on) rest_.start();
  emit changed();
}

void MouldsMaker::setWatched(bool watched) {
  watched_ = watched;
  if (watched && isStale() && !isWorking() && !halted_) start();
}

void MouldsMaker::start() {
  rest_.stop();
  if (bench_->isPreviewing()) return rest_.start();
  halted_ = false;
  reason_.clear();
  if (!bench_->hasBook()) {
    reason_ = tr("No lensbook is open.");
  } else if (bench_->sectionProblem()) {
    reason_ = sentence_of(*bench_->sectionProblem());
  } else if (!bench_->plan() || bench_->plan()->prisms.empty()) {
    reason_ =
        tr("Every panel is blind: there is no prism to be moulded. Give a panel its prisms on the page Brief.");
  }
  if (!reason_.isEmpty()) {
    thread_->stop();
    job_ = 0;
    working_on_.reset();
    return emit changed();
  }
  working_on_ = bench_->plan();
  job_ = thread_->start(
      [this, plan = working_on_](int job, const WorkThread::Wanted& wanted) { work(job, *plan, wanted); });
  emit progress(0, QString());
  emit changed();
}

void MouldsMaker::stop() {
  if (!isWorking()) return;
  drop();
  halted_ = true;
  if (!moulds_) reason_ = tr("Stopped before the moulds were worked out.");
  emit changed();
}

void MouldsMaker::finish(int job, const Outcome<std::vector<WorkedMould>>& moulds) {
  if (job != job_) return;
  job_ = 0;
  if (moulds) {
    moulds_ = std::make_shared<const Moulds>(*moulds);
    plan_of_ = working_on_;
  } else {
    reason_ = sentence_of(moulds.problem());
  }
  working_on_.reset();
  emit changed();
}

bool MouldsMaker::waitUntilDone(int timeout_ms) {
  wait_while([this] { return isWorking(); }, timeout_ms);
  return !isWorking() && !isStale();
}

}  // namespace prismwright
