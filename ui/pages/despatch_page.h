#pragma once

#include <QUrl>
#include <QWidget>
#include <functional>

#include "ui/models/despatch_maker.h"

class QTabWidget;
class QTextBrowser;

namespace prismwright {

class DespatchFoot;
class DespatchForm;
class DespatchList;
class DespatchPreview;

/// What leaves the workshop: how it is wanted at the top; what goes out and how it stands to the last pack at
/// the left; every sheet and picture before it is written at the right; the one action at the foot.
///
/// Object names: page.despatch (itself), despatch.halves (the splitter), despatch.tabs, despatch.report; those
/// of the views.
class DespatchPage : public QWidget {
  Q_OBJECT

 public:
  explicit DespatchPage(Workbench* bench, QWidget* parent = nullptr);

  [[nodiscard]] DespatchMaker* maker() const { return maker_; }
  /// Opens a folder or a page outside the window; tests put another in its place.
  void setOpener(std::function<void(const QUrl& url)> opener) { opener_ = std::move(opener); }

 signals:
  /// A withheld piece leads to its cause; its prisms are selected by then.
  void clearancesWanted();

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeMiddle();
  void connectMaker();
  void followBook();
  void follow();
  void followWork();
  void followSight();
  void followPacked();
  void lookAt(std::size_t piece);
  /// The page opens on something to see.
  void lookAtFirst();
  void showClearances(std::size_t piece);
  void openPack(const char* file);

  Workbench* bench_;
  DespatchMaker* maker_;
  DespatchForm* form_ = nullptr;
  DespatchList* list_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  DespatchPreview* preview_ = nullptr;
  QTextBrowser* report_ = nullptr;
  DespatchFoot* foot_ = nullptr;
  std::shared_ptr<const DespatchListing> shown_;
  std::function<void(const QUrl& url)> opener_;
};

}  // namespace prismwright
