#pragma once

#include <QDialog>

#include "ui/models/bench_maker.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace prismwright {

/// Records where a prism's spot fell on the board of the laser bench. Says at once what error that is and what
/// mends it, or why the reading cannot be, by the same rules that the book's readings are checked by.
///
/// Object names: reading.mark, reading.height, reading.aside, reading.by, reading.note, reading.place,
/// reading.result, reading.refusal, reading.record, reading.cancel.
class ReadingDialog : public QDialog {
  Q_OBJECT

 public:
  /// `maker` must have a plan, which the dialog keeps to as long as it is open.
  ReadingDialog(Workbench* bench, const BenchMaker* maker, const QString& mark, QWidget* parent = nullptr);

 private:
  void makeFields(const QString& mark);
  void layOut();
  [[nodiscard]] std::string markTyped() const;
  [[nodiscard]] Outcome<BenchReading> reading() const;
  void advise();
  void record();
  void showProblem(const QString& words);

  Workbench* bench_;
  const BenchMaker* maker_;
  std::shared_ptr<const BenchPlan> plan_;
  QLineEdit* mark_ = nullptr;
  QLineEdit* height_ = nullptr;
  QLineEdit* aside_ = nullptr;
  QLineEdit* by_ = nullptr;
  QLineEdit* note_ = nullptr;
  QLabel* place_ = nullptr;
  QLabel* result_ = nullptr;
  QLabel* refusal_ = nullptr;
  QPushButton* record_ = nullptr;
};

}  // namespace prismwright
