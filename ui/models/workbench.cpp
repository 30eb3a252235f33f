#include "ui/models/workbench.h"

#include <chrono>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"
#include "ui/models/workbench_inside.h"

namespace prismwright {
namespace {

/// Several quick edits in a row make the solids once; the section follows each of them at once.
constexpr int kRestBeforeMaking_ms = 200;
/// The bar needs no more than this many steps a second.
constexpr auto kProgressEvery = std::chrono::milliseconds(40);

}  // namespace

Workbench::Workbench(QObject* parent) : QObject(parent), inside_(std::make_unique<Inside>()) {
  inside_->rest.setSingleShot(true);
  inside_->rest.setInterval(kRestBeforeMaking_ms);
  connect(&inside_->rest, &QTimer::timeout, this, &Workbench::startMaking);

  auto last_told = std::make_shared<std::chrono::steady_clock::time_point>();
  LensMaker::Listener listener;
  listener.progress = [this, last_told](int job, double share, std::string_view what) {
    const auto now = std::chrono::steady_clock::now();
    if (now - *last_told < kProgressEvery) return;
    *last_told = now;
    const QString words = QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size()));
    QMetaObject::invokeMethod(
        this,
        [this, job, share, words] {
          if (job == inside_->job) emit makingProgress(share, words);
        },
        Qt::QueuedConnection);
  };
  listener.made = [this](int job, std::shared_ptr<const MadeLens> made) {
    QMetaObject::invokeMethod(
        this,
        [this, job, made] {
          if (job != inside_->job) return;
          inside_->made = made;
          inside_->stale = false;
          emit madeChanged();
        },
        Qt::QueuedConnection);
  };
  listener.finished = [this](int job, const Done& outcome) {
    QMetaObject::invokeMethod(
        this,
        [this, job, outcome] {
          if (job != inside_->job) return;
          inside_->making = false;
          const QString message =
              outcome ? tr("Solids and clearances are up to date.") : sentence_of(outcome.problem());
          emit makingFinished(outcome.ok(), message);
          if (!outcome && outcome.problem().trouble != Trouble::stopped) emit refused(message);
        },
        Qt::QueuedConnection);
  };
  inside_->maker = std::make_unique<LensMaker>(std::move(listener));
}

Workbench::~Workbench() { inside_->maker.reset(); }

void Workbench::setBook(Lensbook book) {
  inside_->rest.stop();
  inside_->maker->stop();
  inside_->job = 0;
  inside_->making = false;
  inside_->book.emplace(std::move(book));
  inside_->present = {};
  inside_->preview = {};
  inside_->made.reset();
  inside_->selection.clear();
  inside_->workOut();
  inside_->readStages();
  emit bookChanged();
  emit sectionChanged();
  startMaking();
}

bool Workbench::hasBook() const { return inside_->book.has_value(); }
const Lensbook& Workbench::book() const { return inside_->book.value(); }
const LensValues& Workbench::values() const {
  return inside_->book ? inside_->book->values() : inside_->no_values;
}
std::shared_ptr<const LensPlan> Workbench::plan() const { return inside_->shown().plan; }
const std::vector<FacetDeparture>& Workbench::facets() const {
  if (inside_->facets_of != plan()) {
    inside_->facets_of = plan();
    inside_->facets = plan() ? facet_departures(*plan()) : std::vector<FacetDeparture>{};
  }
  return inside_->facets;
}
std::shared_ptr<const Proof> Workbench::proof() const { return inside_->shown().proof; }
const std::optional<Problem>& Workbench::sectionProblem() const { return inside_->problem; }
const SectionTracer* Workbench::tracer() const { return inside_->shown().tracer.get(); }
std::shared_ptr<const MadeLens> Workbench::made() const { return inside_->made; }
bool Workbench::madeIsStale() const { return inside_->stale; }
const StageByMark& Workbench::stages() const { return inside_->stages; }
const QStringList& Workbench::selection() const { return inside_->selection; }
bool Workbench::isMaking() const { return inside_->making || inside_->rest.isActive(); }
bool Workbench::isPreviewing() const { return static_cast<bool>(inside_->preview); }
bool Workbench::inches() const { return inside_->inches; }

void Workbench::select(const QStringList& marks) {
  if (marks == inside_->selection) return;
  inside_->selection = marks;
  emit selectionChanged();
}

void Workbench::startMaking() {
  inside_->rest.stop();
  if (!inside_->present || inside_->problem) return;
  inside_->making = true;
  inside_->job = inside_->maker->start(inside_->present.plan);
  emit makingProgress(0, tr("solids"));
}

void Workbench::stopMaking() {
  const bool was_resting = inside_->rest.isActive();
  inside_->rest.stop();
  inside_->maker->stop();
  if (was_resting && !inside_->making) emit makingFinished(false, tr("Stopped before any solid was made."));
}

bool Workbench::waitUntilMade(int timeout_ms) {
  wait_while([this] { return isMaking(); }, timeout_ms);
  return !isMaking() && inside_->made && !inside_->stale && inside_->made->clearances_known;
}

void Workbench::setInches(bool inches) {
  if (inches == inside_->inches) return;
  inside_->inches = inches;
  emit unitsChanged();
}

}  // namespace prismwright
