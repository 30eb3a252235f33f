#pragma once

#include <QElapsedTimer>
#include <QFutureWatcher>
#include <QLabel>
#include <QStringList>
#include <QTimer>
#include <QWidget>
#include <atomic>
#include <memory>
#include <optional>

#include "ui/models/colouring.h"
#include "ui/views/lens_overlay.h"
#include "ui/views/lens_scene.h"

namespace prismwright {

/// The lens in three dimensions: glass translucent with fine edges, brass solid.
///
/// Solids given to it are meshed in a worker thread and appear when they are ready; until then the last ones
/// stay. A selection never moves the eye. Where OpenGL cannot start, a sentence stands in place of the picture
/// and everything else goes on.
class LensView : public QWidget {
  Q_OBJECT

 public:
  enum class NamedView { seaward, plan, lamp, face };

  explicit LensView(QWidget* parent = nullptr);
  /// As above, with `trouble` as the reason why there can be no picture (empty: try).
  LensView(const QString& trouble, QWidget* parent);
  ~LensView() override;

  /// Shows these solids (nothing is done when they are already shown); null clears the view. The eye stays,
  /// except for the first lens, which is framed.
  void showLens(std::shared_ptr<const MadeLens> made);
  void setLooks(LensLooks looks);
  void setLegend(std::vector<LegendRow> rows);
  void setSelection(const QStringList& marks);
  void setGhosted(bool ghosted);
  /// Brass parts that stand out; they are framed by showSelected() too.
  void setChosenParts(const QStringList& marks);
  void setDoor(const DoorTurn& door);
  void setProgress(double share, const QString& words);
  void setGap(const std::optional<Clearance>& gap, const QString& words);

  void showNamed(NamedView view);
  /// Frames the selected prisms, or the whole lens when nothing is selected.
  void showSelected();
  void setShown(SceneKind kind, bool shown);
  void setCut(const LensCut& cut);
  void setApart(double share);

  /// Why there is no picture; empty when all is well.
  [[nodiscard]] QString trouble() const;
  /// The lens given last is on the screen.
  [[nodiscard]] bool isCurrent() const;
  /// Time from the last showLens to its first picture, ms; 0 before.
  [[nodiscard]] qint64 lastShowing_ms() const { return showing_ms_; }
  [[nodiscard]] qint64 lastBuilding_ms() const { return building_ms_; }  ///< of it, in the window's thread
  [[nodiscard]] NamedView namedView() const { return named_; }

  /// A place in this widget at which a click meets the prism; a point outside when it is hidden all over.
  [[nodiscard]] QPoint placeOf(const QString& mark);
  /// The mark under that place, or empty.
  [[nodiscard]] QString markAt(const QPoint& place);
  [[nodiscard]] QWidget* picture() const { return gl_; }
  [[nodiscard]] const LensCamera* camera() const { return gl_ ? &gl_->camera() : nullptr; }
  [[nodiscard]] const MeshedLens* lens() const { return scene_ ? scene_->lens() : nullptr; }

 signals:
  void picked(const QString& mark, bool add);  ///< an empty mark: a click on nothing
  /// A click on brass, or on nothing (an empty mark). Ghosted glass lets clicks through to brass.
  void partPicked(const QString& mark);
  void shown();  ///< the lens given last was drawn for the first time

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void sayTrouble(const QString& sentence);
  void startMeshing();
  void takeMeshes();
  void onDrawn();
  [[nodiscard]] Handle(Standard_Transient) pickAt(const QPointF& place);
  void onClicked(const QPointF& place, bool add);
  void tellUnderPointer();
  void placeLabels();
  void addRoseLabels(QVector<LensOverlay::Label>& labels) const;
  [[nodiscard]] int leadingPanel() const;
  [[nodiscard]] double axisOf(int panel) const;

  LensGl* gl_ = nullptr;
  LensOverlay* overlay_ = nullptr;
  QLabel* sentence_ = nullptr;
  std::unique_ptr<LensScene> scene_;
  LensLooks looks_;
  LensMesher mesher_;
  std::shared_ptr<const MadeLens> wanted_, meshing_;
  QFutureWatcher<std::shared_ptr<const MeshedLens>> watcher_;
  std::shared_ptr<std::atomic<bool>> stop_;
  QElapsedTimer clock_;
  qint64 showing_ms_ = 0;
  qint64 building_ms_ = 0;
  bool is_meshing_ = false;  ///< until takeMeshes has run, a moment longer than the worker itself
  bool awaits_picture_ = false;
  bool glass_first_ = false;            ///< the meshing now running leaves out the brass
  std::optional<double> framed_at_mm_;  ///< distance of the eye that was placed here; -1: it is the maker's now
  NamedView named_ = NamedView::seaward;
  QString gap_words_;
  QPointF hover_;
  QTimer hover_timer_;
};

}  // namespace prismwright
