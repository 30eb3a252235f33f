#include "core/frame/part_keys.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

namespace prismwright {
namespace {

// FNV-1a over whole tenths of a micrometre.
class KeyHash {
 public:
  // Polygons lie on a grid of 1e-5 mm: the bounds of rounding are kept off it, so that the noise of a number's
  // last bits does not part equal shapes.
  void add(double number_mm) { add_whole(std::llround(number_mm * 1e4 + 0.037)); }
  void add(PlatePoint p) {
    add(p.u);
    add(p.v);
  }
  void add(SpaceVector v) {
    add(v.x);
    add(v.y);
    add(v.z);
  }
  void add(const PlateChain& chain) {
    add_whole(static_cast<long long>(chain.size()));
    for (const PlateStep& step : chain) {
      add(step.from);
      // A turn tells the longer way round from the shorter; its radius stands in the points.
      add(step.turn);
      if (!step.straight()) add(step.centre);
    }
  }
  void add(const PlateHole& hole) {
    add(hole.centre);
    add(hole.diameter_mm);
    add(hole.sink_diameter_mm);
    add_whole(hole.sunk_in_back ? 1 : 0);
  }
  void add(const PlateBore& bore) {
    add(bore.from - SpacePoint{});
    add(bore.along);
    add(bore.depth_mm);
    add(bore.diameter_mm);
  }
  template <class Part>
  void add_making(const Part& part) {
    add_whole(static_cast<int>(part.making));
    add_whole(static_cast<int>(part.metal));
  }
  template <class Items>
  void add_each(const Items& items) {
    add_whole(static_cast<long long>(items.size()));
    for (const auto& item : items) add(item);
  }
  void add_whole(long long number) {
    const auto bits = static_cast<std::uint64_t>(number);
    for (int shift = 0; shift < 64; shift += 8) {
      hash_ ^= (bits >> shift) & 0xff;
      hash_ *= 1099511628211ULL;
    }
  }
  [[nodiscard]] std::string key(const char* word) const { return fmt::format("{}-{:016x}", word, hash_); }

 private:
  std::uint64_t hash_ = 14695981039346656037ULL;
};

}  // namespace

std::string part_key(const FlatPart& part) {
  KeyHash hash;
  hash.add_making(part);
  hash.add(part.thickness_mm);
  hash.add(part.outline);
  hash.add_each(part.openings);
  hash.add_each(part.holes);
  hash.add_whole(static_cast<long long>(part.pockets.size()));
  for (const PlatePocket& pocket : part.pockets) {
    hash.add(pocket.outline);
    hash.add(pocket.depth_mm);
  }
  hash.add_each(part.bores);
  return hash.key("flat");
}

std::string part_key(const RoundPart& part) {
  KeyHash hash;
  hash.add_making(part);
  for (const double size : {part.length_mm, part.diameter_mm, part.bore_mm, part.head_mm}) hash.add(size);
  return hash.key("round");
}

std::string bar_shape_key(const PlannedPrism& shape) {
  KeyHash hash;
  hash.add_whole(static_cast<int>(shape.turning));
  for (const Face& face : shape.profile.faces) hash.add(PlatePoint{face.start().r, face.start().z});
  const Trim& trim = shape.trim;
  // Degrees to 1e-8: at a radius of a metre that is less than 1e-6 mm.
  hash.add(trim.clockwise_side_deg * 1e4);
  hash.add(trim.anticlockwise_side_deg * 1e4);
  hash.add(trim.set_back_mm);
  hash.add(trim.half_gap_mm);
  hash.add_whole(static_cast<int>(trim.half));
  return hash.key("bar");
}

std::string part_key(const TurnedBar& part) {
  KeyHash hash;
  hash.add_making(part);
  hash.add_each(part.bores);
  return bar_shape_key(part.shape) + hash.key("");
}

}  // namespace prismwright
