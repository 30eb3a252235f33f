#pragma once

#include <QDialog>
#include <atomic>
#include <functional>
#include <string>
#include <thread>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"

class QFormLayout;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace prismwright {

/// A dialog that writes files into a folder, in a worker thread, with a bar and Stop.
/// Object names: NAME (itself), NAME.folder, NAME.browse, NAME.bar, NAME.message, NAME.write, NAME.close.
class WritingDialog : public QDialog {
  Q_OBJECT

 public:
  ~WritingDialog() override;

  [[nodiscard]] QString folder() const;
  [[nodiscard]] bool isWriting() const { return worker_.joinable(); }
  void reject() override;

 protected:
  /// Writes into the folder and answers the paths written. Called in the worker thread.
  using Work =
      std::function<Outcome<std::vector<std::string>>(const std::string& folder, const Progress& progress)>;

  WritingDialog(const QString& name, const QString& title, const QString& folder, QWidget* parent);
  /// The form, the folder in its first row.
  [[nodiscard]] QFormLayout* form() const { return form_; }
  /// The last rows: bar, message and buttons. Once, at the end of the making.
  void addFoot();
  /// The button was pressed: reads the fields and calls write(), or finish() with what is amiss.
  virtual void begin() = 0;
  void write(Work work);
  /// What is to be told beside the number of files once they are written.
  [[nodiscard]] virtual QString afterword() const { return {}; }
  void finish(const QString& message, bool well);

 private:
  void setWriting(bool writing);

  QString name_;
  QFormLayout* form_;
  QLineEdit* folder_;
  QProgressBar* bar_ = nullptr;
  QLabel* message_ = nullptr;
  QPushButton* write_ = nullptr;
  QPushButton* close_ = nullptr;
  std::atomic<bool> stop_ = false;
  std::thread worker_;
};

}  // namespace prismwright
