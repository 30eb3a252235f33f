#pragma once

#include <QDialog>

#include "ui/models/workbench.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace prismwright {

/// Saves the section as a drawing: PDF, SVG or DXF, with its sheet size, unit and the tolerance of the arcs
/// that stand for true curves. The ending of the file's name and the kind follow each other.
///
/// Object names: drawing.kind, drawing.file, drawing.browse, drawing.paper, drawing.unit, drawing.tolerance,
/// drawing.revision, drawing.message, drawing.save, drawing.close.
class DrawingDialog : public QDialog {
  Q_OBJECT

 public:
  /// `bench` must hold a section.
  DrawingDialog(Workbench* bench, const QString& path, QWidget* parent = nullptr);

 private:
  void makeFields(const QString& path);
  void followKind();
  void followName();
  void browse();
  void save();
  void tell(const QString& message, bool well);

  std::shared_ptr<const LensPlan> plan_;
  QComboBox* kind_;
  QLineEdit* file_;
  QComboBox* paper_;
  QComboBox* unit_;
  QLineEdit* tolerance_;
  QLineEdit* revision_;
  QLabel* message_;
};

/// Opens the dialog for the section of the bench, with a name beside its lensbook.
void save_section_drawing(Workbench* bench, QWidget* parent);

}  // namespace prismwright
