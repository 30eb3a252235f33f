#pragma once

#include <QObject>
#include <QString>
#include <QStringList>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "core/lens/facet_departure.h"
#include "core/lens/plan.h"
#include "core/lens/quantities.h"
#include "core/lens/section_edits.h"
#include "core/optics/proof.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

struct BenchPlan;
struct Master;

/// One made lens: all results belong to the same values.
struct MadeLens {
  std::shared_ptr<const LensPlan> plan;
  std::shared_ptr<const LensBodies> bodies;
  std::shared_ptr<const FramePlan> frame;
  std::shared_ptr<const std::vector<FrameBody>> metal;
  std::shared_ptr<const std::vector<Clearance>> clearances;  ///< never null; empty until measured
  bool clearances_known = false;                ///< solids are shown before their clearances have been measured
  std::map<std::string, std::size_t> tightest;  ///< by prism mark: index of its tightest clearance

  /// The tightest clearance of a prism, or of the whole lens for an empty mark; null when not known.
  [[nodiscard]] const Clearance* tightest_of(const std::string& mark) const;
};

/// The open lensbook with everything worked out from it, and the one selection that all pages share.
///
/// Section, proof and plan are worked out at once on every edit (a few milliseconds). Solids, frame and
/// clearances follow in a worker thread; a newer edit stops the older work. All signals come in the window's
/// thread.
class Workbench : public QObject {
  Q_OBJECT

 public:
  explicit Workbench(QObject* parent = nullptr);
  ~Workbench() override;

  /// Takes over an opened book and works everything out.
  void setBook(Lensbook book);
  [[nodiscard]] bool hasBook() const;
  [[nodiscard]] const Lensbook& book() const;
  [[nodiscard]] const LensValues& values() const;

  /// Plan of the present values, or why there is none (then pages show the reason and the last good plan
  /// stays).
  [[nodiscard]] std::shared_ptr<const LensPlan> plan() const;
  [[nodiscard]] std::shared_ptr<const Proof> proof() const;
  /// What flat inner faces do to the light, zone by zone; empty where there are none. Traced when first asked
  /// for, once for each plan.
  [[nodiscard]] const std::vector<FacetDeparture>& facets() const;
  [[nodiscard]] const std::optional<Problem>& sectionProblem() const;
  /// A tracer of the present section, for the laser.
  [[nodiscard]] const SectionTracer* tracer() const;

  /// The newest finished solids; null until the first are ready. `stale` while newer ones are being made.
  [[nodiscard]] std::shared_ptr<const MadeLens> made() const;
  [[nodiscard]] bool madeIsStale() const;

  /// Stage of every prism by the ledger.
  [[nodiscard]] const StageByMark& stages() const;

  /// One edit of one or more quantities; `what` is shown by undo (empty: said from the values that change).
  /// A refusal changes nothing; refused() is sent as well.
  Done assign(std::span<const Assignment> assignments, const QString& what);
  /// The same for an edit of zones; its own words are shown by undo.
  Done edit(const Outcome<SectionEdit>& edit);
  /// Shows the section as it would be with these quantities and writes nothing: until the next edit or
  /// dropPreview(), plan(), proof() and tracer() are the preview's, while values, selection and solids stay.
  /// A refusal leaves what is shown and is not sent by refused().
  Done preview(std::span<const Assignment> assignments);
  void dropPreview();
  [[nodiscard]] bool isPreviewing() const;

  /// Variants of the section (Lensbook); refusals are sent too.
  Done keepVariant(const QString& name);
  Done dropVariant(const QString& name);
  /// The variant in place of the present section, as one step.
  Done takeVariant(const QString& name);
  Done renameVariant(const QString& name, const QString& new_name);

  Done undo();
  Done redo();
  /// Records a step (plan_steps, then the book), with what else was written down: a load of the vessel whose
  /// number the step's castings take (StepRequest::load = Lensbook::kNewLoad).
  Done record(const StepRequest& request, const WorksLog& more = {});
  /// Gives a spare casting to a prism (core/works/spares.h).
  Done giveSpare(const QString& mark, const QString& spare, const QString& by, std::span<const Master> masters);
  /// Adds measurements, decisions, photographs and the like to the book.
  Done addToWorks(const WorksLog& more);
  /// Adds a reading of the laser bench that fits the bench's plan (check_reading, then the book).
  Done recordReading(const BenchPlan& plan, const BenchReading& reading);

  [[nodiscard]] const QStringList& selection() const;  ///< marks of prisms, the leading one first
  void select(const QStringList& marks);

  /// Starts, stops and waits for the heavy work. stopMaking keeps the last made lens.
  void startMaking();
  void stopMaking();
  [[nodiscard]] bool isMaking() const;
  /// For tests and the batch pictures: runs the event loop until the solids are made, at most `timeout_ms`.
  bool waitUntilMade(int timeout_ms);

  /// Lengths are shown in inches instead of mm (a setting of the window, not of the book).
  [[nodiscard]] bool inches() const;
  void setInches(bool inches);

 signals:
  void bookChanged();     ///< another book: everything is new
  void valuesChanged();   ///< values, plan and proof are new (or sectionProblem is)
  void sectionChanged();  ///< what plan(), proof() and tracer() give is new: after bookChanged and
                          ///< valuesChanged, and for every preview
  void variantsChanged();
  void madeChanged();  ///< made() is new, or has become stale
  void makingProgress(double share, const QString& what);
  void makingFinished(bool done, const QString& message);
  void ledgerChanged();    ///< the ledger, or what the works wrote down beside it
  void readingsChanged();  ///< of the laser bench
  void selectionChanged();
  void unitsChanged();
  void refused(const QString& message);  ///< an edit or a record was refused; the window shows the sentence

 private:
  Done refuse(Problem problem);
  Done write(const LensValues& wanted, const QString& what);
  void tellOfValues(const QStringList& selected_before);
  Done afterVariants(const std::function<Done()>& change);

  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
