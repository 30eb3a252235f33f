#pragma once

#include <QWidget>

#include "core/drawing/drawing.h"
#include "core/works/prism_life.h"
#include "ui/models/works_desk.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace prismwright {

class FilteredTable;
class RefusalLabel;

/// The whole life of the leading selected prism, or of the one last recorded where none is selected: stages,
/// loads, measurements, decisions, bench readings, photographs. Its photographs at the right. Labels and
/// travellers are printed for the selection, a spare can be given to the prism.
///
/// Object names: works.history (the table; see FilteredTable), works.history.told, works.photo (the picture),
/// works.photo.which, works.photo.add, works.photo.save, works.labels, works.traveller, works.spare,
/// works.spare.give, works.history.refusal.
class HistoryTab : public QWidget {
  Q_OBJECT

 public:
  HistoryTab(WorksDesk* desk, QWidget* parent);

  /// Adds the picture file to the leading selected prism.
  void addPhotograph(const QString& path);

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makePhotographs();
  QWidget* makeFoot();
  void follow();
  void showPhotograph();
  void askForPhotograph();
  void savePhotograph();
  void giveSpare();
  void saveLabels();
  void saveTraveller();
  /// Asks for a name (dialog NAME.saveTo) and writes the sheets there.
  void savePaper(const QString& name, const QString& title, const Outcome<Drawing>& drawing);
  [[nodiscard]] QString mark() const;  ///< empty: none selected, and none recorded
  [[nodiscard]] std::vector<std::string> marks() const;

  WorksDesk* desk_;
  FilteredTable* table_ = nullptr;
  QLabel* told_ = nullptr;
  QLabel* picture_ = nullptr;
  QComboBox* which_ = nullptr;
  QPushButton* add_ = nullptr;
  QPushButton* save_ = nullptr;
  QPushButton* labels_ = nullptr;
  QPushButton* traveller_ = nullptr;
  QComboBox* spare_ = nullptr;
  QPushButton* give_ = nullptr;
  RefusalLabel* refusal_ = nullptr;
};

}  // namespace prismwright
