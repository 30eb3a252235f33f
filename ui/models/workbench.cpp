#include "ui/models/workbench.h"

#include <QElapsedTimer>
#include <QEventLoop>
#include <QPointer>
#include <QTimer>
#include <algorithm>
#include <atomic>
#include <chrono>

#include "ui/models/lens_maker.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

/// Several quick edits in a row make the solids once; the section follows each of them at once.
constexpr int kRestBeforeMaking_ms = 200;
/// The bar needs no more than this many steps a second.
constexpr auto kProgressEvery = std::chrono::milliseconds(40);

}  // namespace

struct Workbench::Inside {
  std::optional<Lensbook> book;
  LensValues no_values;
  std::shared_ptr<const LensPlan> plan;
  std::shared_ptr<const Proof> proof;
  std::unique_ptr<SectionTracer> tracer;
  std::optional<Problem> problem;
  std::shared_ptr<const MadeLens> made;
  bool stale = false;
  bool making = false;
  int job = 0;
  StageByMark stages;
  QStringList selection;
  bool inches = false;
  QTimer rest;
  std::unique_ptr<LensMaker> maker;

  void workOut();
  void readStages();
  void dropLostSelection();
};

void Workbench::Inside::workOut() {
  Outcome<LensPlan> planned = plan_lens(book->values());
  if (!planned) {
    problem = planned.problem();
    return;
  }
  problem.reset();
  plan = std::make_shared<const LensPlan>(std::move(planned).value());
  proof = std::make_shared<const Proof>(prove(plan->section));
  tracer = std::make_unique<SectionTracer>(plan->section);
}

void Workbench::Inside::readStages() {
  stages = stages_from(book->ledger());
  if (!plan) return;
  for (const PlannedPrism& prism : plan->prisms) stages.try_emplace(prism.mark, Stage::drawn);
}

void Workbench::Inside::dropLostSelection() {
  selection.removeIf([this](const QString& mark) { return !plan || !plan->find(mark.toStdString()); });
}

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
  inside_->plan.reset();
  inside_->proof.reset();
  inside_->tracer.reset();
  inside_->made.reset();
  inside_->selection.clear();
  inside_->workOut();
  inside_->readStages();
  emit bookChanged();
  startMaking();
}

bool Workbench::hasBook() const { return inside_->book.has_value(); }
const Lensbook& Workbench::book() const { return inside_->book.value(); }
const LensValues& Workbench::values() const {
  return inside_->book ? inside_->book->values() : inside_->no_values;
}
std::shared_ptr<const LensPlan> Workbench::plan() const { return inside_->plan; }
std::shared_ptr<const Proof> Workbench::proof() const { return inside_->proof; }
const std::optional<Problem>& Workbench::sectionProblem() const { return inside_->problem; }
const SectionTracer* Workbench::tracer() const { return inside_->tracer.get(); }
std::shared_ptr<const MadeLens> Workbench::made() const { return inside_->made; }
bool Workbench::madeIsStale() const { return inside_->stale; }
const StageByMark& Workbench::stages() const { return inside_->stages; }
const QStringList& Workbench::selection() const { return inside_->selection; }
bool Workbench::isMaking() const { return inside_->making || inside_->rest.isActive(); }
bool Workbench::inches() const { return inside_->inches; }

namespace {

/// Everything that follows from the values is worked out anew, the solids after a short rest.
template <class Inside>
void after_values(Inside& inside) {
  inside.workOut();
  inside.readStages();
  inside.dropLostSelection();
  inside.stale = inside.made != nullptr;
  inside.maker->stop();
  inside.job = 0;  // what the stopped work still sends is for values of the past
  inside.making = false;
  if (!inside.problem) inside.rest.start();
}

Problem no_book_problem() {
  return request_problem("no_book", "", "No lensbook is open: open one or begin a new one first.");
}

}  // namespace

Done Workbench::assign(std::span<const Assignment> assignments, const QString& what) {
  const auto refuse = [this](Problem problem) {
    emit refused(sentence_of(problem));
    return Done(std::move(problem));
  };
  if (!inside_->book) return refuse(no_book_problem());
  Outcome<LensValues> wanted = with_assignments(values(), assignments);
  if (!wanted) return refuse(wanted.problem());
  if (changed_keys(values(), *wanted).empty()) return {};
  const QString words = what.isEmpty() ? change_words(values(), *wanted) : what;
  if (Done done = inside_->book->edit(*wanted, words.toStdString()); !done) return refuse(done.problem());
  const QStringList selected = inside_->selection;
  after_values(*inside_);
  emit valuesChanged();
  emit madeChanged();
  if (selected != inside_->selection) emit selectionChanged();
  return {};
}

Done Workbench::undo() {
  if (!inside_->book) return no_book_problem();
  if (Outcome<std::string> undone = inside_->book->undo(); !undone) {
    emit refused(sentence_of(undone.problem()));
    return undone.problem();
  }
  after_values(*inside_);
  emit valuesChanged();
  emit madeChanged();
  emit selectionChanged();
  return {};
}

Done Workbench::redo() {
  if (!inside_->book) return no_book_problem();
  if (Outcome<std::string> redone = inside_->book->redo(); !redone) {
    emit refused(sentence_of(redone.problem()));
    return redone.problem();
  }
  after_values(*inside_);
  emit valuesChanged();
  emit madeChanged();
  emit selectionChanged();
  return {};
}

Done Workbench::record(const StepRequest& request) {
  const auto refuse = [this](Problem problem) {
    emit refused(sentence_of(problem));
    return Done(std::move(problem));
  };
  if (!inside_->book) return refuse(no_book_problem());
  std::vector<std::string> known;
  if (inside_->plan)
    for (const PlannedPrism& prism : inside_->plan->prisms) known.push_back(prism.mark);
  Outcome<std::vector<LedgerEntry>> lines = plan_steps(request, inside_->stages, known);
  if (!lines) return refuse(lines.problem());
  if (Done done = inside_->book->record(*lines); !done) return refuse(done.problem());
  inside_->readStages();
  emit ledgerChanged();
  return {};
}

void Workbench::select(const QStringList& marks) {
  if (marks == inside_->selection) return;
  inside_->selection = marks;
  emit selectionChanged();
}

void Workbench::startMaking() {
  inside_->rest.stop();
  if (!inside_->plan || inside_->problem) return;
  inside_->making = true;
  inside_->job = inside_->maker->start(inside_->plan);
  emit makingProgress(0, tr("solids"));
}

void Workbench::stopMaking() {
  const bool was_resting = inside_->rest.isActive();
  inside_->rest.stop();
  inside_->maker->stop();
  if (was_resting && !inside_->making) emit makingFinished(false, tr("Stopped before any solid was made."));
}

bool Workbench::waitUntilMade(int timeout_ms) {
  QElapsedTimer clock;
  clock.start();
  while (isMaking() && clock.elapsed() < timeout_ms) {
    QEventLoop loop;
    QTimer::singleShot(20, &loop, &QEventLoop::quit);
    loop.exec();
  }
  return !isMaking() && inside_->made && !inside_->stale && inside_->made->clearances_known;
}

void Workbench::setInches(bool inches) {
  if (inches == inside_->inches) return;
  inside_->inches = inches;
  emit unitsChanged();
}

}  // namespace prismwright
