#include "ui/models/works_desk.h"

#include <algorithm>
#include <chrono>

#include "ui/models/parts_table.h"

namespace prismwright {

WorksDesk::WorksDesk(Workbench* bench, QObject* parent)
    : QObject(parent),
      bench_(bench),
      moulds_maker_(new MouldsMaker(bench, this)),
      bench_maker_(new BenchMaker(bench, this)) {
  for (const auto signal : {&Workbench::bookChanged, &Workbench::valuesChanged, &Workbench::ledgerChanged})
    connect(bench_, signal, this, &WorksDesk::forget);
  connect(bench_, &Workbench::madeChanged, this, [this] {
    reckoning_.reset();  // it weighs the frame
    emit changed();
  });
  connect(bench_, &Workbench::unitsChanged, this, &WorksDesk::changed);
  connect(bench_, &Workbench::readingsChanged, this, [this] {
    inspected_.reset();
    emit changed();
  });
  connect(bench_maker_, &BenchMaker::changed, this, &WorksDesk::followBench);
  connect(moulds_maker_, &MouldsMaker::changed, this, &WorksDesk::followMoulds);
}

std::shared_ptr<const BenchPlan> WorksDesk::benchPlan() const {
  const bool counts = bench_->hasBook() && !bench_->book().readings().empty() && !bench_maker_->isStale();
  return counts ? bench_maker_->plan() : nullptr;
}

bool WorksDesk::benchIsPending() const {
  return bench_->hasBook() && bench_->plan() && !bench_->book().readings().empty() && !benchPlan() &&
         bench_maker_->reason().isEmpty();
}

void WorksDesk::followBench() {
  if (!inspected_ || inspected_by_ == benchPlan()) return;
  inspected_.reset();
  emit changed();
}

void WorksDesk::followMoulds() {
  const auto present = moulds_maker_->isStale() ? nullptr : moulds_maker_->moulds();
  if (present == reckoned_with_) return;
  reckoned_with_ = present;
  reckoning_.reset();
  emit changed();
}

void WorksDesk::forget() {
  reckoned_with_ = moulds_maker_->isStale() ? nullptr : moulds_maker_->moulds();
  reckoning_.reset();
  inspected_.reset();
  shrinkage_.reset();
  emit changed();
}

double WorksDesk::brass_kg() const {
  const auto made = bench_->made();
  return made && made->frame && made->metal ? totals_of(parts_of(*made)).brass_g / 1000 : 0;
}

const WorksReckoning* WorksDesk::reckoning() const {
  if (!bench_->hasBook() || !bench_->plan()) return nullptr;
  if (!reckoning_) {
    WorksFacts facts;
    facts.brass_kg = brass_kg();
    if (reckoned_with_) facts.moulds = facts_of(*reckoned_with_);
    facts.today = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    const Lensbook& book = bench_->book();
    if (kinds_of_ != bench_->plan()) {
      kinds_of_ = bench_->plan();
      kinds_ = works_kinds(*kinds_of_);
    }
    reckoning_ = reckon_works(*kinds_of_, kinds_, book.ledger(), book.works_log(), facts);
  }
  return &*reckoning_;
}

const std::vector<InspectedPrism>& WorksDesk::inspected() const {
  if (!inspected_) {
    inspected_.emplace();
    if (bench_->hasBook() && bench_->plan()) {
      const Lensbook& book = bench_->book();
      InspectionRecord record;
      record.measurements = book.works_log().measurements;
      record.decisions = book.works_log().decisions;
      record.ledger = book.ledger();
      record.readings = book.readings();
      inspected_by_ = benchPlan();
      record.bench = inspected_by_.get();
      // Later, since it may tell of a change at once.
      if (!book.readings().empty())
        QMetaObject::invokeMethod(
            bench_maker_, [maker = bench_maker_] { maker->setWatched(true); }, Qt::QueuedConnection);
      inspected_ = inspect(*bench_->plan(), record);
    }
  }
  return *inspected_;
}

const std::vector<ShrinkFit>& WorksDesk::shrinkage() const {
  if (!shrinkage_) {
    shrinkage_.emplace();
    if (bench_->hasBook()) {
      const WorksSettings& works = bench_->values().works;
      const std::vector<ShrinkReading>& readings = bench_->book().works_log().shrink;
      *shrinkage_ = fit_all_shrinkage(readings);
      const auto in_use = [&](const ShrinkFit& fit) {
        return fit.resin == works.resin && fit.resin_lot == works.resin_batch;
      };
      if (std::none_of(shrinkage_->begin(), shrinkage_->end(), in_use) && !shrinkage_->empty())
        shrinkage_->push_back(fit_shrinkage(readings, works.resin, works.resin_batch));
      std::stable_partition(shrinkage_->begin(), shrinkage_->end(), in_use);
    }
  }
  return *shrinkage_;
}

}  // namespace prismwright
