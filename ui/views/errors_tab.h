#pragma once

#include <QWidget>

#include "ui/models/errors_maker.h"
#include "ui/models/workbench.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;

namespace prismwright {

class LossBars;
class SavedTable;

/// What errors in setting and making do to the lens: the sizes of the errors, what the trials say in words,
/// where the peak is lost, tolerances and the turns of the beams. Worked out while it is seen.
///
/// Object names: light.errors (itself), errors.words, errors.told, errors.progress, errors.work, errors.reason,
/// errors.tolerances, errors.turns, field.KEY; those of LossBars.
class ErrorsTab : public QWidget {
  Q_OBJECT

 public:
  explicit ErrorsTab(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] ErrorsMaker* maker() const { return maker_; }
  /// The panel whose beam is mapped; 0: the first that holds prisms.
  void setPanel(int panel);

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeFields();
  QWidget* makeWorkCell(QWidget* parent);
  QWidget* makeResults();
  void follow();
  void followWork();
  void showErrors();
  void showTurns();
  void followSelection();
  void tellProgress(double share, const QString& what);
  [[nodiscard]] int shownPanel() const;

  Workbench* bench_;
  ErrorsMaker* maker_;
  std::shared_ptr<const SettingErrors> shown_;
  int shown_panel_ = 0;
  QStackedWidget* stack_ = nullptr;
  QLabel* reason_ = nullptr;
  QLabel* words_ = nullptr;
  QLabel* told_ = nullptr;
  QProgressBar* bar_ = nullptr;
  QPushButton* work_ = nullptr;
  LossBars* losses_ = nullptr;
  SavedTable* tolerances_ = nullptr;
  SavedTable* turns_ = nullptr;
};

}  // namespace prismwright
