#pragma once

#include <QDialog>
#include <optional>

#include "core/book/lensbook.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace prismwright {

/// Asks for what a new lensbook starts from and makes it. A refusal is shown in the dialog, which stays open.
/// Object names: new.order, new.work, new.panels, new.material, new.title, new.file, new.browse, new.refusal,
/// new.make, new.cancel.
class NewBookDialog : public QDialog {
  Q_OBJECT

 public:
  explicit NewBookDialog(const QString& folder, QWidget* parent = nullptr);
  /// The book made; blank when the dialog was left. Can be taken once.
  std::optional<Lensbook> takeBook();

 private:
  void make();
  void browse();
  QComboBox* order_;
  QComboBox* work_;
  QComboBox* material_;
  QSpinBox* panels_;
  QLineEdit* title_;
  QLineEdit* file_;
  QLabel* refusal_;
  std::optional<Lensbook> book_;
};

}  // namespace prismwright
