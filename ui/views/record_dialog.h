#pragma once

#include <QDialog>

#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;
class QPushButton;

namespace prismwright {

/// Records a step for one prism or a whole tray. Says what is missing (a note for a skipped step, a stage
/// already reached) while it is filled in, by the same rules that the book keeps.
///
/// Object names: record.marks, record.stage, record.backTo, record.by, record.note, record.advice,
/// record.record, record.cancel.
class RecordDialog : public QDialog {
  Q_OBJECT

 public:
  /// `marks`: the prisms offered, all ticked; `bench` must have a plan.
  RecordDialog(Workbench* bench, const QStringList& marks, QWidget* parent = nullptr);

 private:
  void fillMarks(const QStringList& marks);
  [[nodiscard]] StepRequest request() const;
  void advise();
  void record();

  Workbench* bench_;
  QListWidget* marks_;
  QComboBox* stage_;
  QComboBox* back_to_;
  QLabel* back_to_label_;
  QLineEdit* by_;
  QPlainTextEdit* note_;
  QLabel* advice_;
  QPushButton* record_;
};

}  // namespace prismwright
