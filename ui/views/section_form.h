#pragma once

#include <QScrollArea>

#include "ui/models/workbench.h"

namespace prismwright {

/// Every quantity of the section, each with its label, unit and range; taken at once.
class SectionForm : public QScrollArea {
  Q_OBJECT

 public:
  explicit SectionForm(Workbench* bench, QWidget* parent = nullptr);
  [[nodiscard]] QSize sizeHint() const override { return {340, 480}; }
};

}  // namespace prismwright
