#pragma once

#include <QStringList>
#include <vector>

#include "core/works/works_reckoning.h"
#include "ui/views/zoom_canvas.h"

namespace prismwright {

/// One load as it stands in the vessel: its shelves from above, side by side, from the floor up. A click
/// chooses a mould. Object name: works.vessel.
class VesselPicture : public ZoomCanvas {
  Q_OBJECT

 public:
  explicit VesselPicture(QWidget* parent);

  /// Null: nothing, for the reason given.
  void setLoad(const PlannedLoad* load, const std::vector<LoadPiece>& pieces, double vessel_mm,
               const QString& reason = {});
  void setChosen(const QString& master);
  [[nodiscard]] QString masterAt(const QPointF& place_mm) const;

 signals:
  void chosen(const QString& master);

 protected:
  [[nodiscard]] QRectF box() const override;
  [[nodiscard]] double margin() const override { return 24; }
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Mould {
    QString master;
    QRectF ground;  ///< mm, its shelf's place included
  };
  [[nodiscard]] QPointF shelfMiddle(int shelf) const;

  std::vector<Mould> moulds_;
  std::vector<double> feet_mm_;
  double vessel_mm_ = 0;
  QString reason_;
  QString chosen_;
};

}  // namespace prismwright
