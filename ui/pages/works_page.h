#pragma once

#include <QWidget>

#include "ui/models/works_desk.h"

class QTabWidget;

namespace prismwright {

class LoadsTab;
class MakeTab;

/// The works: what has been made and what is still to make, from masters to glazed prisms; loads of the vessel,
/// inspection, shrinkage, time and money, the history of every prism, and the values that rule it all.
///
/// Object names: page.works (itself), works.tabs; those of the views.
class WorksPage : public QWidget {
  Q_OBJECT

 public:
  explicit WorksPage(Workbench* bench, QWidget* parent = nullptr);

 private:
  QWidget* makeTabs();
  void exportMasters(const QStringList& chosen);
  void exportMoulds(const QStringList& chosen);
  void saveCard(std::size_t load);
  void castLoad(std::size_t load);
  void recordSpare(const QString& master);
  /// A folder beside the book for files of this kind.
  [[nodiscard]] QString folderFor(const char* kind) const;

  Workbench* bench_;
  WorksDesk* desk_;
  QTabWidget* tabs_ = nullptr;
};

}  // namespace prismwright
