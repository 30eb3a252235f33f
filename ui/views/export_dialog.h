#pragma once

#include <memory>

#include "ui/models/workbench.h"
#include "ui/views/writing_dialog.h"

class QCheckBox;
class QLineEdit;

namespace prismwright {

/// Writes STEP and STL files of the finished solids into a folder. Object names: export and those of
/// WritingDialog, export.step, export.stl, export.chord, export.selected.
class ExportDialog : public WritingDialog {
  Q_OBJECT

 public:
  /// `bench` must hold a made lens.
  ExportDialog(Workbench* bench, const QString& folder, QWidget* parent = nullptr);

 private:
  void begin() override;

  std::shared_ptr<const MadeLens> made_;
  QStringList selection_;
  QLineEdit* chord_;
  QCheckBox* step_;
  QCheckBox* stl_;
  QCheckBox* selected_;
};

}  // namespace prismwright
