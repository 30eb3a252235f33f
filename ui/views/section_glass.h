#pragma once

#include <QPainter>
#include <QPainterPath>
#include <QSet>
#include <QString>
#include <vector>

#include "core/optics/section.h"
#include "ui/views/section_map.h"

namespace prismwright {

/// One piece of glass as it is drawn: a ring of the section gives two.
struct DrawnPrism {
  QString zone;
  std::vector<SectionPoint> outline;
  SectionPoint name_place;  ///< the corner nearest the lamp, where its mark is written
};

std::vector<DrawnPrism> drawn_prisms(const Section& section);
/// Box round all the glass and the focus, mm: x = r, y = z.
QRectF box_of(const std::vector<DrawnPrism>& prisms);

QPainterPath outline_of(const DrawnPrism& prism, const SectionMap& map);

/// All the glass; selected zones are filled and edged with the colour of selection.
void paint_glass(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                 const QSet<QString>& selected);
/// Horizontal ribs between the bands, hatched as cut metal.
void paint_ribs(QPainter& painter, const std::vector<SectionRib>& ribs, const SectionMap& map);
/// The glass of another section in outline.
void paint_overlay(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                   Qt::PenStyle style);
/// The marks of the zones on the lamp side, those left out that would cover another.
void paint_marks(QPainter& painter, const std::vector<DrawnPrism>& prisms, const SectionMap& map,
                 const QRectF& view, const QSet<QString>& selected);
/// The piece of glass that the laser goes through.
void paint_lit(QPainter& painter, const DrawnPrism& prism, const SectionMap& map);

}  // namespace prismwright
