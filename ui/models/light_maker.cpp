#include "ui/models/light_maker.h"

#include <algorithm>
#include <chrono>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"

namespace prismwright {
namespace {

constexpr int kStandStill_ms = 300;
/// The bar needs no more steps a second than this, the map no more pictures.
constexpr auto kProgressEvery = std::chrono::milliseconds(40);
constexpr auto kPictureEvery = std::chrono::milliseconds(100);

/// Words alone: they turn no light.
bool turns_light(const std::string& key) {
  return key != "brief.title" && key != "brief.client" && key != "brief.notes";
}

/// Lets a call through only so often. For one thread.
class Throttle {
 public:
  explicit Throttle(std::chrono::steady_clock::duration every) : every_(every) {}
  bool passes() {
    const auto now = std::chrono::steady_clock::now();
    if (now - last_ < every_) return false;
    last_ = now;
    return true;
  }

 private:
  std::chrono::steady_clock::duration every_;
  std::chrono::steady_clock::time_point last_;
};

}  // namespace

LightMaker::LightMaker(Workbench* bench, QObject* parent) : QObject(parent), bench_(bench) {
  rest_.setSingleShot(true);
  rest_.setInterval(kStandStill_ms);
  connect(&rest_, &QTimer::timeout, this, &LightMaker::start);
  thread_ = std::make_unique<LightThread>(listener());
  connect(bench_, &Workbench::bookChanged, this, &LightMaker::forget);
  connect(bench_, &Workbench::sectionChanged, this, &LightMaker::followValues);
}

LightMaker::~LightMaker() { thread_.reset(); }

LightThread::Listener LightMaker::listener() {
  LightThread::Listener told;
  const auto steps = std::make_shared<Throttle>(kProgressEvery);
  told.progress = [this, steps](int job, double share, std::string_view what) {
    if (!steps->passes()) return;
    const QString words = QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size()));
    QMetaObject::invokeMethod(
        this,
        [this, job, share, words] {
          if (job == job_) emit progress(share, words);
        },
        Qt::QueuedConnection);
  };
  const auto pictures = std::make_shared<Throttle>(kPictureEvery);
  told.sharpened = [this, pictures](int job, const BeamMap& beam) {
    if (!pictures->passes()) return;
    auto map = std::make_shared<const BeamMap>(beam);
    QMetaObject::invokeMethod(
        this,
        [this, job, map] {
          if (job == job_) emit sharpened(map);
        },
        Qt::QueuedConnection);
  };
  told.finished = [this](int job, Outcome<LightReport> report) {
    auto kept = std::make_shared<Outcome<LightReport>>(std::move(report));
    QMetaObject::invokeMethod(
        this, [this, job, kept] { finish(job, *kept); }, Qt::QueuedConnection);
  };
  return told;
}

/// Another book: nothing of the last one's light is shown.
void LightMaker::forget() {
  thread_->stop();
  rest_.stop();
  job_ = 0;
  working_ = halted_ = false;
  stale_ = true;
  report_.reset();
  report_plan_.reset();
  working_plan_.reset();
  ask_ = {};
  reason_.clear();
  if (watched_) return start();
  emit changed();
}

void LightMaker::followValues() {
  if (!bench_->hasBook() || bench_->isPreviewing()) return;
  if (working_plan_) {
    const std::vector<std::string> keys = changed_keys(values_, bench_->values());
    if (std::none_of(keys.begin(), keys.end(), turns_light)) return;
  }
  thread_->stop();
  job_ = 0;
  working_ = halted_ = false;
  stale_ = true;
  if (watched_) rest_.start();
  emit changed();
}

void LightMaker::setWatched(bool watched) {
  watched_ = watched;
  if (!watched) rest_.stop();
  if (watched && stale_ && !working_ && !halted_ && !rest_.isActive()) start();
}

void LightMaker::setAsk(const LightAsk& ask) {
  ask_ = ask;
  stale_ = true;
  if (watched_) start();
}

QString LightMaker::reasonAgainst() const {
  if (!bench_->hasBook()) return tr("No lensbook is open.");
  if (bench_->sectionProblem()) return sentence_of(*bench_->sectionProblem());
  if (!bench_->plan() || bench_->plan()->prisms.empty())
    return tr("Every panel is blind: no prism throws light. Give a panel its prisms on the page Brief.");
  return {};
}

void LightMaker::start() {
  rest_.stop();
  if (bench_->isPreviewing()) return rest_.start();
  halted_ = false;
  reason_ = reasonAgainst();
  working_ = reason_.isEmpty();
  if (working_) {
    values_ = bench_->values();
    working_plan_ = bench_->plan();
    job_ = thread_->start(working_plan_, ask_);
    emit progress(0, tr("beam"));
  } else {
    thread_->stop();
    job_ = 0;
    working_plan_.reset();
  }
  emit changed();
}

void LightMaker::stop() {
  thread_->stop();
  const bool was_resting = rest_.isActive();
  rest_.stop();
  if (!was_resting && !working_) return;
  working_ = false;
  halted_ = true;
  job_ = 0;
  if (!report_) reason_ = tr("Stopped before the light was known.");
  emit changed();
}

void LightMaker::finish(int job, const Outcome<LightReport>& report) {
  if (job != job_) return;
  working_ = false;
  stale_ = false;
  if (report) {
    report_ = std::make_shared<const LightReport>(*report);
    report_plan_ = working_plan_;
    reason_.clear();
  } else {
    reason_ = sentence_of(report.problem());
  }
  emit changed();
}

bool LightMaker::waitUntilDone(int timeout_ms) {
  wait_while([this] { return isWorking(); }, timeout_ms);
  return !isWorking() && report_ && !stale_;
}

}  // namespace prismwright
