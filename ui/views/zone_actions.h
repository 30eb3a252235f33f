#pragma once

#include <QObject>
#include <array>

#include "ui/models/workbench.h"

class QAction;
class QMenu;

namespace prismwright {

/// What can be done with single zones, for the tool row, the context menu and keys alike: lock or free, split,
/// remove the one selected zone, add one at the outer end of a band. Each is one step that undo names.
///
/// Object names: zone.lock (Ctrl+L), zone.split (Ctrl+T), zone.remove (Delete), zone.add (Insert),
/// zone.add.refracting, zone.add.upper, zone.add.lower.
class ZoneActions : public QObject {
  Q_OBJECT

 public:
  /// The keys work wherever the focus is inside `page`.
  ZoneActions(Workbench* bench, QWidget* page);

  [[nodiscard]] QAction* lock() const { return lock_; }
  [[nodiscard]] QAction* split() const { return split_; }
  [[nodiscard]] QAction* remove() const { return remove_; }
  [[nodiscard]] QAction* add() const { return add_; }
  /// The bands to which a zone can be added.
  [[nodiscard]] QMenu* addMenu() const { return add_menu_; }
  /// Opens the menu of all of them; the widget that asks keeps its selection.
  void popup(const QPoint& global_place);

 private:
  QAction* make(const char* name, const QString& text, const QString& icon, const QKeySequence& keys);
  void makeAddMenu();
  void follow();
  /// The one selected zone of the section shown; null when none or several are.
  [[nodiscard]] const Zone* chosen() const;
  void addTo(Band band);

  Workbench* bench_;
  QWidget* page_;
  QAction* lock_;
  QAction* split_;
  QAction* remove_;
  QAction* add_;
  QMenu* add_menu_;
};

}  // namespace prismwright
