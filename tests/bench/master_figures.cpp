// Prints, for every master of each sample, how far it is from its prism when it is shrunk and its stock is
// taken off, and what another reader makes of its files:
//   cmake --preset bench && cmake --build --preset bench --target prismwright_master_figures
//   build/bench/tests/bench/prismwright_master_figures
#include <fmt/format.h>

#include <chrono>

#include "core/book/lensbook.h"
#include "geometry/master_exports.h"
#include "tests/support/empty_folder.h"
#include "tests/support/master_checks.h"
#include "tests/support/read_skin.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

struct FileFigures {
  int files = 0;
  int open = 0;
  double volume_share = 0;
  std::size_t most_parts = 0;
};

void read_back(const MasterBody& master, const WorksSettings& settings, FileFigures& figures) {
  const auto print = plan_print(master, settings);
  if (!print) {
    fmt::print("  {}\n", print.problem().text);
    return;
  }
  figures.most_parts = std::max(figures.most_parts, print->parts.size());
  const EmptyFolder folder;
  MasterExportChoice choice;
  choice.step = false;
  const auto written = export_master(master, *print, folder.path(), choice);
  if (!written) {
    fmt::print("  {}\n", written.problem().text);
    return;
  }
  for (const PrintPart& part : print->parts) {
    for (const char* kind : {".stl", ".3mf"}) {
      const ReadSkin skin = read_skin(folder.file(part.name + kind));
      ++figures.files;
      if (!skin.trouble.empty() || skin.open_edges > 0) ++figures.open;
      figures.volume_share = std::max(figures.volume_share, std::abs(skin.volume_mm3 / part.volume_mm3 - 1));
    }
  }
}

void print_figures(const char* words, const LensPlan& plan, const WorksSettings& settings, bool files) {
  const auto start = std::chrono::steady_clock::now();
  MasterErrors worst;
  FileFigures figures;
  int masters = 0;
  for (const PlannedPrism* prism : distinct_prisms(plan)) {
    const auto master = make_master(*prism, prism->mark, settings);
    if (!master) {
      fmt::print("  {}\n", master.problem().text);
      continue;
    }
    ++masters;
    MasterCheck check(*master, settings);
    worst.take(check.faces());
    worst.take(check.section());
    if (files) read_back(*master, settings, figures);
  }
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  fmt::print(
      "  {}: {} masters, {} sections; corners {:.1e} mm, curves {:.1e} mm, {} places of faces {:.1e} mm\n",
      words, masters, worst.sections, worst.corners_mm, worst.curves_mm, worst.places, worst.faces_mm);
  if (files) {
    fmt::print("  {} mesh files, {} not watertight, volume within {:.2e}; most parts {}\n", figures.files,
               figures.open, figures.volume_share, figures.most_parts);
  }
  fmt::print("  {:.0f} s\n", seconds);
  std::fflush(stdout);
}

void print_sample(const std::string& name) {
  const auto book =
      Lensbook::open(std::string(PRISMWRIGHT_SAMPLES) + "/" + name + ".lensbook", Lensbook::Access::read_only);
  if (!book) {
    fmt::print("{}\n", book.problem().text);
    return;
  }
  const auto plan = plan_lens(book->values());
  if (!plan) return;
  fmt::print("{}\n", name);
  WorksSettings settings = book->values().works;
  print_figures("as the sample has it", *plan, settings, true);
  settings.shrink_length_percent = 0.35;
  settings.shrink_depth_percent = 0.9;
  settings.shrink_height_percent = -0.3;
  settings.stock_mm = 0.5;
  settings.stock_faces = StockFaces::all;
  print_figures("uneven shrinkage, stock on all faces", *plan, settings, false);
}

}  // namespace
}  // namespace prismwright

int main() {
  for (const char* name : {"fourth-order-bullseye", "sixth-order-belt", "first-order-group-flashing"}) {
    prismwright::print_sample(name);
  }
}
