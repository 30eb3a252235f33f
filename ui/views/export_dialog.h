#pragma once

#include <QDialog>
#include <atomic>
#include <memory>
#include <thread>

#include "ui/models/workbench.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace prismwright {

/// Writes STEP and STL files of the finished solids into a folder, in a worker thread, with a bar and Stop.
/// Object names: export.folder, export.browse, export.step, export.stl, export.chord, export.selected,
/// export.bar, export.message, export.write, export.close.
class ExportDialog : public QDialog {
  Q_OBJECT

 public:
  /// `bench` must hold a made lens.
  ExportDialog(Workbench* bench, const QString& folder, QWidget* parent = nullptr);
  ~ExportDialog() override;

  [[nodiscard]] QString folder() const;
  [[nodiscard]] bool isWriting() const { return worker_.joinable(); }
  void reject() override;

 private:
  void write();
  void finish(const QString& message, bool well);
  void setWriting(bool writing);

  std::shared_ptr<const MadeLens> made_;
  QStringList selection_;
  QLineEdit* folder_;
  QLineEdit* chord_;
  QCheckBox* step_;
  QCheckBox* stl_;
  QCheckBox* selected_;
  QProgressBar* bar_;
  QLabel* message_;
  QPushButton* write_;
  QPushButton* close_;
  std::atomic<bool> stop_ = false;
  std::thread worker_;
};

}  // namespace prismwright
