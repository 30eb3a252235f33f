#pragma once

#include <QPen>
#include <QString>
#include <Qt>
#include <vector>

#include "core/light/eye.h"

class QCPAxisRect;
class QCustomPlot;

namespace prismwright {

/// Lines, marks and words in a field of the chromaticity diagram.
class ChromaticityItems {
 public:
  ChromaticityItems(QCustomPlot* plot, QCPAxisRect* field) : plot_(plot), field_(field) {}

  /// A line through these, closed where asked for; over `ground` when that is set.
  void line(const std::vector<Chromaticity>& points, const QPen& pen, bool closed,
            const QBrush& ground = Qt::NoBrush) const;
  /// Words that stand to this side of a place, so many pixels away.
  void words(const Chromaticity& at, const QString& text, Qt::Alignment side, const QColor& colour,
             double smaller_pt = 0, int away_px = 4) const;
  /// Words that stand outward of a place as seen from another.
  void wordsBeyond(const Chromaticity& at, const Chromaticity& from, const QString& text,
                   const QColor& colour) const;
  /// Words in the upper right corner of the field, whatever it shows.
  void key(const QString& text, const QColor& colour) const;
  enum class Shape { disc, diamond, tick };
  void mark(const Chromaticity& at, Shape shape, const QPen& pen, const QBrush& ground, double size_px) const;

 private:
  QCustomPlot* plot_;
  QCPAxisRect* field_;
};

}  // namespace prismwright
