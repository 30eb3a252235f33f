#pragma once

#include <QDialog>

#include "core/works/load_plan.h"
#include "ui/models/workbench.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
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
/// record.record, record.cancel; for castings record.load (whether a load is recorded too), record.lot,
/// record.tint, record.resinG, record.initiatorG, record.tintG.
class RecordDialog : public QDialog {
  Q_OBJECT

 public:
  /// `marks`: the prisms offered, all ticked; `bench` must have a plan.
  RecordDialog(Workbench* bench, const QStringList& marks, QWidget* parent = nullptr);
  /// Only this one of the prisms offered stays ticked.
  void tickOnly(const QString& mark);
  /// A filling of the vessel is recorded with the step: its masses as planned, to be put right.
  void offerLoad(const LoadMasses& masses);

 private:
  void fillMarks(const QStringList& marks);
  [[nodiscard]] StepRequest request() const;
  void advise();
  void record();
  void makeLoad(QFormLayout& form);
  /// The load as it is filled in, or what is amiss; empty where none is recorded.
  [[nodiscard]] Outcome<WorksLog> load() const;

  Workbench* bench_;
  QListWidget* marks_;
  QComboBox* stage_;
  QComboBox* back_to_;
  QLabel* back_to_label_;
  QLineEdit* by_;
  QPlainTextEdit* note_;
  QLabel* advice_;
  QPushButton* record_;
  QCheckBox* with_load_ = nullptr;
  QWidget* load_ = nullptr;
  QLineEdit* lot_ = nullptr;
  QLineEdit* tint_ = nullptr;
  QLineEdit* resin_g_ = nullptr;
  QLineEdit* initiator_g_ = nullptr;
  QLineEdit* tint_g_ = nullptr;
};

}  // namespace prismwright
