#pragma once

#include <mutex>

#include "core/works/congruence.h"
#include "geometry/works_exports.h"
#include "ui/models/workbench.h"
#include "ui/views/writing_dialog.h"

class QCheckBox;

namespace prismwright {

/// Writes masters, or moulds, into a folder. Object names: masters.exportTo or moulds.exportTo and those of
/// WritingDialog, with .step, .stl, .threeMf, .sheets, .chosen.
class WorksExportDialog : public WritingDialog {
  Q_OBJECT

 public:
  enum class Files { masters, moulds };
  /// `chosen`: names of masters that are offered by themselves; may be empty.
  WorksExportDialog(Files files, std::shared_ptr<const LensPlan> plan, std::vector<Master> masters,
                    const QStringList& chosen, bool inches, const QString& folder, QWidget* parent);
  ~WorksExportDialog() override;

 protected:
  [[nodiscard]] QString afterword() const override;

 private:
  void begin() override;
  QCheckBox* addBox(const char* name, const QString& words, bool on);
  [[nodiscard]] std::vector<std::string> only() const;

  struct Told;  // what the worker wrote, shared with it
  Files files_;
  std::shared_ptr<const LensPlan> plan_;
  std::vector<Master> masters_;
  QStringList chosen_;
  bool inches_;
  std::shared_ptr<Told> told_;
  QCheckBox* step_ = nullptr;
  QCheckBox* stl_ = nullptr;
  QCheckBox* three_mf_ = nullptr;
  QCheckBox* sheets_ = nullptr;
  QCheckBox* only_ = nullptr;
};

}  // namespace prismwright
