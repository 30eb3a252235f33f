#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// What the maker decides about masters, moulds, castings, inspection, time and money, each value edited in
/// place, in three columns.
///
/// Object names: works.form (itself), fold.works.NAME, field.KEY.
class WorksForm : public QWidget {
  Q_OBJECT

 public:
  explicit WorksForm(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeFold(const char* name, const QString& title, const std::vector<const char*>& keys);

  Workbench* bench_;
};

}  // namespace prismwright
