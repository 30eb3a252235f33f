#include "ui/models/slow_pace.h"

#include <QEvent>
#include <QWidget>
#include <algorithm>

namespace prismwright {
namespace {

/// Between two turns. One figure follows at a time, so that no frame waits for all of them.
constexpr int kTurn_ms = 20;

bool in_sight(const QObject* view) {
  const auto* widget = qobject_cast<const QWidget*>(view);
  return !widget || widget->isVisible();
}

}  // namespace

SlowPace* SlowPace::of(Workbench* bench) {
  auto* pace = bench->findChild<SlowPace*>(QString(), Qt::FindDirectChildrenOnly);
  return pace ? pace : new SlowPace(bench);
}

SlowPace::SlowPace(Workbench* bench) : QObject(bench), bench_(bench) {
  turns_.setInterval(kTurn_ms);
  connect(&turns_, &QTimer::timeout, this, &SlowPace::takeTurn);
  connect(bench, &Workbench::sectionChanged, this, &SlowPace::sectionIsNew);
}

void SlowPace::add(QObject* view, std::function<void()> follow) {
  followers_.push_back({view, std::move(follow)});
  if (view->isWidgetType()) view->installEventFilter(this);
  connect(view, &QObject::destroyed, this, [this](const QObject* gone) {
    std::erase_if(followers_, [gone](const Follower& each) { return each.view == gone; });
  });
}

SlowPace::Follower* SlowPace::find(const QObject* view) {
  const auto found = std::find_if(followers_.begin(), followers_.end(),
                                  [&](const Follower& each) { return each.view == view; });
  return found == followers_.end() ? nullptr : &*found;
}

void SlowPace::want(QObject* view) {
  if (Follower* follower = find(view)) follower->waits = true;
  if (!turns_.isActive()) turns_.start();
}

void SlowPace::call(QObject* view) {
  Follower* follower = find(view);
  if (!follower) return;
  follower->waits = false;
  const auto follow = follower->follow;  // what it does may add and take away followers
  follow();
}

void SlowPace::sectionIsNew() {
  for (Follower& each : followers_) each.waits = true;
  if (bench_->isPreviewing()) {
    if (!turns_.isActive()) turns_.start();
    return;
  }
  std::vector<QObject*> views;
  for (const Follower& each : followers_) views.push_back(each.view);
  for (QObject* view : views) call(view);
}

void SlowPace::takeTurn() {
  for (std::size_t tried = 0; tried < followers_.size(); ++tried) {
    const Follower& each = followers_[next_++ % followers_.size()];
    if (each.waits && in_sight(each.view)) return call(each.view);
  }
  turns_.stop();
}

bool SlowPace::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Show)
    if (const Follower* follower = find(watched); follower && follower->waits) call(watched);
  return QObject::eventFilter(watched, event);
}

}  // namespace prismwright
