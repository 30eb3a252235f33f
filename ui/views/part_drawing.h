#pragma once

#include <QWidget>
#include <optional>

#include "core/drawing/frame_drawings.h"
#include "ui/models/parts_table.h"

class QLabel;
class QToolButton;

namespace prismwright {

class SheetPicture;

/// Writes a drawing of a part whole or not at all, by the ending of `path`: .pdf with all its sheets, .svg with
/// the one given, or of a flat part, as it is cut, .dxf; anything else is refused. `flat` is null for a part
/// that is turned; `marks`: all alike parts, the part's own first.
Done save_part_drawing(const Drawing& drawing, std::size_t sheet, const FlatPart* flat,
                       const std::vector<std::string>& marks, const QString& path);

/// The drawing of one part with its dimensions, as it will come on paper, sheet by sheet, and a button that
/// saves it.
///
/// Object names: frame.drawing (the picture), frame.drawing.told, frame.drawing.before, frame.drawing.next,
/// frame.drawing.save; the dialog is frame.drawing.saveTo.
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
  void turnTo(std::size_t sheet, bool keeps_view);
  void save();
  QToolButton* addTurner(const QString& name, Qt::ArrowType arrow, const QString& tip, int by);

  Workbench* bench_;
  std::shared_ptr<const MadeLens> made_;
  std::vector<Landing> landings_;  ///< of made_, for the drawings of its ribs
  PartsLine alike_;
  const FlatPart* flat_ = nullptr;  ///< in made_; null for a turned part
  std::optional<NamedDrawing> drawing_;
  std::size_t sheet_ = 0;  ///< the one shown
  SheetPicture* picture_;
  QLabel* told_;
  QToolButton* before_;
  QToolButton* next_;
  QToolButton* save_;
};

}  // namespace prismwright
