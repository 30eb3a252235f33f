#pragma once

#include <QWidget>

#include "ui/models/despatch_wish.h"

class QComboBox;
class QHBoxLayout;
class QLineEdit;

namespace prismwright {

class NumberField;
class RefusalLabel;

/// How the next pack is wanted: folder, date, revision, paper, and the choices of the estimate. A field takes
/// effect when it is left or Return is pressed; what is refused stays with the reason under the fields.
///
/// Object names: despatch.folder, despatch.browse, despatch.date, despatch.revision, despatch.paper,
/// fold.despatch.estimate, despatch.margin, despatch.days, despatch.spares, despatch.note, despatch.refusal.
class DespatchForm : public QWidget {
  Q_OBJECT

 public:
  explicit DespatchForm(QWidget* parent);

  /// `offered_folder` is taken where the field of the folder is cleared.
  void setWish(const DespatchWish& wish, const QString& offered_folder);
  /// The revision that is taken where its field is blank.
  void setOfferedRevision(const QString& revision);

 signals:
  void wishChanged(const DespatchWish& wish);

 private:
  QWidget* makeStrip();
  QWidget* makeEstimate();
  QLineEdit* addLine(QHBoxLayout* row, const char* name, const QString& label, int width);
  void takeFolder();
  void browse();
  void takeDate();
  void takeRevision();
  void takePaper();
  void send();

  DespatchWish wish_;
  QString offered_folder_;
  QLineEdit* folder_ = nullptr;
  QLineEdit* date_ = nullptr;
  QLineEdit* revision_ = nullptr;
  QComboBox* paper_ = nullptr;
  NumberField* margin_ = nullptr;
  NumberField* days_ = nullptr;
  NumberField* spares_ = nullptr;
  QLineEdit* note_ = nullptr;
  RefusalLabel* refusal_ = nullptr;
};

}  // namespace prismwright
