#pragma once

#include <QScrollArea>
#include <vector>

#include "ui/models/workbench.h"

class QFormLayout;

namespace prismwright {

class Fold;
class QuantityEditor;

/// Every quantity of the section, the material and the lamp, under sub-heads that open and shut; each with its
/// label, unit and range, taken at once. What has no say as the others stand is disabled, with the reason.
///
/// Object names of the sub-heads: fold.faces, fold.refracting, fold.upper, fold.lower, fold.joints, fold.ribs,
/// fold.aim, fold.material.
class SectionForm : public QScrollArea {
  Q_OBJECT

 public:
  explicit SectionForm(Workbench* bench, QWidget* parent = nullptr);
  [[nodiscard]] QSize sizeHint() const override { return {340, 480}; }
  /// Opens the sub-heads that a column of this height has room for.
  void openFirst(int folds);

 private:
  struct Group;
  void addGroup(const Group& group);
  void addEditor(QFormLayout* form, const std::string& key);
  void follow();

  Workbench* bench_;
  QWidget* inside_;
  std::vector<Fold*> folds_;
  std::vector<QuantityEditor*> editors_;
};

}  // namespace prismwright
