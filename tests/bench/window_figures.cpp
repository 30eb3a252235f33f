// Prints what a drag in the section drawing takes, part by part, beside the 16.7 ms of a frame. Needs a screen:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_window_figures
//   bash tests/support/with_screen build/bench/tests/bench/prismwright_window_figures
#include <fmt/format.h>

#include <QApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
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

constexpr int kMoves = 300;
constexpr const char* kFrame = "60 frames a second: 16.7 ms";

class Times {
 public:
  void take(const std::function<void()>& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    taken_.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  void add(const std::vector<const Times*>& parts) {
    double sum = 0;
    for (const Times* part : parts) sum += part->taken_.back();
    taken_.push_back(sum);
  }
  void say(const char* what, const char* wanted = "") {
    std::sort(taken_.begin(), taken_.end());
    const auto at = [&](double share) {
      return taken_[static_cast<std::size_t>(share * static_cast<double>(taken_.size() - 1))];
    };
    fmt::print("{:<58} {:<40} {}\n", what, fmt::format("median {:.2f} ms, 99 % {:.2f} ms", at(0.5), at(0.99)),
               wanted);
  }

 private:
  std::vector<double> taken_;
};

/// A hand that goes to and fro round a place.
double sway(int move) { return 0.8 * std::sin(0.05 * move); }

void drag_limit(Workbench& bench, SectionPage& page, const QString& zone) {
  select_zones(bench, {zone}, zone);
  const auto grip = limit_grip(bench.plan()->section, zone);
  const double reach = std::hypot(grip->place.r, grip->place.z);
  const LensValues values = bench.values();
  const Section section = bench.plan()->section;
  Times solve, proof, follow, paint, whole;
  LimitDrag* limits = page.drawing()->limits();
  limits->take(zone);
  for (int move = 0; move < kMoves; ++move) {
    const double deg = grip->limit_deg + sway(move);
    const auto edit = resize_zone(values, section, zone.toStdString(), SizeBy::to_deg, deg);
    const LensValues wanted = *with_assignments(values, edit->assignments);
    Outcome<Section> solved = section;
    solve.take([&] { solved = solve_section(wanted.section_input()); });
    proof.take([&] { (void)prove(*solved); });
    // The drag itself solves and proves again, with all that follows from it in the window.
    limits->moveTo({reach * std::cos(radians(deg)), reach * std::sin(radians(deg))});
    follow.take([] { QCoreApplication::processEvents(QEventLoop::ExcludeUserInputEvents); });
    paint.take([&] { page.drawing()->repaint(); });
    whole.add({&follow, &paint});
  }
  limits->putBack();
  const std::string name = "drag a limit, first order (" + zone.toStdString() + "): ";
  solve.say((name + "solve").c_str());
  proof.say((name + "proof").c_str());
  paint.say((name + "repaint the drawing").c_str());
  whole.say((name + "the whole move").c_str(), kFrame);
}

void drag_laser(SectionPage& page) {
  Times trace, paint, whole;
  for (int move = 0; move < kMoves; ++move) {
    trace.take([&] { page.laser()->point(40 * std::sin(0.02 * move)); });
    paint.take([&] {
      page.drawing()->repaint();
      QCoreApplication::processEvents(QEventLoop::ExcludeUserInputEvents);
    });
    whole.add({&trace, &paint});
  }
  trace.say("drag the laser, first order: trace and read-out");
  paint.say("drag the laser, first order: repaint");
  whole.say("drag the laser, first order: the whole move", kFrame);
}

int run() {
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
  drag_limit(bench, page, QStringLiteral("R4"));
  drag_limit(bench, page, QStringLiteral("U04"));
  drag_laser(page);
  return 0;
}

}  // namespace
}  // namespace prismwright

int main(int argc, char** argv) {
  prismwright::prepare_for_drawing();
  QApplication application(argc, argv);
  prismwright::dress(application);
  return prismwright::run();
}
