#pragma once

#include "ui/models/frame_maker.h"
#include "ui/views/writing_dialog.h"

class QCheckBox;

namespace prismwright {

/// Writes what a shop needs to make the frame into a folder. Object names: frame.exportTo and those of
/// WritingDialog, frame.exportTo.plates, .nests, .step, .list, .drawings.
class FrameExportDialog : public WritingDialog {
  Q_OBJECT

 public:
  /// `made` must hold a frame; its sheets are laid out anew where `nest` is null. `inches`: lengths on the
  /// drawings.
  FrameExportDialog(std::shared_ptr<const MadeLens> made, std::shared_ptr<const Nest> nest,
                    const QString& folder, bool inches, QWidget* parent);

 private:
  void begin() override;
  QCheckBox* addBox(const char* name, const QString& words, bool on);

  std::shared_ptr<const MadeLens> made_;
  std::shared_ptr<const Nest> nest_;
  bool inches_;
  QCheckBox* plates_;
  QCheckBox* nests_;
  QCheckBox* step_;
  QCheckBox* list_;
  QCheckBox* drawings_;
};

}  // namespace prismwright
