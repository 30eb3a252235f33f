#include "ui/models/errors_maker.h"

#include <algorithm>
#include <array>
#include <exception>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"
#include "ui/models/window_progress.h"

namespace prismwright {
namespace {

constexpr int kStandStill_ms = 300;

/// Settings of the light that rule the errors; the others tell how the light is judged.
constexpr std::array<std::string_view, 7> kErrorKeys{"light.tilt_error_deg",
                                                     "light.shift_error_mm",
                                                     "light.face_error_deg",
                                                     "light.index_error",
                                                     "light.lamp_error_mm",
                                                     "light.trials",
                                                     "light.seed"};

bool turns_errors(const std::string& key) {
  if (key.starts_with("light."))
    return std::find(kErrorKeys.begin(), kErrorKeys.end(), key) != kErrorKeys.end();
  return key != "brief.title" && key != "brief.client" && key != "brief.notes";
}

Outcome<SettingErrors> worked_out(const LensPlan& plan, const ErrorsAsk& ask, const Progress& progress) {
  try {
    return setting_errors(plan, ask, progress);
  } catch (const std::exception& error) {
    return request_problem("light", "",
                           std::string("The setting errors could not be worked out: ") + error.what());
  }
}

}  // namespace

ErrorsMaker::ErrorsMaker(Workbench* bench, QObject* parent)
    : QObject(parent), bench_(bench), thread_(std::make_unique<WorkThread>()) {
  rest_.setSingleShot(true);
  rest_.setInterval(kStandStill_ms);
  connect(&rest_, &QTimer::timeout, this, &ErrorsMaker::start);
  connect(bench_, &Workbench::bookChanged, this, &ErrorsMaker::forget);
  connect(bench_, &Workbench::sectionChanged, this, &ErrorsMaker::followValues);
}

ErrorsMaker::~ErrorsMaker() { thread_.reset(); }

void ErrorsMaker::work(int job, const LensPlan& plan, const ErrorsAsk& ask, const WorkThread::Wanted& wanted) {
  const Progress told = window_progress(
      this, wanted,
      [this, job](double share, const QString& words) {
        if (job == job_) emit progress(share, words);
      },
      std::chrono::milliseconds(0));
  const auto kept = std::make_shared<const Outcome<SettingErrors>>(worked_out(plan, ask, told));
  QMetaObject::invokeMethod(
      this, [this, job, kept] { finish(job, *kept); }, Qt::QueuedConnection);
}

void ErrorsMaker::drop() {
  thread_->stop();
  rest_.stop();
  job_ = 0;
  working_ = halted_ = false;
  stale_ = true;
}

/// Another book: nothing of the last one is shown.
void ErrorsMaker::forget() {
  drop();
  errors_.reset();
  values_known_ = false;
  ask_.panel = 0;
  reason_.clear();
  if (watched_) return start();
  emit changed();
}

void ErrorsMaker::followValues() {
  if (!bench_->hasBook() || bench_->isPreviewing()) return;
  if (values_known_) {
    const std::vector<std::string> keys = changed_keys(values_, bench_->values());
    if (std::none_of(keys.begin(), keys.end(), turns_errors)) return;
  }
  drop();
  if (watched_) rest_.start();
  emit changed();
}

void ErrorsMaker::setWatched(bool watched) {
  watched_ = watched;
  if (!watched) rest_.stop();
  if (watched && stale_ && !working_ && !halted_ && !rest_.isActive()) start();
}

void ErrorsMaker::setAsk(const ErrorsAsk& ask) {
  if (ask.panel == ask_.panel && ask.spots == ask_.spots) return;
  ask_ = ask;
  drop();
  if (watched_) return start();
  emit changed();
}

QString ErrorsMaker::reasonAgainst() const {
  if (!bench_->hasBook()) return tr("No lensbook is open.");
  if (bench_->sectionProblem()) return sentence_of(*bench_->sectionProblem());
  if (!bench_->plan() || bench_->plan()->prisms.empty())
    return tr("Every panel is blind: there is no prism to be set. Give a panel its prisms on the page Brief.");
  return {};
}

void ErrorsMaker::start() {
  rest_.stop();
  if (bench_->isPreviewing()) return rest_.start();
  halted_ = false;
  reason_ = reasonAgainst();
  working_ = reason_.isEmpty();
  values_known_ = working_;
  if (working_) {
    values_ = bench_->values();
    const std::shared_ptr<const LensPlan> plan = bench_->plan();
    job_ = thread_->start(
        [this, plan, ask = ask_](int job, const WorkThread::Wanted& wanted) { work(job, *plan, ask, wanted); });
    emit progress(0, tr("spots"));
  } else {
    thread_->stop();
    job_ = 0;
  }
  emit changed();
}

void ErrorsMaker::stop() {
  if (!isWorking()) return;
  drop();
  halted_ = true;
  if (!errors_) reason_ = tr("Stopped before the setting errors were known.");
  emit changed();
}

void ErrorsMaker::finish(int job, const Outcome<SettingErrors>& errors) {
  if (job != job_) return;
  working_ = false;
  stale_ = false;
  if (errors) {
    errors_ = std::make_shared<const SettingErrors>(*errors);
    reason_.clear();
  } else {
    reason_ = sentence_of(errors.problem());
  }
  emit changed();
}

bool ErrorsMaker::waitUntilDone(int timeout_ms) {
  wait_while([this] { return isWorking(); }, timeout_ms);
  return !isWorking() && errors_ && !stale_;
}

}  // namespace prismwright
