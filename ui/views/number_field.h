#pragma once

#include <QWidget>

#include "core/lens/quantities.h"

class QLabel;
class QLineEdit;

namespace prismwright {

/// A number of the window itself (where the laser points, where the board stands), entered like any quantity of
/// the lensbook: with its unit, a typed unit wins, Return or leaving the field takes it, Escape brings the old
/// value back, and a refused text stays with the reason under it.
///
/// Object names: `name` for the line, `name`.refusal for the sentence.
class NumberField : public QWidget {
  Q_OBJECT

 public:
  /// `quantity` needs no key in the table: unit, limits, label and meaning are used.
  NumberField(Quantity quantity, const QString& name, QWidget* parent = nullptr);

  void setValue(double value);  ///< in the quantity's unit; quiet
  void setInches(bool inches);

 signals:
  void entered(double value);  ///< within the limits, in the quantity's unit

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void send();
  void showRefusal(const QString& refusal);
  [[nodiscard]] QString shown() const;

  Quantity quantity_;
  double value_ = 0;
  bool inches_ = false;
  QLineEdit* line_;
  QLabel* unit_;
  QLabel* refusal_;
};

}  // namespace prismwright
