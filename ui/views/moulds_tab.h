#pragma once

#include <QWidget>
#include <map>
#include <optional>

#include "core/drawing/drawing.h"
#include "ui/models/moulds_maker.h"
#include "ui/models/works_desk.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QToolButton;

namespace prismwright {

class FilteredTable;
class SheetPicture;

/// The mould of every master: whether it can be made, and the drawing of its master with the undercut faces
/// hatched, toned, lettered and labelled with area and depth.
///
/// Object names: works.moulds (the table; see FilteredTable), works.moulds.told, works.moulds.progress,
/// works.moulds.work (works them out, or stops), works.mould (the picture), works.mould.told, works.mould.save;
/// the dialog is works.mould.saveTo.
class MouldsTab : public QWidget {
  Q_OBJECT

 public:
  MouldsTab(WorksDesk* desk, QWidget* parent);

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makePicture();
  QWidget* makeFoot();
  void follow();
  void followSelection();
  void showMould(int line);
  const Outcome<MouldPicture>& pictureOf(const WorkedMould& mould);
  [[nodiscard]] Outcome<Sheet> draw(const WorkedMould& mould, bool bare);
  [[nodiscard]] const WorkedMould* shownMould() const;
  void save();

  WorksDesk* desk_;
  MouldsMaker* maker_;
  std::shared_ptr<const MouldsMaker::Moulds> shown_;
  std::map<std::string, Outcome<MouldPicture>> pictures_;  ///< of shown_, by master, as they are looked at
  bool inches_ = false;
  std::string master_;  ///< whose drawing is shown
  FilteredTable* table_ = nullptr;
  SheetPicture* picture_ = nullptr;
  QLabel* told_ = nullptr;
  QLabel* mould_told_ = nullptr;
  QProgressBar* bar_ = nullptr;
  QPushButton* work_ = nullptr;
  QToolButton* save_ = nullptr;
};

}  // namespace prismwright
