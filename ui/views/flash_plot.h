#pragma once

#include <memory>

#include "core/light/light_report.h"
#include "ui/views/light_plot.h"

class QCPGraph;
class QCPItemTracer;

namespace prismwright {

/// What a far observer sees: intensity over one turn, the rhythm of one period as a strip of light and dark,
/// and one flash enlarged with its length at half and at a twentieth of its peak. A lens that stands still
/// shows the light of its panels round the lens instead.
///
/// Object names as LightPlot, NAME light.flash.
class FlashPlot : public LightPlot {
  Q_OBJECT

 public:
  explicit FlashPlot(QWidget* parent = nullptr);

  void setReport(std::shared_ptr<const LightReport> report);
  [[nodiscard]] PlotNumbers numbers() const override;
  /// Words on the strip, from its start: "W 0.192 s".
  [[nodiscard]] const QStringList& stripWords() const { return strip_words_; }

 protected:
  void pointAt(const QPointF& pixel) override;
  void step(int across, int up) override;
  void click(const QPointF& pixel) override;
  void showAll() override;

 private:
  void arrange(bool strip, bool flash);
  void clearAll();
  void fillTurn();
  void fillRound();
  void fillStrip();
  void fillFlash();
  void addBlock(double from_s, double to_s, Screen screen, const QString& words);
  void addLength(double from_s, double to_s, double cd, const QString& words, Qt::PenStyle style);
  [[nodiscard]] double intensityAt(double time_s) const;
  [[nodiscard]] QString wordsAt(double time_s) const;
  [[nodiscard]] QString lightWordsAt(double time_s) const;
  void readAt(double x);

  std::shared_ptr<const LightReport> report_;
  std::size_t flash_ = 0;  ///< the one that is enlarged
  double cursor_ = 0;      ///< s, or degrees round a lens that stands still
  QStringList strip_words_;
  QCPAxisRect* turn_field_ = nullptr;
  QCPAxisRect* strip_field_ = nullptr;
  QCPAxisRect* flash_field_ = nullptr;
};

}  // namespace prismwright
