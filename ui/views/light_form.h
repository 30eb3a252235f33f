#pragma once

#include <QWidget>
#include <vector>

#include "ui/models/workbench.h"
#include "ui/views/value_rows.h"

class QComboBox;

namespace prismwright {

/// The values that rule the light: lamp, turn, screens and what it is judged by, each edited in place, and a
/// choice of generic lamps that sets the lamp in one step.
///
/// Object names: light.form (itself), light.generic (the choice), fold.light.NAME, field.KEY.
class LightForm : public QWidget {
  Q_OBJECT

 public:
  explicit LightForm(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeFold(const char* name, const QString& title, const std::vector<const char*>& keys, bool open);
  QWidget* makeGeneric();
  void takeGeneric(int index);
  void follow();
  void followIdle();

  Workbench* bench_;
  QComboBox* generic_ = nullptr;
  std::vector<ValueRow> rows_;
};

}  // namespace prismwright
