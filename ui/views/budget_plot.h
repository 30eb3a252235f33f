#pragma once

#include <memory>
#include <vector>

#include "core/light/light_report.h"
#include "ui/views/light_plot.h"

namespace prismwright {

/// Where the lamp's light goes, as bars: by what becomes of it, and zone by zone.
///
/// Object names as LightPlot, NAME light.budget.
class BudgetPlot : public LightPlot {
  Q_OBJECT

 public:
  explicit BudgetPlot(QWidget* parent = nullptr);
  void setReport(std::shared_ptr<const LightReport> report);
  [[nodiscard]] PlotNumbers numbers() const override;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;

 private:
  void fillFates();
  void fillZones();
  void readFate(int fate);
  void readZone(int zone);

  std::shared_ptr<const LightReport> report_;
  int fate_ = 0;
  int zone_ = 0;
  QCPAxisRect* fates_ = nullptr;
  QCPAxisRect* zones_ = nullptr;
};

}  // namespace prismwright
