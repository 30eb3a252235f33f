#pragma once

#include <QObject>
#include <QStringList>
#include <memory>
#include <optional>
#include <vector>

#include "core/lens/section_compare.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// A section to be laid over the drawing of another.
struct SectionOverlay {
  QString name;
  std::shared_ptr<const Section> section;
};

/// Two sections side by side: the present one and the variants that the book keeps, any two of them. Nothing is
/// worked out until the comparison is looked at.
class SectionComparer : public QObject {
  Q_OBJECT

 public:
  explicit SectionComparer(Workbench* bench, QObject* parent = nullptr);

  /// "present" and the names of the variants.
  [[nodiscard]] QStringList names() const;
  [[nodiscard]] QString first() const { return first_; }
  [[nodiscard]] QString second() const { return second_; }
  void choose(const QString& first, const QString& second);
  /// Whether somebody looks; a comparison that nobody sees is not kept up.
  void setWatched(bool watched);

  /// Blank while there is nothing to compare.
  [[nodiscard]] const std::optional<SectionComparison>& comparison() const { return comparison_; }
  /// The chosen sections that the drawing does not show by itself: all but the present one.
  [[nodiscard]] const std::vector<SectionOverlay>& overlays() const { return overlays_; }
  /// Why the chosen two cannot be compared; empty when they can.
  [[nodiscard]] QString problem() const { return problem_; }

 signals:
  void changed();

 private:
  void follow();
  void workOut();
  [[nodiscard]] Outcome<ComparedSection> section(const QString& name) const;

  Workbench* bench_;
  QString first_;
  QString second_;
  bool watched_ = false;
  std::optional<SectionComparison> comparison_;
  std::vector<SectionOverlay> overlays_;
  QString problem_;
};

}  // namespace prismwright
