#include "core/frame/rib_key.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

namespace prismwright {
namespace {

// FNV-1a over whole tenths of a micrometre.
class Hash {
 public:
  void add(double number_mm) {
    auto bits = static_cast<std::uint64_t>(std::llround(number_mm * 1e4));
    for (int shift = 0; shift < 64; shift += 8) {
      hash_ ^= (bits >> shift) & 0xff;
      hash_ *= 1099511628211ULL;
    }
  }
  void add(const PlateOutline& outline) {
    add(static_cast<double>(outline.size()));
    for (const PlatePoint p : outline) {
      add(p.u);
      add(p.v);
    }
  }
  void add(const PlateChain& chain) {
    add(static_cast<double>(chain.size()));
    for (const PlateStep& step : chain) {
      add(step.from.u);
      add(step.from.v);
      add(step.turn);
    }
  }
  [[nodiscard]] std::uint64_t value() const { return hash_; }

 private:
  std::uint64_t hash_ = 14695981039346656037ULL;
};

}  // namespace

std::string rib_key(const RibPlan& rib) {
  Hash hash;
  hash.add(rib.thickness_mm);
  hash.add(rib.pocket_mm);
  hash.add(rib.set_back_mm);
  hash.add(rib.outline);
  for (const Pocket& pocket : rib.pockets) hash.add(pocket.outline);
  return fmt::format("rib-{:016x}", hash.value());
}

std::string rib_plate_key(const FlatPart& part) {
  Hash hash;
  hash.add(part.thickness_mm);
  hash.add(part.outline);
  for (const PlatePocket& pocket : part.pockets) {
    hash.add(pocket.depth_mm);
    hash.add(pocket.outline);
  }
  return fmt::format("rib-plate-{:016x}", hash.value());
}

}  // namespace prismwright
