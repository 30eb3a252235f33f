#include "ui/models/despatch_maker.h"

#include <algorithm>
#include <exception>

#include "ui/models/shown_numbers.h"
#include "ui/models/wait_while.h"
#include "ui/models/window_progress.h"

namespace prismwright {
namespace {

/// What is worth a look before it is known what goes out: it needs no solids.
DespatchPiece panel_chart() {
  DespatchPiece piece;
  piece.group = DespatchGroup::drawings;
  piece.name = "panel-chart";
  piece.is_paper = true;
  return piece;
}

bool same_piece(const DespatchPiece& a, const DespatchPiece& b) {
  return a.group == b.group && a.name == b.name;
}

/// Work of the worker thread: nothing thrown leaves it.
template <class Work>
auto guarded(Work&& work) -> decltype(work()) {
  try {
    return work();
  } catch (const std::exception& error) {
    return request_problem("despatch", "",
                           DespatchMaker::tr("It could not be made: %1.").arg(error.what()).toStdString());
  }
}

}  // namespace

DespatchMaker::DespatchMaker(Workbench* bench, QObject* parent)
    : QObject(parent), bench_(bench), thread_(std::make_unique<WorkThread>()) {
  connect(bench_, &Workbench::bookChanged, this, &DespatchMaker::followBook);
  for (const auto signal : {&Workbench::madeChanged, &Workbench::valuesChanged})
    connect(bench_, signal, this, &DespatchMaker::followBench);
  connect(bench_, &Workbench::makingFinished, this, &DespatchMaker::followBench);
  connect(bench_, &Workbench::unitsChanged, this, &DespatchMaker::askAnew);
  for (const auto signal : {&Workbench::ledgerChanged, &Workbench::readingsChanged})
    connect(bench_, signal, this, [this] {
      forgetDesk();
      next();
    });
  followBook();
}

DespatchMaker::~DespatchMaker() { thread_.reset(); }

void DespatchMaker::followBook() {
  drop();
  to_pack_.reset();
  end_ = {};
  listing_.reset();
  wanted_.reset();
  sight_ = {};
  made_.reset();
  wish_ =
      bench_->hasBook() ? kept_despatch_wish(QString::fromStdString(bench_->book().path())) : DespatchWish();
  forgetDesk();
  emit sighted();
  next();
}

/// New solids: what was listed is of earlier ones. A pack that is being written goes on.
void DespatchMaker::followBench() {
  if (isReady() && bench_->made() != made_) {
    made_ = bench_->made();
    forgetDesk();
  }
  if (!isReady() && task_ != Task::packing && task_ != Task::none && source_) drop();
  next();
}

void DespatchMaker::forgetDesk() {
  if (task_ != Task::packing) drop();
  source_.reset();
  desk_.reset();
  listed_ = halted_ = drawn_ = false;
  refusal_.clear();
}

void DespatchMaker::drop() {
  if (job_ == 0) return;
  thread_->stop();
  job_ = 0;
  task_ = Task::none;
  stopping_ = false;
}

void DespatchMaker::setWish(const DespatchWish& wish) {
  if (wish.folder != wish_.folder && task_ != Task::packing) end_ = {};
  wish_ = wish;
  if (bench_->hasBook()) keep_despatch_wish(QString::fromStdString(bench_->book().path()), wish_);
  askAnew();
}

/// The desk keeps what it has made; papers and what goes out are asked for as they are wanted now.
void DespatchMaker::askAnew() {
  if (task_ != Task::packing) drop();
  listed_ = halted_ = drawn_ = false;
  refusal_.clear();
  next();
}

bool DespatchMaker::isReady() const {
  const auto made = bench_->hasBook() ? bench_->made() : nullptr;
  return made && made->clearances_known && !bench_->madeIsStale() && !bench_->isMaking();
}

bool DespatchMaker::isStale() const { return !listing_ || !listed_ || !isReady(); }

QString DespatchMaker::reason() const {
  if (!bench_->hasBook() || (listing_ && !isStale())) return {};
  if (bench_->sectionProblem()) return sentence_of(*bench_->sectionProblem());
  if (bench_->isMaking()) return tr("What goes out is known once solids and clearances are made.");
  if (!isReady()) return tr("Solids and clearances are not made: press Make solids below.");
  if (!refusal_.isEmpty()) return refusal_;
  return halted_ ? tr("Stopped before it was known what goes out.") : tr("What goes out is being listed.");
}

void DespatchMaker::setWatched(bool watched) {
  if (watched && !watched_ && task_ == Task::none && !halted_) listed_ = false;  // the folder may have changed
  watched_ = watched;
  next();
}

void DespatchMaker::look(const DespatchPiece& piece) {
  wanted_ = piece;
  drawn_ = false;
  if (task_ == Task::drawing) drop();
  next();
}

void DespatchMaker::pack(const std::vector<DespatchGroup>& groups) {
  if (task_ == Task::packing || isStale()) return;
  drop();
  to_pack_ = groups;
  end_ = {};
  next();
}

void DespatchMaker::stop() {
  if (job_ == 0) return;
  stopping_ = true;
  thread_->stop();
  emit changed();
}

void DespatchMaker::listAgain() {
  halted_ = listed_ = false;
  refusal_.clear();
  next();
}

void DespatchMaker::next() {
  const bool idle = job_ == 0 && bench_->hasBook();
  if (idle && isReady() && made_ != bench_->made()) {
    made_ = bench_->made();
    forgetDesk();
  }
  if (idle && isReady() && !source_) source_ = despatch_source(*bench_, made_.get());
  if (idle && isReady() && to_pack_) return startPacking();
  if (idle && watched_ && isReady() && !listed_ && !halted_) return startListing();
  if (idle && watched_ && isReady() && listed_ && wanted_ && !drawn_) return startDrawing();
  if (idle && watched_ && !isReady() && bench_->plan() && !bench_->sectionProblem() && !sight_.drawing &&
      sight_.reason.isEmpty())
    return startFirstSight();
  emit changed();
}

/// The work answers, in its thread, what is to be done with its result in the window's.
void DespatchMaker::start(Task task, Work work) {
  task_ = task;
  stopping_ = false;
  job_ = thread_->start([this, work = std::move(work)](int job, const WorkThread::Wanted& wanted) {
    const Progress whole = window_progress(
        this, wanted,
        [this, job](double share, const QString& words) {
          if (job == job_) emit progress(share, words);
        },
        kBarEvery);
    const Take take = work(whole);
    QMetaObject::invokeMethod(
        this,
        [this, job, take] {
          if (job != job_) return;
          job_ = 0;
          task_ = Task::none;
          take();
          stopping_ = false;
          next();
        },
        Qt::QueuedConnection);
  });
  emit changed();
}

void DespatchMaker::startListing() {
  start(Task::listing,
        [this, source = source_, desk = desk_, wish = wishNow()](const Progress& progress) -> Take {
          const std::optional<LastPack> last = last_pack_for(*source, wish);
          const auto ready = ready_desk(desk, source, wish);
          const auto listing = guarded([&] { return list_despatch(*ready, last, progress); });
          return [this, ready, listing] {
            if (desk_ != ready || !listing_ || (listing && listing->revision != listing_->revision))
              drawn_ = false;
            desk_ = ready;
            listed_ = listing.ok();
            halted_ = !listed_;
            if (listing)
              listing_ = std::make_shared<const DespatchListing>(*listing);
            else if (listing.problem().trouble != Trouble::stopped)
              refusal_ = sentence_of(listing.problem());
          };
        });
}

void DespatchMaker::startDrawing() {
  const auto& pieces = listing_->pieces;
  const auto of_now = std::find_if(pieces.begin(), pieces.end(),
                                   [this](const DespatchPiece& piece) { return same_piece(piece, *wanted_); });
  if (of_now == pieces.end()) {  // it goes out no longer
    wanted_.reset();
    emit changed();
    return;
  }
  const std::string& typed = wish_.choice.revision;
  const std::string revision = typed.empty() ? listing_->revision : typed;
  start(Task::drawing, [this, desk = desk_, piece = *of_now, revision](const Progress& progress) -> Take {
    const auto sight = guarded([&]() -> Outcome<DespatchSight> {
      desk->desk.set_revision(revision);
      return sight_of(desk->desk, piece, progress);
    });
    return [this, piece, sight] { takeSight(piece, sight); };
  });
}

void DespatchMaker::startFirstSight() {
  const auto source = despatch_source(*bench_, nullptr);
  start(Task::drawing, [this, source, wish = wishNow()](const Progress& progress) -> Take {
    const DespatchPiece piece = panel_chart();
    const auto desk = ready_desk(nullptr, source, wish);
    const auto sight =
        guarded([&]() -> Outcome<DespatchSight> { return sight_of(desk->desk, piece, progress); });
    return [this, piece, sight] { takeSight(piece, sight); };
  });
}

void DespatchMaker::startPacking() {
  const PackAsk ask{wish_.folder.toStdString(), *to_pack_};
  to_pack_.reset();
  start(Task::packing,
        [this, ask, source = source_, desk = desk_, wish = wishNow()](const Progress& progress) -> Take {
          const auto ready = ready_desk(desk, source, wish);
          const auto report = guarded([&] { return write_pack(ready->desk, ask, progress); });
          return [this, source, ready, report] {
            if (source_ == source) desk_ = ready;
            end_ = {};
            if (report)
              end_.report = std::make_shared<const PackReport>(*report);
            else
              end_.refusal = sentence_of(report.problem());
            listed_ = false;
            emit packed();
          };
        });
}

void DespatchMaker::takeSight(const DespatchPiece& piece, const Outcome<DespatchSight>& sight) {
  sight_ = {};
  sight_.piece = piece;
  if (sight)
    sight_ = *sight;
  else
    sight_.reason = sentence_of(sight.problem());
  if (stopping_) sight_.reason = tr("Stopped: choose it again to see it.");
  drawn_ = wanted_ && same_piece(*wanted_, piece);
  emit sighted();
}

DespatchWish DespatchMaker::wishNow() const {
  DespatchWish wish = wish_;
  wish.choice.inches = bench_->inches();
  return wish;
}

bool DespatchMaker::waitUntilDone(int timeout_ms) {
  const auto busy = [this] {
    return bench_->isMaking() || job_ != 0 || to_pack_ || (watched_ && isReady() && !listed_ && !halted_);
  };
  wait_while(busy, timeout_ms);
  return !busy();
}

}  // namespace prismwright
