#pragma once

#include <QFrame>
#include <array>

#include "ui/models/tell_tale.h"

class QPushButton;

namespace prismwright {

/// The strip that stays in sight on every page: four signs, each with a mark and words. A click leads to the
/// page and selects the prisms that it comes from. Object names: tell.level, tell.light, tell.clearance,
/// tell.works.
class TellTales : public QFrame {
  Q_OBJECT

 public:
  explicit TellTales(Workbench* bench, QWidget* parent = nullptr);

 signals:
  void pageWanted(Page page);

 private:
  void refresh();
  void follow(std::size_t which);

  Workbench* bench_;
  std::array<TellTale, 4> tales_;
  std::array<QPushButton*, 4> buttons_{};
};

}  // namespace prismwright
