#pragma once

#include <memory>

#include "core/light/setting_errors.h"
#include "ui/models/workbench.h"
#include "ui/views/light_plot.h"

namespace prismwright {

/// What each kind of error of each zone takes from the peak, as bars, the greatest first. The bars of the
/// selected zones stand out; a click selects the zone's prisms.
///
/// Object names as LightPlot, NAME errors.losses.
class LossBars : public LightPlot {
  Q_OBJECT

 public:
  explicit LossBars(Workbench* bench, QWidget* parent = nullptr);
  void setErrors(std::shared_ptr<const SettingErrors> errors);
  [[nodiscard]] PlotNumbers numbers() const override;
  /// Words of the bars shown, from the top: "U01, face angle".
  [[nodiscard]] const QStringList& bars() const { return bars_; }
  /// Middle of a bar, counted from the top, in pixels of the plot.
  [[nodiscard]] QPointF middleOf(int bar) const;

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;
  void click(const QPointF& pixel) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fill();
  void addBar(int bar, const LossRow& loss, bool selected);
  void readBar(int bar);
  [[nodiscard]] int barAt(const QPointF& pixel) const;
  [[nodiscard]] int roomForBars() const;

  Workbench* bench_;
  std::shared_ptr<const SettingErrors> errors_;
  QStringList bars_;
  int bar_ = 0;
  QCPAxisRect* field_ = nullptr;
};

}  // namespace prismwright
