#pragma once

#include <QObject>
#include <QTimer>
#include <optional>

#include "ui/models/workbench.h"

namespace prismwright {

/// Where the outer limit of a zone can be taken hold of: on its limiting ray, at the glass.
struct LimitGrip {
  SectionPoint place;
  SectionPoint focus;    ///< of its band, from which the limit is seen
  double limit_deg = 0;  ///< below level for a lower prism
};
/// Blank where there is no such zone.
std::optional<LimitGrip> limit_grip(const Section& section, const QString& zone);

/// A zone's limit being dragged: the section is previewed for where the hand is, and written once when it lets
/// go. Moves that come quicker than the section is worked out are left out.
class LimitDrag : public QObject {
  Q_OBJECT

 public:
  explicit LimitDrag(Workbench* bench, QObject* parent = nullptr);

  /// Takes hold; does nothing for a zone that is locked or unknown, or when the book is read-only.
  void take(const QString& zone);
  void moveTo(SectionPoint place);
  /// Writes the last limit that gave a section, as one step.
  void letGo();
  /// Leaves the book as it was.
  void putBack();

  [[nodiscard]] bool isHeld() const { return plan_ != nullptr; }
  [[nodiscard]] QString zone() const { return zone_; }
  /// Why the place of the hand gives no section; empty when it does.
  [[nodiscard]] QString refusal() const { return refusal_; }
  /// Whether the zone's limit may be dragged at all.
  [[nodiscard]] bool allows(const QString& zone) const;

 signals:
  void moved();  ///< taken, let go, put back, or refusal() is new

 private:
  void tryWanted();

  Workbench* bench_;
  QTimer soon_;
  QString zone_;
  std::shared_ptr<const LensPlan> plan_;  ///< as it stood when the limit was taken; null: nothing is held
  std::optional<double> wanted_deg_;      ///< not tried yet
  std::optional<SectionEdit> good_;
  QString refusal_;
};

}  // namespace prismwright
