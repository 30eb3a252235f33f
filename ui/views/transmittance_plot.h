#pragma once

#include <QPen>
#include <vector>

#include "ui/models/workbench.h"
#include "ui/views/light_plot.h"

namespace prismwright {

/// What the tint, at the thickness for which its points hold, and the three screens let through by wavelength.
/// Follows the book by itself.
///
/// Object names as LightPlot, NAME light.transmittance.
class TransmittancePlot : public LightPlot {
  Q_OBJECT

 public:
  explicit TransmittancePlot(Workbench* bench, QWidget* parent = nullptr);
  [[nodiscard]] PlotNumbers numbers() const override;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;

 private:
  struct Curve {
    QString name;
    QString key;
    QPen pen;
    std::vector<double> share;  ///< every nm from kFrom_nm to kTo_nm
  };
  void follow();
  void addCurve(const Curve& curve);
  void readAt(double nm);

  Workbench* bench_;
  std::vector<Curve> curves_;
  double nm_ = 550;
  QCPAxisRect* field_ = nullptr;
};

}  // namespace prismwright
