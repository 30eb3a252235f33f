#pragma once

#include <memory>
#include <vector>

#include "core/light/beam_map.h"
#include "ui/views/light_plot.h"

class QCPColorMap;
class QCPColorScale;
class QCPCurve;
class QCPGraph;
class QCPItemStraightLine;
class QCPTextElement;

namespace prismwright {

class ContourItem;

/// The beam as a map of intensity over azimuth and elevation, with the contours of half and a tenth of its
/// peak, and a level and an upright cut through the place that was clicked or stepped to; at first the peak.
///
/// Object names as LightPlot, NAME light.beam.
class BeamPlot : public LightPlot {
  Q_OBJECT

 public:
  explicit BeamPlot(QWidget* parent = nullptr);

  /// Null shows nothing. A map of another grid is framed anew and read at its peak.
  void setBeam(std::shared_ptr<const BeamMap> beam);
  [[nodiscard]] PlotNumbers numbers() const override;
  /// Reads the map at this place, as a click does.
  void readAt(double azimuth_deg, double elevation_deg);
  [[nodiscard]] QPointF place() const { return place_; }
  [[nodiscard]] QPointF pixelOf(double azimuth_deg, double elevation_deg) const;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;
  void click(const QPointF& pixel) override;
  void showAll() override;

 private:
  void makeFields();
  void makeMap();
  void makeCuts();
  void fill();
  void fillCuts();
  void frame(double least_share);
  [[nodiscard]] QString wordsAt(double azimuth_deg, double elevation_deg) const;
  [[nodiscard]] bool placeAt(const QPointF& pixel, QPointF& place) const;

  std::shared_ptr<const BeamMap> beam_;
  bool chosen_ = false;  ///< a place was clicked or stepped to: a sharper map does not move it
  QPointF place_;        ///< degrees
  QCPAxisRect* map_field_ = nullptr;
  QCPAxisRect* level_field_ = nullptr;
  QCPAxisRect* upright_field_ = nullptr;
  QCPColorMap* map_ = nullptr;
  QCPColorScale* scale_ = nullptr;
  QCPTextElement* key_ = nullptr;
  ContourItem* half_ = nullptr;
  ContourItem* tenth_ = nullptr;
  std::vector<QCPItemStraightLine*> across_;  ///< of the level cut, on the map
  std::vector<QCPItemStraightLine*> upright_;
  QCPGraph* level_cut_ = nullptr;
  QCPCurve* upright_cut_ = nullptr;
};

}  // namespace prismwright
