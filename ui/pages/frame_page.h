#pragma once

#include <QWidget>
#include <optional>

#include "ui/models/clearance_table.h"
#include "ui/models/frame_maker.h"
#include "ui/models/parts_table.h"
#include "ui/models/workbench.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QTabWidget;

namespace prismwright {

class FilteredTable;
class FitTab;
class FrameFigures;
class FrameScene;
class FrameWarnings;
class PartsTab;
class SheetsTab;

/// The frame of the lens: its figures and the values that rule it at the left; warnings, parts, the frame in
/// three dimensions and clearances at the right. A part chosen anywhere on the page is chosen everywhere on it;
/// prisms are selected for the whole window.
///
/// Object names: page.frame (itself), frame.left, frame.tabs, frame.words, frame.progress, frame.stop; those of
/// the views; frame.clearances and frame.setting are
/// tables (FilteredTable), frame.setting.told the sentence under the latter.
class FramePage : public QWidget {
  Q_OBJECT

 public:
  explicit FramePage(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] FrameMaker* maker() const { return maker_; }
  [[nodiscard]] FrameScene* scene() const { return scene_; }
  /// Shows the clearances, and among them the tightest of the selected prisms.
  void showClearances();

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeLeft();
  QWidget* makeRight();
  QWidget* besideChart(QWidget* table);
  void addClearances();
  void addSetting();
  QWidget* makeCorner();
  void takeMade();
  void refresh();
  void followMaker();
  void followWork();
  /// Prisms among these are selected, parts of the frame chosen.
  void chooseMarks(const QStringList& marks);
  void chooseParts(const QStringList& marks);
  void choosePart(const QString& mark);
  void chooseGap(int line);
  void showSetting();
  void showDoor();
  void chooseSetting(int line);
  void exportFiles();
  void lookAt(QWidget* tab);

  Workbench* bench_;
  FrameMaker* maker_;
  FrameFigures* figures_ = nullptr;
  FrameWarnings* warnings_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  PartsTab* parts_ = nullptr;
  FrameScene* scene_ = nullptr;
  FilteredTable* clearances_ = nullptr;
  FilteredTable* setting_ = nullptr;
  QLabel* setting_told_ = nullptr;
  FitTab* fit_ = nullptr;
  SheetsTab* sheets_ = nullptr;
  QLabel* words_ = nullptr;
  QProgressBar* bar_ = nullptr;
  QPushButton* stop_ = nullptr;
  std::shared_ptr<const MadeLens> shown_;
  bool shown_inches_ = false;
  std::vector<PartsLine> lines_;
  std::vector<std::size_t> gap_order_;      ///< clearance of each line of the table
  std::vector<std::size_t> setting_order_;  ///< check of each line of the table
  std::shared_ptr<const std::vector<SettingCheck>> shown_setting_;
  bool setting_inches_ = false;
};

}  // namespace prismwright
