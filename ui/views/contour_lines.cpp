#include "ui/views/contour_lines.h"

#include <array>

namespace prismwright {
namespace {

struct MapCorner {
  QPointF place;
  double cd = 0;
};

/// Where the line leaves one cell, whose corners go round; two points for each piece.
void add_pieces(const std::array<MapCorner, 4>& corners, double cd, std::vector<QLineF>& pieces) {
  std::array<QPointF, 4> crossings;
  std::size_t count = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const MapCorner& a = corners.at(i);
    const MapCorner& b = corners.at((i + 1) % 4);
    if ((a.cd >= cd) == (b.cd >= cd)) continue;
    crossings.at(count++) = a.place + (cd - a.cd) / (b.cd - a.cd) * (b.place - a.place);
  }
  for (std::size_t i = 0; i + 1 < count; i += 2) pieces.emplace_back(crossings.at(i), crossings.at(i + 1));
}

}  // namespace

std::vector<QLineF> contour_of(const BeamMap& beam, double cd) {
  std::vector<QLineF> pieces;
  const auto corner = [&beam](int i, int k) {
    return MapCorner{{beam.grid.azimuth_deg(i), beam.grid.elevation_deg(k)}, beam.at(i, k)};
  };
  for (int k = 0; k + 1 < beam.grid.elevations; ++k)
    for (int i = 0; i + 1 < beam.grid.azimuths; ++i)
      add_pieces({corner(i, k), corner(i + 1, k), corner(i + 1, k + 1), corner(i, k + 1)}, cd, pieces);
  return pieces;
}

ContourItem::ContourItem(QCustomPlot* plot, QCPAxis* across, QCPAxis* up, const QPen& pen)
    : QCPAbstractItem(plot), across_(across), up_(up), pen_(pen) {
  setClipToAxisRect(true);
  setClipAxisRect(across->axisRect());
  setSelectable(false);
}

void ContourItem::draw(QCPPainter* painter) {
  painter->setPen(pen_);
  for (const QLineF& piece : pieces_)
    painter->drawLine(QLineF(across_->coordToPixel(piece.x1()), up_->coordToPixel(piece.y1()),
                             across_->coordToPixel(piece.x2()), up_->coordToPixel(piece.y2())));
}

}  // namespace prismwright
