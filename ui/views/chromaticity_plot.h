#pragma once

#include <memory>
#include <set>

#include "core/light/light_report.h"
#include "ui/views/light_plot.h"

namespace prismwright {

/// The CIE 1931 x, y diagram: pure colours, black bodies and the published regions of signal colours, with the
/// lamp and the light behind each screen. Lights that a panel of the lens shows are full marks, the others
/// hollow. Both axes have one scale.
///
/// Object names as LightPlot, NAME light.chromaticity.
class ChromaticityPlot : public LightPlot {
  Q_OBJECT

 public:
  explicit ChromaticityPlot(QWidget* parent = nullptr);
  /// `used`: screens that a panel of the lens has.
  void setReport(std::shared_ptr<const LightReport> report, std::set<Screen> used);
  /// Lights, corners of the regions, pure colours and black bodies.
  [[nodiscard]] PlotNumbers numbers() const override;
  /// Words of the marks shown: "W white", "R red, on no panel".
  [[nodiscard]] const QStringList& marks() const { return marks_; }
  /// Where a colour stands, in pixels of the plot.
  [[nodiscard]] QPointF pixelOf(const Chromaticity& at) const;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;
  void click(const QPointF& pixel) override;
  void showAll() override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void drawLoci();
  void drawRegions();
  void drawLights();
  void addLight(const ScreenColour& light, bool used);
  void addLamp();
  /// Widens one axis so that both have one scale.
  void evenScales();
  void readAt(const Chromaticity& at);

  std::shared_ptr<const LightReport> report_;
  std::set<Screen> used_;
  QStringList marks_;
  Chromaticity place_{0.3333, 0.3333};
  QCPAxisRect* field_ = nullptr;
};

}  // namespace prismwright
