#pragma once

#include <QObject>
#include <memory>
#include <optional>
#include <vector>

#include "core/works/inspection.h"
#include "core/works/shrink_fit.h"
#include "core/works/works_reckoning.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// What the works page shows of the open book, worked out when first asked for after an edit or a record and
/// then kept. All in the window's thread: a few milliseconds for most lenses.
class WorksDesk : public QObject {
  Q_OBJECT

 public:
  explicit WorksDesk(Workbench* bench, QObject* parent = nullptr);

  /// Null where the book has no plan.
  [[nodiscard]] const WorksReckoning* reckoning() const;
  [[nodiscard]] const std::vector<InspectedPrism>& inspected() const;
  /// Shrinkage as measured of every resin and lot; that of the resin in use first.
  [[nodiscard]] const std::vector<ShrinkFit>& shrinkage() const;

  [[nodiscard]] Workbench* bench() const { return bench_; }

 signals:
  void changed();  ///< any of the above may be another

 private:
  void forget();
  [[nodiscard]] double brass_kg() const;

  Workbench* bench_;
  mutable std::shared_ptr<const LensPlan> kinds_of_;
  mutable WorksKinds kinds_;
  mutable std::optional<WorksReckoning> reckoning_;
  mutable std::optional<std::vector<InspectedPrism>> inspected_;
  mutable std::optional<std::vector<ShrinkFit>> shrinkage_;
};

}  // namespace prismwright
