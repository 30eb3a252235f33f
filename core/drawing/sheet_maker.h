#pragma once

#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/text_box.h"

namespace prismwright {

/// A sheet while it is being drawn: it keeps texts off each other, off the border and, where there is room, off
/// lines.
class SheetMaker {
 public:
  explicit SheetMaker(SheetSize size);

  [[nodiscard]] const SheetSize& size() const { return sheet_.size; }
  /// What lies inside the border.
  [[nodiscard]] PaperBox frame() const { return frame_; }

  void draw(Stroke stroke) { sheet_.strokes.push_back(std::move(stroke)); }
  void line(PaperPoint from, PaperPoint to, LineClass line = LineClass::thin);
  /// Texts that come later keep clear of this line; it is not drawn.
  void keep_clear(PaperPoint from, PaperPoint to) { walls_.push_back({from, to}); }
  /// Texts that come later never stand there.
  void keep_off(const PaperBox& ground) { taken_.push_back(ground); }
  /// A filled arrow head with its tip there, pointing along the angle (radians).
  void arrow(PaperPoint tip, double angle);

  /// Sets the words there, come what may: the caller knows that the place is free.
  void write(DrawnText text);
  /// Sets the words at the first place where they touch no text, no border and no line; else at the first where
  /// they touch no text and no border. Answers false, and writes nothing, where there is none.
  bool write_at_free(DrawnText text, const std::vector<PaperPoint>& places);
  /// The same, at places where the words touch no line either.
  bool write_in_the_clear(DrawnText text, const std::vector<PaperPoint>& places);

  [[nodiscard]] Sheet take() { return std::move(sheet_); }

 private:
  struct Wall {
    PaperPoint from;
    PaperPoint to;
  };
  bool write_at_first(DrawnText& text, const std::vector<PaperPoint>& places, bool may_touch_lines);
  [[nodiscard]] bool free_of_texts(const PaperBox& box) const;
  [[nodiscard]] bool free_of_lines(const PaperBox& box) const;

  Sheet sheet_;
  PaperBox frame_;
  std::vector<PaperBox> taken_;
  std::vector<Wall> walls_;
};

}  // namespace prismwright
