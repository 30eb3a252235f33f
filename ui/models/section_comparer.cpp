#include "ui/models/section_comparer.h"

#include "geometry/glass_by_zone.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString present_name() {
  return QString::fromUtf8(kPresentName.data(), static_cast<qsizetype>(kPresentName.size()));
}

}  // namespace

SectionComparer::SectionComparer(Workbench* bench, QObject* parent)
    : QObject(parent), bench_(bench), first_(present_name()) {
  connect(bench_, &Workbench::bookChanged, this, &SectionComparer::follow);
  connect(bench_, &Workbench::valuesChanged, this, &SectionComparer::follow);
  connect(bench_, &Workbench::variantsChanged, this, &SectionComparer::follow);
  follow();
}

QStringList SectionComparer::names() const {
  QStringList names{present_name()};
  if (bench_->hasBook())
    for (const SectionVariant& variant : bench_->book().variants())
      names << QString::fromStdString(variant.name);
  return names;
}

void SectionComparer::choose(const QString& first, const QString& second) {
  first_ = first;
  second_ = second;
  follow();
}

void SectionComparer::setWatched(bool watched) {
  if (watched == watched_) return;
  watched_ = watched;
  follow();
}

void SectionComparer::follow() {
  const QStringList known = names();
  if (!known.contains(first_)) first_ = present_name();
  if (!known.contains(second_)) second_.clear();
  comparison_.reset();
  overlays_.clear();
  problem_.clear();
  if (watched_ && bench_->hasBook() && !second_.isEmpty() && first_ != second_) workOut();
  emit changed();
}

void SectionComparer::workOut() {
  const auto one = section(first_);
  const auto other = section(second_);
  if (!one || !other) {
    problem_ = sentence_of(one ? other.problem() : one.problem());
    return;
  }
  comparison_ = compare_sections(*one, *other);
  // The drawing shows the present section by itself.
  for (const auto& [name, compared] : {std::pair(first_, &*one), std::pair(second_, &*other)})
    if (name != present_name()) overlays_.push_back({name, std::make_shared<const Section>(compared->section)});
}

Outcome<ComparedSection> SectionComparer::section(const QString& name) const {
  LensValues values = bench_->values();
  if (name != present_name()) {
    const auto variant = bench_->book().variant(name.toStdString());
    if (!variant) return variant.problem();
    const auto taken = with_variant(values, *variant);
    if (!taken) return taken.problem();
    values = taken->values;
  }
  Outcome<ComparedSection> compared = compared_section(name.toStdString(), values);
  if (compared) compared->glass = glass_by_zone(plan_lens(compared->values, compared->section));
  return compared;
}

}  // namespace prismwright
