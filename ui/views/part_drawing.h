#pragma once

#include <QWidget>

#include "ui/models/parts_table.h"

class QLabel;
class QToolButton;

namespace prismwright {

class SheetPicture;

/// Writes the drawing of a flat part whole or not at all: .pdf, .svg or, as cut, .dxf, by the ending of `path`;
/// any other ending is refused. `marks`: all alike parts, the part's own first.
Done save_part_drawing(const FlatPart& part, const std::vector<std::string>& marks, const LensValues& values,
                       bool inches, const QString& path);

/// The drawing of one part with its dimensions, as it will come on paper, and a button that saves it.
///
/// Object names: frame.drawing (the picture), frame.drawing.told, frame.drawing.save; the dialog is
/// frame.drawing.saveTo.
class PartDrawing : public QWidget {
  Q_OBJECT

 public:
  PartDrawing(Workbench* bench, QWidget* parent);

  /// The part whose mark comes first; those alike are told on the drawing. A null `made`, or a line without
  /// marks, shows nothing.
  void setPart(const std::shared_ptr<const MadeLens>& made, const PartsLine& alike);
  [[nodiscard]] SheetPicture* picture() const { return picture_; }

 private:
  void draw(bool keeps_view);
  void save();

  Workbench* bench_;
  std::shared_ptr<const MadeLens> made_;
  PartsLine alike_;
  const FlatPart* part_ = nullptr;  ///< in made_
  SheetPicture* picture_;
  QLabel* told_;
  QToolButton* save_;
};

}  // namespace prismwright
