#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <vector>

#include "core/works/inspection.h"
#include "core/works/shrink_fit.h"
#include "core/works/works_reckoning.h"
#include "ui/models/bench_maker.h"
#include "ui/models/moulds_maker.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// What the works page shows of the open book, worked out when first asked for after an edit or a record and
/// then kept. In the window's thread, a few milliseconds for most lenses; moulds and the plan of the laser
/// bench are made in threads of their own, and what depends on them follows.
class WorksDesk : public QObject {
  Q_OBJECT

 public:
  explicit WorksDesk(Workbench* bench, QObject* parent = nullptr);

  /// Null where the book has no plan. Loads and costs reckon with the moulds of mouldsMaker() while these are
  /// of the present values, else with a guess.
  [[nodiscard]] const WorksReckoning* reckoning() const;
  /// Bench readings count as the laser, of the casting that stands, once the bench's plan is there.
  [[nodiscard]] const std::vector<InspectedPrism>& inspected() const;
  /// There are readings, and the plan that they are judged by is still being made.
  [[nodiscard]] bool benchIsPending() const;
  /// Shrinkage as measured of every resin and lot; that of the resin in use first.
  [[nodiscard]] const std::vector<ShrinkFit>& shrinkage() const;

  [[nodiscard]] Workbench* bench() const { return bench_; }
  [[nodiscard]] MouldsMaker* mouldsMaker() const { return moulds_maker_; }
  [[nodiscard]] BenchMaker* benchMaker() const { return bench_maker_; }

 signals:
  void changed();  ///< any of the above may be another

 private:
  void forget();
  [[nodiscard]] double brass_kg() const;
  /// The bench's plan for the book's readings; null while there is none, and where there are no readings.
  [[nodiscard]] std::shared_ptr<const BenchPlan> benchPlan() const;
  void followBench();
  void followMoulds();

  Workbench* bench_;
  MouldsMaker* moulds_maker_;
  BenchMaker* bench_maker_;
  std::shared_ptr<const MouldsMaker::Moulds> reckoned_with_;  ///< of the present values; null: none
  mutable std::shared_ptr<const BenchPlan> inspected_by_;
  mutable std::shared_ptr<const LensPlan> kinds_of_;
  mutable WorksKinds kinds_;
  mutable std::optional<WorksReckoning> reckoning_;
  mutable std::optional<std::vector<InspectedPrism>> inspected_;
  mutable std::optional<std::vector<ShrinkFit>> shrinkage_;
};

}  // namespace prismwright
