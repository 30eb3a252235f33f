#pragma once

#include <QWidget>

#include "core/lens/section_edits.h"
#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace prismwright {

/// Divides a band anew: rule, number and button. Locked zones stay.
///
/// Object names with the band's: divide.upper.rule, divide.upper.number, divide.upper.go.
class DivideRow : public QWidget {
  Q_OBJECT

 public:
  DivideRow(Workbench* bench, Band band, QWidget* parent = nullptr);

 private:
  void follow();
  void showRule();  ///< the unit and the present number of the chosen rule
  void divide();
  [[nodiscard]] Division rule() const;
  [[nodiscard]] Quantity quantity() const;  ///< what the number counts

  Workbench* bench_;
  Band band_;
  QComboBox* rule_;
  QLineEdit* number_;
  QLabel* unit_;
  QWidget* go_;
};

}  // namespace prismwright
