#pragma once

#include <QObject>
#include <QTimer>
#include <functional>
#include <memory>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// Keeps figures in step with the section without taking frames from what is dragged. After an edit every
/// figure follows at once. While something is dragged they follow in turn, each a few times a second, and
/// those out of sight wait until they are shown or the drag has ended.
class SlowPace : public QObject {
  Q_OBJECT

 public:
  /// The one that all views of this bench share.
  static SlowPace* of(Workbench* bench);

  /// Calls `follow` for every new section as long as `view` lives.
  void add(QObject* view, std::function<void()> follow);
  /// Asks for one more call in turn: for what changes while the section stands.
  void want(QObject* view);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Follower {
    QObject* view;
    std::function<void()> follow;
    bool waits = false;
  };

  explicit SlowPace(Workbench* bench);
  void sectionIsNew();
  void takeTurn();
  void call(QObject* view);
  [[nodiscard]] Follower* find(const QObject* view);

  Workbench* bench_;
  std::vector<Follower> followers_;
  std::size_t next_ = 0;  ///< whose turn it is
  QTimer turns_;
};

}  // namespace prismwright
