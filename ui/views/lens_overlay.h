#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QVector>
#include <QWidget>
#include <vector>

#include "ui/models/colouring.h"

namespace prismwright {

/// What is written over the 3D picture. It takes no mouse: everything falls through to the picture.
class LensOverlay : public QWidget {
  Q_OBJECT

 public:
  enum class Tone { panel, far_panel, arrow, mark, gap };
  struct Label {
    QPointF at;  ///< the place that the words belong to
    QString words;
    Tone tone = Tone::panel;
    bool operator==(const Label&) const = default;
  };

  explicit LensOverlay(QWidget* parent);

  void setLabels(QVector<Label> labels);
  void setLegend(std::vector<LegendRow> rows);
  /// One line in the upper right corner: how the eye stands. Empty: none.
  void setReading(const QString& words);
  /// One line at the top while solids are being made; share below 0: no bar. Empty words: none.
  void setProgress(double share, const QString& words);
  [[nodiscard]] const QString& progressWords() const { return progress_; }
  /// Where the words of marks and gaps stand, in the order of their labels.
  [[nodiscard]] std::vector<QRectF> pinnedBoxes() const;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  [[nodiscard]] QRectF numberBox(const Label& label) const;
  [[nodiscard]] QRectF legendBox() const;
  [[nodiscard]] QRectF readingBox() const;
  [[nodiscard]] QRectF progressBox() const;
  void drawNumber(QPainter& painter, const Label& label) const;
  void drawPinned(QPainter& painter) const;
  void drawLegend(QPainter& painter) const;
  void drawReading(QPainter& painter) const;
  void drawProgress(QPainter& painter) const;

  QVector<Label> labels_;
  std::vector<LegendRow> legend_;
  QString reading_;
  QString progress_;
  double share_ = -1;
};

}  // namespace prismwright
