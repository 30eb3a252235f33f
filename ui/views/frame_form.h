#pragma once

#include <QWidget>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

class QuantityEditor;

/// What the maker decides about the frame, each value edited in place: ribs, setting, parts, door,
/// surroundings, cutting and sheets.
///
/// Object names: frame.form (itself), fold.frame.NAME, field.KEY.
class FrameForm : public QWidget {
  Q_OBJECT

 public:
  explicit FrameForm(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeFold(const char* name, const QString& title, const std::vector<const char*>& keys, bool open);
  void follow();

  Workbench* bench_;
  std::vector<QuantityEditor*> editors_;
};

}  // namespace prismwright
