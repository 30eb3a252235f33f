#pragma once

#include "ui/models/bench_maker.h"
#include "ui/views/light_plot.h"

class QCPLegend;
class QCPScatterStyle;

namespace prismwright {

/// The board of the laser bench as it is seen from the focus, left on the left: at the left the whole board
/// with the level line, the panel's axis and the places of a panel's spots, the selected prism's marked; at the
/// right the neighbourhood of that place with the first reading (hollow) and the last (full).
///
/// Object names as LightPlot, NAME light.board.
class BoardPlot : public LightPlot {
  Q_OBJECT

 public:
  explicit BoardPlot(QWidget* parent = nullptr);
  /// Shows this prism and its panel; a mark that the bench has not shows what panel 1 has.
  void show(const BenchMaker& maker, const QString& mark, bool inches);
  [[nodiscard]] PlotNumbers numbers() const override;

 signals:
  void picked(const QString& mark);  ///< its place was clicked

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;
  void click(const QPointF& pixel) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  struct Place {
    QString mark;
    BoardPlace spot;
  };
  void clear();
  void nameAxes();
  void showBoard();
  void showReadings();
  void addPoints(QCPAxisRect* field, const std::vector<BoardPlace>& places, const QCPScatterStyle& style,
                 const QString& name);
  void addLine(QCPAxisRect* field, bool upright, const QString& words);
  void fit();
  [[nodiscard]] int nearest(const QPointF& pixel) const;
  [[nodiscard]] double shown(double mm) const;
  void readOff(const Place& place);

  QCPAxisRect* board_ = nullptr;
  QCPAxisRect* close_ = nullptr;
  QCPLegend* legend_ = nullptr;
  std::vector<Place> places_;  ///< of the panel shown
  int chosen_ = -1;            ///< of `places_`
  std::optional<BenchReading> first_, last_;
  double board_mm_ = 0;
  bool inches_ = false;
};

}  // namespace prismwright
