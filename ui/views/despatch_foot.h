#pragma once

#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;
class QTimer;

namespace prismwright {

/// The foot of the page Despatch: the one action, how far it has come, Stop, and how it ended.
///
/// Object names: despatch.message, despatch.progress, despatch.stop, despatch.open, despatch.start,
/// despatch.write.
class DespatchFoot : public QWidget {
  Q_OBJECT

 public:
  explicit DespatchFoot(QWidget* parent);

  void tell(const QString& message, bool amiss = false);
  void setProgress(double share);
  enum class Work { none, running, stopping, halted };
  /// What is done within a moment is not told of, unless `at_once`.
  void setWork(Work work, bool at_once = false);
  void setMayWrite(bool may, const QString& tip);
  /// Whether there is a pack to be opened.
  void setHasPack(bool has);

 signals:
  void writeWanted();
  void stopWanted();
  void againWanted();  ///< what was stopped is to be taken up
  void folderWanted();
  void startPageWanted();

 private:
  void showWork();

  QLabel* message_;
  QProgressBar* bar_;
  QPushButton* stop_;
  QPushButton* open_;
  QPushButton* start_;
  QPushButton* write_;
  Work work_ = Work::none;
  QTimer* moment_;
};

}  // namespace prismwright
