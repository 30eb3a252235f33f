// Prints what a drag in the section drawing takes, part by part, beside the 16.7 ms of a frame. Needs a screen:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_window_figures
//   bash tests/support/with_screen build/bench/tests/bench/prismwright_window_figures
#include <fmt/format.h>

#include <QApplication>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <vector>

#include "core/base/angle.h"
#include "ui/models/zone_selection.h"
#include "ui/pages/section_page.h"
#include "ui/style/before_window.h"
#include "ui/style/dress.h"
#include "ui/views/section_drawing.h"

namespace prismwright {
namespace {

using Clock = std::chrono::steady_clock;
constexpr int kMoves = 400;
constexpr auto kFrame = std::chrono::microseconds(16667);
constexpr const char* kWanted = "60 frames a second: 16.7 ms";

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

class Times {
 public:
  void add(double ms) { taken_.push_back(ms); }
  void take(const std::function<void()>& work) {
    const auto start = Clock::now();
    work();
    add(ms_since(start));
  }
  void say(const std::string& what, const char* wanted = "") {
    std::sort(taken_.begin(), taken_.end());
    const auto at = [&](double share) {
      return taken_[static_cast<std::size_t>(share * static_cast<double>(taken_.size() - 1))];
    };
    const auto late = std::count_if(taken_.begin(), taken_.end(), [](double ms) { return ms > 16.667; });
    fmt::print("{:<60} median {:6.2f} ms, 99 % {:6.2f} ms, over a frame {:3d} of {}  {}\n", what, at(0.5),
               at(0.99), late, taken_.size(), wanted);
  }

 private:
  std::vector<double> taken_;
};

/// Notes how long a widget paints itself, and how often.
class Window : public QApplication {
 public:
  using QApplication::QApplication;
  bool notify(QObject* receiver, QEvent* event) override {
    if (receiver != watched || event->type() != QEvent::Paint) return QApplication::notify(receiver, event);
    const auto start = Clock::now();
    const bool done = QApplication::notify(receiver, event);
    paint_ms += ms_since(start);
    ++paints;
    return done;
  }

  QObject* watched = nullptr;
  double paint_ms = 0;
  int paints = 0;
};

/// A hand that moves sixty times a second. A move lasts from the moment it is due until the window shows it;
/// what the window does between two moves counts when it makes the next one late.
class Hand {
 public:
  Hand(Window& window, SectionDrawing* drawing) : window_(window), drawing_(drawing) {
    window_.watched = drawing;
  }

  void press(QPointF place) { send(QEvent::MouseButtonPress, Qt::LeftButton, place); }
  void release(QPointF place) {
    send(QEvent::MouseButtonRelease, Qt::LeftButton, place);
    settle();
  }
  void settle() {
    for (int round = 0; round < 20; ++round) QCoreApplication::processEvents();
    due_ = Clock::now();
  }
  void move(QPointF place) {
    while (Clock::now() < due_) QCoreApplication::processEvents();
    most_paints = std::max(most_paints, window_.paints);
    window_.paints = 0;
    window_.paint_ms = 0;
    send(QEvent::MouseMove, Qt::NoButton, place);
    while (window_.paints == 0) QCoreApplication::processEvents();
    whole.add(ms_since(due_));
    paint.add(window_.paint_ms);
    due_ = std::max(due_ + kFrame, Clock::now());
  }

  Times paint, whole;
  int most_paints = 0;

 private:
  void send(QEvent::Type type, Qt::MouseButton button, QPointF place) {
    QMouseEvent event(type, place, drawing_->mapToGlobal(place), button, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(drawing_, &event);
  }

  Window& window_;
  SectionDrawing* drawing_;
  Clock::time_point due_ = Clock::now();
};

/// The hand goes to and fro round a place.
double sway(int move) { return 0.8 * std::sin(0.05 * move); }

/// Solving and proving by themselves, for the limits that the hand goes through.
void time_core(const Workbench& bench, const QString& zone, double limit_deg, Times& solve, Times& proof) {
  const LensValues values = bench.values();
  const Section section = bench.plan()->section;
  for (int move = 0; move < kMoves; ++move) {
    const auto edit = resize_zone(values, section, zone.toStdString(), SizeBy::to_deg, limit_deg + sway(move));
    const LensValues wanted = *with_assignments(values, edit->assignments);
    Outcome<Section> solved = section;
    solve.take([&] { solved = solve_section(wanted.section_input()); });
    proof.take([&] { (void)prove(*solved); });
  }
}

void drag_limit(Window& window, Workbench& bench, SectionPage& page, const QString& zone) {
  select_zones(bench, {zone}, zone);
  const SectionDrawing* drawing = page.drawing();
  const auto grip = limit_grip(bench.plan()->section, zone);
  const double reach = std::hypot(grip->place.r, grip->place.z - grip->focus.z);
  const auto place_at = [&](double deg) {
    return drawing->map().toView(
        {reach * std::cos(radians(deg)), grip->focus.z + reach * std::sin(radians(deg))});
  };
  Times solve, proof;
  time_core(bench, zone, grip->limit_deg, solve, proof);
  Hand hand(window, page.drawing());
  hand.settle();
  hand.press(drawing->map().toView(grip->place));
  for (int move = 0; move < kMoves; ++move) hand.move(place_at(grip->limit_deg + sway(move)));
  page.drawing()->limits()->putBack();
  hand.release(place_at(grip->limit_deg));
  const std::string name = "drag a limit, first order (" + zone.toStdString() + "): ";
  solve.say(name + "solve");
  proof.say(name + "proof");
  hand.paint.say(name + "repaint the drawing");
  hand.whole.say(name + "the whole move", kWanted);
  fmt::print("{}at most {} repaint(s) of the drawing a move\n", name, hand.most_paints);
}

void drag_laser(Window& window, SectionPage& page) {
  SectionDrawing* drawing = page.drawing();
  Hand hand(window, drawing);
  page.laser()->point(5);
  hand.settle();
  const QPointF grip = *drawing->grip();
  const QPointF focus = drawing->map().toView({0, 0});
  const double reach = QLineF(focus, grip).length();
  hand.press(grip);
  for (int move = 0; move < kMoves; ++move) {
    const double angle = radians(5 + 40 * std::sin(0.02 * move));
    hand.move(focus + reach * QPointF(std::cos(angle), -std::sin(angle)));
  }
  hand.release(focus);
  hand.paint.say("drag the laser, first order: repaint the drawing");
  hand.whole.say("drag the laser, first order: the whole move", kWanted);
}

int run(Window& window) {
  const QTemporaryDir folder;
  Workbench bench;
  auto book = Lensbook::create(folder.filePath("first.lensbook").toStdString(),
                               starting_values("1", Work::bullseye, 8));
  if (!book) return 1;
  bench.setBook(std::move(book).value());
  bench.stopMaking();
  SectionPage page(&bench);
  page.resize(1820, 980);
  page.show();
  for (int round = 0; round < 20; ++round) QCoreApplication::processEvents();
  drag_limit(window, bench, page, QStringLiteral("R4"));
  drag_limit(window, bench, page, QStringLiteral("U04"));
  drag_laser(window, page);
  return 0;
}

}  // namespace
}  // namespace prismwright

int main(int argc, char** argv) {
  prismwright::prepare_for_drawing();
  prismwright::Window window(argc, argv);
  prismwright::dress(window);
  return prismwright::run(window);
}
