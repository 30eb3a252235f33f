#pragma once

#include <memory>

#include "core/lens/lens_values.h"
#include "core/light/light_report.h"
#include "ui/views/light_plot.h"

class QCPItemStraightLine;

namespace prismwright {

/// Range over visibility, white and through the historic screens, with the geographic range and the visibility
/// of the settings marked.
///
/// Object names as LightPlot, NAME light.range.
class RangePlot : public LightPlot {
  Q_OBJECT

 public:
  explicit RangePlot(QWidget* parent = nullptr);
  void setReport(std::shared_ptr<const LightReport> report, const LightSettings& settings);
  [[nodiscard]] PlotNumbers numbers() const override;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;

 private:
  void addCurve(Screen screen, double cd);
  void addLine(bool upright, double at, const QString& words);
  void readAt(double visibility_nmi);

  std::shared_ptr<const LightReport> report_;
  LightSettings settings_;
  double visibility_nmi_ = 10;
  QCPAxisRect* field_ = nullptr;
};

}  // namespace prismwright
