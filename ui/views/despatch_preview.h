#pragma once

#include <QWidget>
#include <memory>

#include "ui/models/despatch_work.h"

class QLabel;
class QStackedWidget;
class QToolButton;

namespace prismwright {

class ImagePicture;
class SheetPicture;
class ZoomCanvas;

/// What is looked at: a sheet of a drawing, a picture, or words about files that are neither. Sheets are leafed
/// through with buttons or Page Up and Page Down, enlarged with buttons, wheel or keys, and saved one by one.
///
/// Object names: despatch.title, despatch.previous, despatch.sheet (which of how many), despatch.next,
/// despatch.smaller, despatch.larger, despatch.whole, despatch.preview (SheetPicture), despatch.picture,
/// despatch.words, despatch.sheet.save; the dialog is despatch.sheet.saveTo.
class DespatchPreview : public QWidget {
  Q_OBJECT

 public:
  explicit DespatchPreview(QWidget* parent);

  /// `words` are shown where the sight has neither sheet nor picture. A sight of the same piece keeps sheet and
  /// view.
  void setSight(const DespatchSight& sight, const QString& words);
  /// This piece is being drawn: its name stands over what is still in sight.
  void await(const DespatchPiece& piece);
  /// What a saved sheet is called, without its ending: folder, book.
  void setSaveBeside(const QString& folder, const QString& book);
  [[nodiscard]] std::size_t sheet() const { return sheet_; }

 signals:
  void told(const QString& sentence);     ///< a sheet was saved
  void refused(const QString& sentence);  ///< or could not be

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeHead();
  QToolButton* addButton(const char* name, const QString& words, const QString& tip);
  void showTitle(const QString& title);
  void turn(int by);
  void showSheet(bool keeps_view);
  void followSheets();
  void save();
  [[nodiscard]] ZoomCanvas* canvas() const;
  [[nodiscard]] QString offeredName() const;

  DespatchSight sight_;
  std::size_t sheet_ = 0;
  QString folder_;
  QString book_;
  QLabel* title_ = nullptr;
  QLabel* of_ = nullptr;
  QToolButton* previous_ = nullptr;
  QToolButton* next_ = nullptr;
  QToolButton* smaller_ = nullptr;
  QToolButton* larger_ = nullptr;
  QToolButton* whole_ = nullptr;
  QToolButton* save_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  SheetPicture* paper_ = nullptr;
  ImagePicture* picture_ = nullptr;
  QLabel* words_ = nullptr;
};

}  // namespace prismwright
