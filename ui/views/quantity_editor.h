#pragma once

#include <QWidget>
#include <string>

#include "core/lens/quantities.h"
#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace prismwright {

/// A field for any quantity of the lens: its unit and range stand beside it, what is typed may carry a unit of
/// its own ("3/8 in"), and a refused value keeps its text with the reason under it. Return or leaving the field
/// sends the edit; Escape brings the book's value back. Follows the book, the units shown and read-only books
/// by itself.
///
/// Object names: "editor.KEY" (this widget), "field.KEY" (the line or the choice), "range.KEY", "refusal.KEY".
class QuantityEditor : public QWidget {
  Q_OBJECT

 public:
  /// `key` must be one of quantities().
  QuantityEditor(Workbench* bench, const std::string& key, QWidget* parent = nullptr);
  ~QuantityEditor() override;

  [[nodiscard]] const Quantity& quantity() const { return *quantity_; }
  /// A label for a form with this field as its buddy and the meaning as its tip.
  [[nodiscard]] QLabel* makeLabel(QWidget* parent) const;
  /// Disables the field and says why in place of its range; an empty reason enables it again.
  void setIdle(const QString& reason);
  /// The sentence shown under the field; empty when the last value was taken.
  [[nodiscard]] QString refusal() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void makeLine();
  void makeChoice();
  void follow();
  void send();
  void showRefusal(const QString& sentence);

  Workbench* bench_;
  const Quantity* quantity_;
  QLineEdit* line_ = nullptr;
  QComboBox* choice_ = nullptr;
  QLabel* unit_ = nullptr;
  QLabel* range_ = nullptr;
  QLabel* refusal_ = nullptr;
  QString idle_;
  QString shown_;  ///< what follow() put there: only another text is an edit
};

}  // namespace prismwright
