#include "ui/models/bench_maker.h"

#include <QtConcurrent/QtConcurrentRun>
#include <algorithm>
#include <exception>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"

namespace prismwright {
namespace {

constexpr int kStandStill_ms = 300;

Outcome<BenchPlan> planned(const LensPlan& lens) {
  try {
    return bench_plan(lens);
  } catch (const std::exception& error) {
    return request_problem("bench", "", std::string("The bench could not be worked out: ") + error.what());
  }
}

}  // namespace

BenchMaker::BenchMaker(Workbench* bench, QObject* parent) : QObject(parent), bench_(bench) {
  rest_.setSingleShot(true);
  rest_.setInterval(kStandStill_ms);
  connect(&rest_, &QTimer::timeout, this, &BenchMaker::start);
  connect(&watcher_, &QFutureWatcher<Planned>::finished, this, &BenchMaker::take);
  connect(bench_, &Workbench::bookChanged, this, &BenchMaker::forget);
  connect(bench_, &Workbench::sectionChanged, this, &BenchMaker::followPlan);
  connect(bench_, &Workbench::readingsChanged, this, [this] {
    judge();
    emit changed();
  });
}

const BenchedPrism* BenchMaker::find(const QString& mark) const {
  const auto found = std::find_if(prisms_.begin(), prisms_.end(), [&](const BenchedPrism& prism) {
    return prism.aim->mark == mark.toStdString();
  });
  return found == prisms_.end() ? nullptr : &*found;
}

void BenchMaker::setWithin(double within_deg) {
  if (within_deg == within_deg_) return;
  within_deg_ = within_deg;
  judge();
  emit changed();
}

void BenchMaker::setWatched(bool watched) {
  watched_ = watched;
  if (!watched) rest_.stop();
  if (watched) followPlan();
}

/// Another book: nothing of the last one is shown.
void BenchMaker::forget() {
  rest_.stop();
  plan_.reset();
  plan_of_.reset();
  working_on_.reset();
  reason_.clear();
  judge();
  if (watched_) return start();
  emit changed();
}

void BenchMaker::followPlan() {
  if (!watched_ || bench_->isPreviewing()) return;
  // A lens without a section keeps its last good plan, but no laser is aimed by that.
  if (!reasonAgainst().isEmpty()) return start();
  if (!isStale()) return;
  if (!plan_) return start();
  rest_.start();
  emit changed();
}

QString BenchMaker::reasonAgainst() const {
  if (!bench_->hasBook()) return tr("No lensbook is open.");
  if (bench_->sectionProblem()) return sentence_of(*bench_->sectionProblem());
  if (!bench_->plan() || bench_->plan()->prisms.empty())
    return tr("Every panel is blind: there is no prism to aim at. Give a panel its prisms on the page Brief.");
  return {};
}

void BenchMaker::start() {
  rest_.stop();
  if (bench_->isPreviewing()) return rest_.start();
  reason_ = reasonAgainst();
  again_ = false;
  if (!reason_.isEmpty()) {
    plan_.reset();
    plan_of_.reset();
    working_on_.reset();
    judge();
  } else if (watcher_.isRunning()) {
    // What is in hand cannot be stopped; it is dropped when it ends unless it is what is wanted.
    again_ = working_on_ != bench_->plan();
  } else {
    working_on_ = bench_->plan();
    watcher_.setFuture(QtConcurrent::run([lens = working_on_]() -> Planned {
      return std::make_shared<const Outcome<BenchPlan>>(planned(*lens));
    }));
  }
  emit changed();
}

void BenchMaker::take() {
  if (again_) return start();
  if (!working_on_) return emit changed();
  const Planned planned = watcher_.result();
  plan_of_ = working_on_;
  if (*planned) {
    plan_ = std::shared_ptr<const BenchPlan>(planned, &planned->value());
    reason_.clear();
  } else {
    plan_.reset();
    reason_ = sentence_of(planned->problem());
  }
  judge();
  emit changed();
}

void BenchMaker::judge() {
  prisms_.clear();
  if (plan_ && bench_->hasBook()) prisms_ = benched(*plan_, bench_->book().readings(), within_deg_);
  summary_ = summary_of(prisms_);
}

bool BenchMaker::waitUntilDone(int timeout_ms) {
  // Between the end of the work and the signal of it the plan is still of earlier values.
  wait_while([this] { return isWorking() || (isStale() && reason_.isEmpty()); }, timeout_ms);
  return !isWorking() && plan_ && !isStale();
}

}  // namespace prismwright
