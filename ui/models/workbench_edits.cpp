#include <algorithm>

#include "core/lens/flat_inner_face.h"
#include "core/light/bench_check.h"
#include "core/works/spares.h"
#include "ui/models/shown_numbers.h"
#include "ui/models/workbench.h"
#include "ui/models/workbench_inside.h"

namespace prismwright {
namespace {

Problem no_book_problem() {
  return request_problem("no_book", "", "No lensbook is open: open one or begin a new one first.");
}

bool same_zones(const Section& one, const Section& other) {
  return std::equal(one.zones.begin(), one.zones.end(), other.zones.begin(), other.zones.end(),
                    [](const Zone& a, const Zone& b) { return a.mark == b.mark; });
}

WorkedOut proved(LensPlan plan) {
  WorkedOut worked;
  worked.plan = std::make_shared<const LensPlan>(std::move(plan));
  worked.proof = std::make_shared<const Proof>(prove(worked.plan->section));
  worked.tracer = std::make_shared<const SectionTracer>(worked.plan->section);
  return worked;
}

/// A preview shows the section alone: where its zones are those of the present one, the present prisms stand in
/// for its own, which saves planning them anew at every move of the pointer.
Outcome<WorkedOut> previewed(const LensValues& values, const LensPlan* present) {
  Outcome<Section> section = solve_section(values.section_input());
  if (!section) return section.problem();
  if (const Done facets = check_flat_facets(values, *section); !facets) return facets.problem();
  if (!present || !same_zones(present->section, *section))
    return proved(plan_lens(values, std::move(section).value()));
  return proved(LensPlan{values, std::move(section).value(), place_panels(values.panels), present->prisms});
}

}  // namespace

Outcome<WorkedOut> work_out(const LensValues& values) {
  Outcome<LensPlan> planned = plan_lens(values);
  if (!planned) return planned.problem();
  return proved(std::move(planned).value());
}

void Workbench::Inside::workOut() {
  Outcome<WorkedOut> worked = work_out(book->values());
  problem.reset();
  if (worked)
    present = std::move(worked).value();
  else
    problem = worked.problem();
}

void Workbench::Inside::readStages() {
  stages = stages_from(book->ledger());
  if (!present) return;
  for (const PlannedPrism& prism : present.plan->prisms) stages.try_emplace(prism.mark, Stage::drawn);
}

void Workbench::Inside::dropLostSelection() {
  selection.removeIf(
      [this](const QString& mark) { return !present || !present.plan->find(mark.toStdString()); });
}

void Workbench::Inside::afterValues() {
  preview = {};
  workOut();
  readStages();
  dropLostSelection();
  stale = made != nullptr;
  maker->stop();
  job = 0;  // what the stopped work still sends is for values of the past
  making = false;
  if (!problem) rest.start();
}

Done Workbench::refuse(Problem problem) {
  emit refused(sentence_of(problem));
  return problem;
}

void Workbench::tellOfValues(const QStringList& selected_before) {
  emit valuesChanged();
  emit sectionChanged();
  emit madeChanged();
  if (selected_before != inside_->selection) emit selectionChanged();
}

Done Workbench::assign(std::span<const Assignment> assignments, const QString& what) {
  if (!inside_->book) return refuse(no_book_problem());
  Outcome<LensValues> wanted = with_assignments(values(), assignments);
  if (!wanted) return refuse(wanted.problem());
  if (changed_keys(values(), *wanted).empty()) {
    dropPreview();
    return {};
  }
  return write(*wanted, what.isEmpty() ? change_words(values(), *wanted) : what);
}

Done Workbench::write(const LensValues& wanted, const QString& what) {
  if (Done done = inside_->book->edit(wanted, what.toStdString()); !done) return refuse(done.problem());
  const QStringList selected = inside_->selection;
  inside_->afterValues();
  tellOfValues(selected);
  return {};
}

Done Workbench::edit(const Outcome<SectionEdit>& edit) {
  if (!edit) return refuse(edit.problem());
  return assign(edit->assignments, QString::fromStdString(edit->what));
}

Done Workbench::preview(std::span<const Assignment> assignments) {
  if (!inside_->book) return no_book_problem();
  Outcome<LensValues> wanted = with_checked_assignments(values(), assignments);
  if (!wanted) return wanted.problem();
  Outcome<WorkedOut> worked = previewed(*wanted, inside_->present.plan.get());
  if (!worked) return worked.problem();
  inside_->preview = std::move(worked).value();
  emit sectionChanged();
  return {};
}

void Workbench::dropPreview() {
  if (!inside_->preview) return;
  inside_->preview = {};
  emit sectionChanged();
}

Done Workbench::undo() {
  if (!inside_->book) return no_book_problem();
  if (Outcome<std::string> undone = inside_->book->undo(); !undone) return refuse(undone.problem());
  const QStringList selected = inside_->selection;
  inside_->afterValues();
  tellOfValues(selected);
  emit variantsChanged();
  return {};
}

Done Workbench::redo() {
  if (!inside_->book) return no_book_problem();
  if (Outcome<std::string> redone = inside_->book->redo(); !redone) return refuse(redone.problem());
  const QStringList selected = inside_->selection;
  inside_->afterValues();
  tellOfValues(selected);
  emit variantsChanged();
  return {};
}

Done Workbench::keepVariant(const QString& name) {
  return afterVariants([&] { return inside_->book->keep_variant(name.toStdString()); });
}

Done Workbench::dropVariant(const QString& name) {
  return afterVariants([&] { return inside_->book->drop_variant(name.toStdString()); });
}

Done Workbench::renameVariant(const QString& name, const QString& new_name) {
  return afterVariants(
      [&] { return inside_->book->rename_variant(name.toStdString(), new_name.toStdString()); });
}

Done Workbench::takeVariant(const QString& name) {
  if (!inside_->book) return refuse(no_book_problem());
  const auto variant = inside_->book->variant(name.toStdString());
  if (!variant) return refuse(variant.problem());
  const auto taken = with_variant(values(), *variant);
  if (!taken) return refuse(taken.problem());
  for (const std::string& note : taken->notes) emit refused(QString::fromStdString(note));
  return write(taken->values, tr("take over the section \"%1\"").arg(name));
}

Done Workbench::afterVariants(const std::function<Done()>& change) {
  if (!inside_->book) return refuse(no_book_problem());
  if (Done done = change(); !done) return refuse(done.problem());
  emit variantsChanged();
  return {};
}

Done Workbench::record(const StepRequest& request, const WorksLog& more) {
  if (!inside_->book) return refuse(no_book_problem());
  std::vector<std::string> known;
  if (inside_->present)
    for (const PlannedPrism& prism : inside_->present.plan->prisms) known.push_back(prism.mark);
  known = workable_marks(known, inside_->book->ledger(), request.marks);
  Outcome<std::vector<LedgerEntry>> lines = plan_steps(request, inside_->stages, known);
  if (!lines) return refuse(lines.problem());
  if (Done done = inside_->book->record(*lines, more); !done) return refuse(done.problem());
  inside_->readStages();
  emit ledgerChanged();
  return {};
}

Done Workbench::giveSpare(const QString& mark, const QString& spare, const QString& by,
                          std::span<const Master> masters) {
  if (!inside_->book) return refuse(no_book_problem());
  const Outcome<std::vector<LedgerEntry>> lines =
      give_spare(mark.toStdString(), spare.toStdString(), by.toStdString(), {}, inside_->stages, masters);
  if (!lines) return refuse(lines.problem());
  if (Done done = inside_->book->record(*lines); !done) return refuse(done.problem());
  inside_->readStages();
  emit ledgerChanged();
  return {};
}

Done Workbench::addToWorks(const WorksLog& more) {
  if (!inside_->book) return refuse(no_book_problem());
  if (Done done = inside_->book->record({}, more); !done) return refuse(done.problem());
  emit ledgerChanged();
  return {};
}

Done Workbench::recordReading(const BenchPlan& plan, const BenchReading& reading) {
  if (!inside_->book) return refuse(no_book_problem());
  if (const Done fit = check_reading(plan, reading); !fit) return refuse(fit.problem());
  if (const Done kept = inside_->book->record_readings({&reading, 1}); !kept) return refuse(kept.problem());
  emit readingsChanged();
  return {};
}

}  // namespace prismwright
