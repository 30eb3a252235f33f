// Pictures and line views of the samples with their frames: seconds by the clock and of the processor, and the
// most memory the program has held so far. Solids are made before and not counted.
//   cmake --preset bench && cmake --build --preset bench --target prismwright_picture_figures
//   build/bench/tests/bench/prismwright_picture_figures [FOLDER for the pictures]
#include <fmt/format.h>
#include <sys/resource.h>

#include <chrono>
#include <ctime>
#include <fstream>

#include "core/book/lensbook.h"
#include "core/frame/frame_plan.h"
#include "geometry/picture_studio.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.2;
constexpr int kWide = 1200;
constexpr int kHigh = 900;

class Watch {
 public:
  /// Since the last asking.
  std::string words() {
    const auto now = std::chrono::steady_clock::now();
    const std::clock_t work = std::clock();
    const double seconds = std::chrono::duration<double>(now - clock_).count();
    const double worked = static_cast<double>(work - work_) / CLOCKS_PER_SEC;
    clock_ = now;
    work_ = work;
    return fmt::format("{:.2f} s by the clock, {:.2f} s of the processor", seconds, worked);
  }

 private:
  std::chrono::steady_clock::time_point clock_ = std::chrono::steady_clock::now();
  std::clock_t work_ = std::clock();
};

double most_memory_MiB() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return static_cast<double>(used.ru_maxrss) / 1024;
}

void look_from(const PictureStudio& studio, const std::string& name, const PictureEye& eye,
               const std::string& folder) {
  Watch watch;
  const auto picture = studio.picture(eye, kWide, kHigh);
  if (!picture) return (void)fmt::print("  {}\n", picture.problem().text);
  fmt::print("  {}: picture {}x{} {}\n", name, kWide, kHigh, watch.words());
  const auto view = studio.lines(eye);
  if (!view) return (void)fmt::print("  {}\n", view.problem().text);
  std::size_t points = 0;
  for (const ViewLine& line : view->lines) points += line.points.size();
  fmt::print("  {}: {} lines of {} points {}\n", name, view->lines.size(), points, watch.words());
  if (folder.empty()) return;
  const auto png = png_bytes(*picture);
  if (png) std::ofstream(folder + '/' + name + ".png", std::ios::binary) << *png;
}

void sample_figures(const std::string& name, const std::string& folder) {
  const auto book =
      Lensbook::open(std::string(PRISMWRIGHT_SAMPLES) + "/" + name + ".lensbook", Lensbook::Access::read_only);
  if (!book) return (void)fmt::print("{}: {}\n", name, book.problem().text);
  const auto plan = plan_lens(book->values());
  if (!plan) return (void)fmt::print("{}: {}\n", name, plan.problem().text);
  const auto metal = make_frame(plan_frame(*plan));
  if (!metal) return (void)fmt::print("{}: {}\n", name, metal.problem().text);
  BodyShop shop;
  const auto bodies = shop.make(*plan);
  if (!bodies) return (void)fmt::print("{}: {}\n", name, bodies.problem().text);
  fmt::print("{}: {} prisms, {} metal parts, {:.0f} MiB before pictures\n", name, bodies->prisms.size(),
             metal->size(), most_memory_MiB());
  Watch watch;
  const auto studio = PictureStudio::of(picture_parts(*bodies, *metal), kChord_mm);
  if (!studio) return (void)fmt::print("  {}\n", studio.problem().text);
  fmt::print("  solids divided: {}\n", watch.words());
  look_from(*studio, name + "-sea", {0, 0}, folder);
  look_from(*studio, name + "-above", {0, 90}, folder);
  look_from(*studio, name + "-quarter", {25, 25}, folder);
  fmt::print("  most memory so far {:.0f} MiB\n", most_memory_MiB());
}

}  // namespace
}  // namespace prismwright

int main(int count, char** words) {
  // The largest comes last, so that each figure of memory is the sample's own.
  for (const char* name : {"sixth-order-belt", "fourth-order-bullseye", "first-order-group-flashing"}) {
    prismwright::sample_figures(name, count > 1 ? words[1] : "");
  }
}
